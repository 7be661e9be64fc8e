/** The database under the shelf: heads and revisions in IndexedDB, behind this one file. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type Head, headOf, type Revision, thinned, thinsAt } from './revision.ts';

interface Shape extends DBSchema {
  heads: { key: string; value: Head };
  revisions: { key: [string, number]; value: Revision };
  extras: { key: string; value: unknown };
}

/** What a shelf needs of a vault: the database here, or one in memory where the browser keeps nothing. */
export type VaultDoor = Pick<
  Vault,
  | 'heads'
  | 'head'
  | 'sites'
  | 'revision'
  | 'revisions'
  | 'add'
  | 'mark'
  | 'extra'
  | 'setExtra'
  | 'setExtraNow'
  | 'removeExtra'
  | 'extraKeys'
  | 'close'
>;

/** Somebody else saved this site since it was opened here. */
export class ChangedElsewhere extends Error {
  constructor() {
    super('This site was changed in another window since it was opened here.');
  }
}

/** Version of the database itself; a newer program raises it, and then this one must not write. */
const version = 1;

export class Vault {
  readonly #name: string;
  #db: Promise<IDBPDatabase<Shape>> | null = null;
  /** The open connection, for the one write that cannot wait. */
  #open: IDBPDatabase<Shape> | null = null;

  constructor(name = 'meadowpost') {
    this.#name = name;
  }

  async heads(): Promise<Head[]> {
    return this.#withDatabase((db) => db.getAll('heads'));
  }

  async head(site: string): Promise<Head | null> {
    return this.#withDatabase(async (db) => (await db.get('heads', site)) ?? null);
  }

  /** Ids of all sites that have a revision, whether or not a head still names them. */
  async sites(): Promise<string[]> {
    const keys = await this.#withDatabase((db) => db.getAllKeys('revisions'));
    return [...new Set(keys.map(([site]) => site))];
  }

  async revision(site: string, rev: number): Promise<Revision | null> {
    return this.#withDatabase(async (db) => (await db.get('revisions', [site, rev])) ?? null);
  }

  /** Newest first. */
  async revisions(site: string): Promise<Revision[]> {
    const all = await this.#withDatabase((db) => db.getAll('revisions', rangeOf(site)));
    return all.reverse();
  }

  /**
   * Adds a revision and moves the head in one strict transaction: resolves only when both are on the disk. Rejects with
   * `ChangedElsewhere` when the head is not the revision's parent.
   */
  async add(revision: Revision, now: number): Promise<Head> {
    return this.#withDatabase(async (db) => {
      const tx = db.transaction(['heads', 'revisions'], 'readwrite', { durability: 'strict' });
      const done = settled(tx);
      const heads = tx.objectStore('heads');
      const revisions = tx.objectStore('revisions');
      const before = (await heads.get(revision.site)) ?? null;
      if (before && isSame(before, revision)) return done.then(() => before);
      if ((before?.rev ?? null) !== revision.parent) {
        tx.abort();
        await done.catch(() => undefined);
        throw new ChangedElsewhere();
      }
      const head = headOf(revision);
      const written = [revisions.put(revision), heads.put(head)];
      if (thinsAt(revision.rev)) {
        const kept = await revisions.getAll(rangeOf(revision.site));
        written.push(...thinned(kept, now).map((rev) => revisions.delete([revision.site, rev]) as Promise<never>));
      }
      await Promise.all([...written.map((w) => w.catch(() => undefined)), done]);
      return head;
    });
  }

  /** Changes a head's name, or puts it in the bin and back. */
  async mark(site: string, change: Partial<Pick<Head, 'name' | 'removed'>>): Promise<Head> {
    return this.#withDatabase(async (db) => {
      const tx = db.transaction('heads', 'readwrite', { durability: 'strict' });
      const done = settled(tx);
      const before = await tx.store.get(site);
      if (!before) throw new Error(`No site "${site}" is kept here.`);
      const head = { ...before, ...change };
      await Promise.all([tx.store.put(head).catch(() => undefined), done]);
      return head;
    });
  }

  /** Small things beside the sites: undo steps, what was last open. Losing them loses no work, so they are written relaxed. */
  async extra<T>(key: string): Promise<T | null> {
    return this.#withDatabase(async (db) => ((await db.get('extras', key)) as T | undefined) ?? null);
  }

  async setExtra(key: string, value: unknown): Promise<void> {
    await this.#extras((store) => store.put(value, key));
  }

  async removeExtra(key: string): Promise<void> {
    await this.#extras((store) => store.delete(key));
  }

  /** Keys of all extras that begin so. */
  async extraKeys(start: string): Promise<string[]> {
    const keys = await this.#withDatabase((db) => db.getAllKeys('extras'));
    return keys.filter((key) => key.startsWith(start));
  }

  /** Sends an extra on its way before this call returns, for a window that is about to close. False when there is no open connection. */
  setExtraNow(key: string, value: unknown): boolean {
    try {
      const tx = this.#open?.transaction('extras', 'readwrite', { durability: 'strict' });
      if (!tx) return false;
      settled(tx).catch(() => undefined);
      tx.store.put(value, key).catch(() => undefined);
      tx.commit();
      return true;
    } catch {
      return false;
    }
  }

  async close(): Promise<void> {
    const db = this.#db;
    this.#db = null;
    this.#open = null;
    (await db?.catch(() => null))?.close();
  }

  async #extras(work: (store: { put: Put; delete(key: string): Promise<void> }) => Promise<unknown>): Promise<void> {
    await this.#withDatabase(async (db) => {
      const tx = db.transaction('extras', 'readwrite', { durability: 'relaxed' });
      const done = settled(tx);
      await Promise.all([work(tx.store).catch(() => undefined), done]);
    });
  }

  /**
   * A lost connection fails every later call on it, so after an error of the database we open a new one and try once more,
   * then say so. `add` knows a revision that came through the first time.
   */
  async #withDatabase<T>(work: (db: IDBPDatabase<Shape>) => Promise<T>): Promise<T> {
    try {
      return await work(await this.#opened());
    } catch (error) {
      if (!(error instanceof DOMException) || isFull(error)) throw error;
      await this.close();
      return work(await this.#opened());
    }
  }

  #opened(): Promise<IDBPDatabase<Shape>> {
    if (this.#db) return this.#db;
    const opening = openDB<Shape>(this.#name, version, {
      upgrade(db) {
        db.createObjectStore('heads', { keyPath: 'site' });
        db.createObjectStore('revisions', { keyPath: ['site', 'rev'] });
        db.createObjectStore('extras');
      },
      blocking: () => void this.close(),
      terminated: () => {
        this.#db = null;
        this.#open = null;
      },
    });
    this.#db = opening;
    opening.then(
      (db) => {
        if (this.#db === opening) this.#open = db;
      },
      () => {
        if (this.#db === opening) this.#db = null;
      },
    );
    return opening;
  }
}

type Put = (value: unknown, key: string) => Promise<unknown>;

/** The end of a transaction, rejecting with its real reason: a request of a full disk says only "aborted", its transaction says why. */
function settled(tx: { done: Promise<void>; error: DOMException | null }): Promise<void> {
  const done = tx.done.catch((error: unknown) => {
    throw tx.error ?? error;
  });
  done.catch(() => undefined);
  return done;
}

function rangeOf(site: string): IDBKeyRange {
  return IDBKeyRange.bound([site, 0], [site, Infinity]);
}

function isSame(head: Head, revision: Revision): boolean {
  return head.rev === revision.rev && head.sha256 === revision.sha256 && head.saved === revision.saved;
}

/** Whether an error means that the browser gives no more room. */
export function isFull(error: unknown): boolean {
  return error instanceof Error && error.name === 'QuotaExceededError';
}
