/** The database under the shelf: heads and revisions in IndexedDB, behind this one file. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type Head, type Revision, thinned } from './revision.ts';

interface Shape extends DBSchema {
  heads: { key: string; value: Head };
  revisions: { key: [string, number]; value: Revision };
  extras: { key: string; value: unknown };
}

/** Somebody else saved this site since it was opened here. */
export class ChangedElsewhere extends Error {}

export class Vault {
  readonly #name: string;
  #db: Promise<IDBPDatabase<Shape>> | null = null;

  constructor(name = 'meadowpost') {
    this.#name = name;
  }

  async heads(): Promise<Head[]> {
    return this.#withDatabase((db) => db.getAll('heads'));
  }

  async head(site: string): Promise<Head | null> {
    return this.#withDatabase(async (db) => (await db.get('heads', site)) ?? null);
  }

  async revision(site: string, rev: number): Promise<Revision | null> {
    return this.#withDatabase(async (db) => (await db.get('revisions', [site, rev])) ?? null);
  }

  /** Newest first. */
  async revisions(site: string): Promise<Revision[]> {
    const all = await this.#withDatabase((db) =>
      db.getAll('revisions', IDBKeyRange.bound([site, 0], [site, Infinity])),
    );
    return all.reverse();
  }

  /**
   * Adds a revision and moves the head in one strict transaction: resolves only when both are on the disk. Rejects with
   * `ChangedElsewhere` when the head is not the revision's parent.
   */
  async add(revision: Revision, now: number): Promise<Head> {
    return this.#withDatabase(async (db) => {
      const tx = db.transaction(['heads', 'revisions'], 'readwrite', { durability: 'strict' });
      const heads = tx.objectStore('heads');
      const revisions = tx.objectStore('revisions');
      const before = await heads.get(revision.site);
      if ((before?.rev ?? null) !== revision.parent) {
        tx.abort();
        await tx.done.catch(() => undefined);
        throw new ChangedElsewhere('This site was changed in another window since it was opened here.');
      }
      const { body: _, parent: __, sentence: ___, ...rest } = revision;
      const head: Head = { ...rest, removed: null };
      await revisions.put(revision);
      await heads.put(head);
      const kept = await revisions.getAll(IDBKeyRange.bound([revision.site, 0], [revision.site, Infinity]));
      for (const rev of thinned(kept, now)) await revisions.delete([revision.site, rev]);
      await tx.done;
      return head;
    });
  }

  /** Changes a head's name, or puts it in the bin and back. */
  async mark(site: string, change: Partial<Pick<Head, 'name' | 'removed'>>): Promise<Head> {
    return this.#withDatabase(async (db) => {
      const tx = db.transaction('heads', 'readwrite', { durability: 'strict' });
      const before = await tx.store.get(site);
      if (!before) throw new Error(`No site "${site}" is kept here.`);
      const head = { ...before, ...change };
      await tx.store.put(head);
      await tx.done;
      return head;
    });
  }

  /** Small things beside the sites: undo steps, what was last open. Losing them loses no work, so they are written relaxed. */
  async extra<T>(key: string): Promise<T | null> {
    return this.#withDatabase(async (db) => ((await db.get('extras', key)) as T | undefined) ?? null);
  }

  async setExtra(key: string, value: unknown): Promise<void> {
    await this.#withDatabase(async (db) => {
      const tx = db.transaction('extras', 'readwrite', { durability: 'relaxed' });
      await tx.store.put(value, key);
      await tx.done;
    });
  }

  async close(): Promise<void> {
    const db = this.#db;
    this.#db = null;
    (await db?.catch(() => null))?.close();
  }

  /** A lost connection fails every later call on it, so after an error we open a new one and try once more, then say so. */
  async #withDatabase<T>(work: (db: IDBPDatabase<Shape>) => Promise<T>): Promise<T> {
    try {
      return await work(await this.#open());
    } catch (error) {
      if (error instanceof ChangedElsewhere || isFull(error)) throw error;
      await this.close();
      return work(await this.#open());
    }
  }

  #open(): Promise<IDBPDatabase<Shape>> {
    this.#db ??= openDB<Shape>(this.#name, 1, {
      upgrade(db) {
        db.createObjectStore('heads', { keyPath: 'site' });
        db.createObjectStore('revisions', { keyPath: ['site', 'rev'] });
        db.createObjectStore('extras');
      },
      terminated: () => {
        this.#db = null;
      },
    });
    return this.#db;
  }
}

/** Whether an error means that the browser gives no more room. */
export function isFull(error: unknown): boolean {
  return error instanceof Error && error.name === 'QuotaExceededError';
}
