/** Says something to the person; newest last, the same trouble only once. */
import type { Message } from '../state.ts';
import type { Store } from '../store.ts';

/** The newest id given out. Never given twice: the time of a message that is gone must not end another one's. */
const newest = new WeakMap<Store, number>();

/** Returns the message's id, for `unsay`. */
export function say(store: Store, kind: Message['kind'], sentence: string, act?: Message['act']): number {
  const { messages } = store.state;
  const same = messages.find((m) => m.kind === kind && m.sentence === sentence);
  if (same && kind === 'trouble') return same.id;
  const id = (newest.get(store) ?? 0) + 1;
  newest.set(store, id);
  store.set({
    messages: [...messages.filter((m) => m.kind !== kind || kind === 'trouble'), { id, kind, sentence, act }],
  });
  return id;
}

/** Takes a message away. */
export function unsay(store: Store, id: number): void {
  store.set({ messages: store.state.messages.filter((m) => m.id !== id) });
}
