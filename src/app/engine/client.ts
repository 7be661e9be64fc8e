/** Asks the engine in its worker: typed calls with request ids, progress, early answers and cancelling. */
import type { Site } from '../../site/types.ts';
import type { Calls } from './calls.ts';
import type { CallName, FromWorker, ToWorker } from './protocol.ts';
import { changeBetween } from './site-change.ts';
import { SiteTokens } from './site-tokens.ts';

/** What the client needs of a worker; tests give their own. */
export interface Port {
  say(message: ToWorker): void;
  /** Several listeners may hear. */
  hear(listener: (message: FromWorker) => void): void;
  lost(listener: (why: string) => void): void;
  end(): void;
}

export interface CallOptions<Name extends CallName> {
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number | null, sentence: string) => void;
  readonly onPartial?: (output: Calls[Name]['output']) => void;
}

interface Waiting {
  readonly message: ToWorker;
  readonly site: Site | null;
  readonly resolve: (output: unknown) => void;
  readonly reject: (error: Error) => void;
  readonly options: CallOptions<CallName>;
}

/** A busy worker that does not hear "cancel" in this time is ended and started anew (ours). */
const patience = 400;

/** Short questions, answered by the second worker. */
const atHand: ReadonlySet<CallName> = new Set(['scorePost', 'rescore', 'nudge', 'lie', 'skyView']);

export class EngineClient {
  readonly #start: () => Port;
  #port: Port | null = null;
  #next = 1;
  #tokens = new SiteTokens();
  readonly #waiting = new Map<number, Waiting>();

  readonly #hand: EngineClient | null;

  /**
   * `start` makes a worker; it is called at the first question and again after a worker was ended. `hand` is a second client, with a
   * worker of its own, for what follows the pointer: it must not wait while a plan is being proven.
   */
  constructor(start: () => Port, hand: EngineClient | null = null) {
    this.#start = start;
    this.#hand = hand;
  }

  /** Rejects with an AbortError when cancelled, with an Error whose message can be shown when the engine fails. */
  call<Name extends CallName>(
    name: Name,
    input: Calls[Name]['input'],
    options: CallOptions<Name> = {},
  ): Promise<Calls[Name]['output']> {
    if (this.#hand && atHand.has(name)) return this.#hand.call(name, input, options);
    if (options.signal?.aborted) return Promise.reject(abortError());
    const id = this.#next++;
    const { site, ...rest } = input as { site?: Site };
    const message: ToWorker = { say: 'call', id, name, input: rest, token: site ? this.#tokens.of(site) : null };
    return new Promise((resolve, reject) => {
      const waiting = { message, site: site ?? null, resolve, reject, options: options as CallOptions<CallName> };
      this.#waiting.set(id, waiting as Waiting);
      options.signal?.addEventListener('abort', () => this.#cancel(id), { once: true });
      this.#ask(waiting as Waiting);
    });
  }

  /** Ends the worker; whoever waits is told so. */
  close(): void {
    this.#hand?.close();
    this.#port?.end();
    this.#port = null;
    for (const waiting of this.#waiting.values()) waiting.reject(abortError());
    this.#waiting.clear();
  }

  #ask({ message, site }: Waiting): void {
    const port = this.#worker();
    if (site) this.#handOver(port, site);
    port.say(message);
  }

  #handOver(port: Port, site: Site): void {
    const { send, from, forget } = this.#tokens.handOver(port, site);
    const token = this.#tokens.of(site);
    if (send && from) port.say({ say: 'site', token, from: from.token, change: changeBetween(from.site, site) });
    else if (send) port.say({ say: 'site', token, site });
    for (const old of forget) port.say({ say: 'forget', token: old });
  }

  #worker(): Port {
    if (this.#port) return this.#port;
    const port = this.#start();
    port.hear((message) => this.#hear(message));
    port.lost((why) => this.#lost(why));
    this.#port = port;
    return port;
  }

  #hear(said: FromWorker): void {
    const waiting = this.#waiting.get(said.id);
    if (!waiting) return;
    if (said.say === 'progress') waiting.options.onProgress?.(said.done, said.sentence);
    else if (said.say === 'partial') waiting.options.onPartial?.(said.output as never);
    else this.#settle(waiting, said);
  }

  #settle(waiting: Waiting, said: FromWorker & { say: 'done' | 'failed' }): void {
    this.#waiting.delete(said.id);
    if (said.say === 'done') waiting.resolve(said.output);
    else waiting.reject(new Error(said.sentence));
  }

  #cancel(id: number): void {
    const waiting = this.#waiting.get(id);
    if (!waiting) return;
    this.#waiting.delete(id);
    waiting.reject(abortError());
    this.#port?.say({ say: 'cancel', id });
    this.#restartUnlessHeard(id);
  }

  /** A worker deep in a long reckoning cannot hear; the others' questions are then asked again of a new one. */
  #restartUnlessHeard(id: number): void {
    const port = this.#port;
    if (!port) return;
    let heard = false;
    port.hear((message) => {
      if (message.id === id && message.say === 'failed') heard = true;
    });
    setTimeout(() => {
      if (heard || this.#port !== port) return;
      port.end();
      this.#port = null;
      for (const waiting of this.#waiting.values()) this.#ask(waiting);
    }, patience);
  }

  #lost(sentence: string): void {
    this.#port?.end();
    this.#port = null;
    for (const waiting of this.#waiting.values()) waiting.reject(new Error(sentence));
    this.#waiting.clear();
  }
}

/** Whether a call was cancelled rather than failed. */
export function wasAborted(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}

function abortError(): DOMException {
  return new DOMException('cancelled', 'AbortError');
}
