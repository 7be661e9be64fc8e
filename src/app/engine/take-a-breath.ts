/** Lets the worker hear what was said meanwhile. A message to itself, since timers are slowed down when they follow each other. */
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

/** Ends after every message that already waits was heard. */
export function takeABreath(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });
}
