/** One window writes a site; others look on and may take over. */

export interface WriterLock {
  readonly held: boolean;
  /** Asks the writing window to save and let go, then takes its place. Resolves to whether this window writes now. */
  takeOver(): Promise<boolean>;
  release(): void;
}

/** `onLost` runs when another window takes over: save first, then stop writing; `onGained` when this window becomes the writer. */
export interface WriterHooks {
  onLost(): Promise<void>;
  onGained(): void;
}

/** Where the browser has no locks every window writes, and the shelf's own check keeps one from writing over another. */
export async function writerLock(site: string, hooks: WriterHooks): Promise<WriterLock> {
  if (!navigator.locks) return { held: true, takeOver: async () => true, release: () => undefined };
  const lock = new Lock(site, hooks);
  await lock.request({ ifAvailable: true });
  return lock;
}

/** Long enough for a save on a slow phone (ours). */
const patience = 4000;

class Lock implements WriterLock {
  held = false;
  #letGo: (() => void) | null = null;
  readonly #name: string;
  readonly #channel: BroadcastChannel;

  constructor(
    site: string,
    private readonly hooks: WriterHooks,
  ) {
    this.#name = `meadowpost-site:${site}`;
    this.#channel = new BroadcastChannel(this.#name);
    this.#channel.onmessage = (event) => event.data === 'hand over' && void this.#handOver();
  }

  /** Resolves once it is known whether the lock is ours; it is then held until let go. */
  request(options: LockOptions): Promise<boolean> {
    return new Promise((resolve) => {
      const holding = navigator.locks.request(this.#name, options, (lock) => {
        resolve(lock !== null);
        if (lock === null) return undefined;
        this.held = true;
        this.hooks.onGained();
        return new Promise<void>((letGo) => {
          this.#letGo = letGo;
        });
      });
      holding.catch(() => resolve(false));
    });
  }

  async takeOver(): Promise<boolean> {
    if (this.held) return true;
    this.#channel.postMessage('hand over');
    const tooLong = new AbortController();
    const timer = setTimeout(() => tooLong.abort(), patience);
    const got = await this.request({ signal: tooLong.signal });
    clearTimeout(timer);
    return got;
  }

  release(): void {
    this.#free();
    this.#channel.close();
  }

  async #handOver(): Promise<void> {
    if (!this.held) return;
    await this.hooks.onLost().catch(() => undefined);
    this.#free();
  }

  #free(): void {
    this.held = false;
    this.#letGo?.();
    this.#letGo = null;
  }
}
