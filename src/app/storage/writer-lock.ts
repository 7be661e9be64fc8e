/** One window writes a site; others look on and may take over. */

export interface WriterLock {
  readonly held: boolean;
  /** Asks the writing window to save and let go, then takes its place; a window that does not answer loses it. Resolves to whether this window writes now. */
  takeOver(): Promise<boolean>;
  /** Tells the windows that look on that there is something newer to read. */
  tellSaved(): void;
  release(): void;
}

export interface WriterHooks {
  /** Another window takes over: save, then stop writing. Runs late (`asked` false) when the lock was taken without asking. */
  onLost(asked: boolean): Promise<void>;
  onGained(): void;
  /** The writing window saved: read again. */
  onSaved(): void;
}

/** Where the browser has no locks every window writes, and the shelf's own check keeps one from writing over another. */
export async function writerLock(site: string, hooks: WriterHooks): Promise<WriterLock> {
  if (!('locks' in navigator) || !navigator.locks || typeof BroadcastChannel === 'undefined') return withoutLocks;
  const lock = new Lock(site, hooks);
  await lock.request({ ifAvailable: true });
  return lock;
}

export const withoutLocks: WriterLock = {
  held: true,
  takeOver: async () => true,
  tellSaved: () => undefined,
  release: () => undefined,
};

/** Long enough for a save on a slow phone (ours). */
const patience = 4000;

class Lock implements WriterLock {
  held = false;
  #letGo: (() => void) | null = null;
  #gone = false;
  readonly #name: string;
  readonly #channel: BroadcastChannel;

  constructor(
    site: string,
    private readonly hooks: WriterHooks,
  ) {
    this.#name = `meadowpost-site:${site}`;
    this.#channel = new BroadcastChannel(this.#name);
    this.#channel.onmessage = ({ data }) => {
      if (data === 'hand over') void this.#handOver();
      if (data === 'saved' && !this.held) this.hooks.onSaved();
    };
  }

  /** Resolves once it is known whether the lock is ours; it is then held until let go. */
  request(options: LockOptions): Promise<boolean> {
    return new Promise((resolve) => {
      const holding = navigator.locks.request(this.#name, options, (lock) => {
        if (lock === null || this.#gone) {
          resolve(false);
          return undefined;
        }
        this.held = true;
        this.hooks.onGained();
        resolve(true);
        return new Promise<void>((letGo) => {
          this.#letGo = letGo;
        });
      });
      holding.catch(() => {
        resolve(false);
        this.#stolen();
      });
    });
  }

  async takeOver(): Promise<boolean> {
    if (this.held) return true;
    this.#channel.postMessage('hand over');
    const tooLong = new AbortController();
    const timer = setTimeout(() => tooLong.abort(), patience);
    const given = await this.request({ signal: tooLong.signal });
    clearTimeout(timer);
    return given || this.request({ steal: true });
  }

  tellSaved(): void {
    if (!this.#gone) this.#channel.postMessage('saved');
  }

  release(): void {
    this.#gone = true;
    this.#free();
    this.#channel.close();
  }

  async #handOver(): Promise<void> {
    if (!this.held) return;
    await this.hooks.onLost(true).catch(() => undefined);
    this.#free();
  }

  /** The lock was taken from a window that did not answer in time. */
  #stolen(): void {
    if (!this.held) return;
    this.#free();
    void this.hooks.onLost(false).catch(() => undefined);
  }

  #free(): void {
    this.held = false;
    this.#letGo?.();
    this.#letGo = null;
  }
}
