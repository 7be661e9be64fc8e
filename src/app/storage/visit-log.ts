/**
 * The visits kept on this device: one record a visit, only ever added, each on the disk before it is called kept, with a second
 * copy line by line in the browser's private files. What was undone is marked, not taken out.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { canonical, mergeVisits } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import { isMembers, membersOf, visitOf } from '../../visits/visit-json.ts';
import { sha256 } from '../digest.ts';
import { isFull } from './vault.ts';
import type { LogRecord, VisitLines } from './visit-lines.ts';

interface Shape extends DBSchema {
  records: { key: [string, string]; value: LogRecord };
  photos: { key: string; value: Blob };
  own: { key: string; value: string };
}

export interface OpenedLog {
  readonly visits: readonly Visit[];
  /** How many only the second copy still had; they are put back. */
  readonly mended: number;
  /** Records that could not be read in either copy. */
  readonly damaged: number;
}

export interface VisitLog {
  open(site: string): Promise<OpenedLog>;
  /** Resolves only when all are on the disk. Those already there change nothing. */
  add(site: string, visits: readonly Visit[]): Promise<void>;
  /** Marks a visit as undone: it no longer shows. */
  undo(site: string, visit: Visit): Promise<void>;
  addPhoto(name: string, photo: Blob): Promise<void>;
  photo(name: string): Promise<Blob | null>;
  /** Small things of this device: its id, the walker's name. */
  own(key: string): Promise<string | null>;
  setOwn(key: string, value: string): Promise<void>;
  /** Why the second copy could not be written the last time, or null. */
  readonly linesTrouble: string | null;
}

export function visitLog(lines: VisitLines | null, name = 'meadowpost-visits'): VisitLog {
  return new Log(lines, name);
}

/** The record of a visit. */
export async function recordOf(site: string, visit: Visit): Promise<LogRecord> {
  const body = canonical(membersOf(visit));
  return { site, hash: await sha256(body), body };
}

class Log implements VisitLog {
  linesTrouble: string | null;
  #db: Promise<IDBPDatabase<Shape>> | null = null;
  #queue: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly lines: VisitLines | null,
    private readonly name: string,
  ) {
    this.linesTrouble = lines ? null : 'this browser keeps no second copy';
  }

  async open(site: string): Promise<OpenedLog> {
    const stored = await this.#withDatabase((db) => db.getAll('records', range(site)));
    const copied = (await this.lines?.read(site).catch(() => [])) ?? [];
    const known = new Set(stored.map((record) => record.hash));
    const lost = copied.filter((record) => !known.has(record.hash));
    const { visits, damaged } = await readRecords([...stored, ...lost]);
    const whole = await wholeOnes(lost);
    if (whole.length > 0) await this.#put(whole).catch(() => undefined);
    return { visits, mended: whole.length, damaged };
  }

  async add(site: string, visits: readonly Visit[]): Promise<void> {
    await this.#write(await Promise.all(visits.map((visit) => recordOf(site, visit))));
  }

  async undo(site: string, visit: Visit): Promise<void> {
    const { hash } = await recordOf(site, visit);
    const body = canonical({ undone: hash });
    await this.#write([{ site, hash: await sha256(body), body }]);
  }

  async addPhoto(name: string, photo: Blob): Promise<void> {
    await this.#strict('photos', (store) => store.put(photo, name));
  }

  async photo(name: string): Promise<Blob | null> {
    return this.#withDatabase(async (db) => (await db.get('photos', name)) ?? null);
  }

  async own(key: string): Promise<string | null> {
    return this.#withDatabase(async (db) => (await db.get('own', key)) ?? null);
  }

  async setOwn(key: string, value: string): Promise<void> {
    await this.#withDatabase((db) => db.put('own', value, key));
  }

  async #write(records: readonly LogRecord[]): Promise<void> {
    await this.#put(records);
    // The second copy follows in order; a failing one is told, not thrown: the visit is on the disk already.
    this.#queue = this.#queue.then(() => this.#copy(records));
    await this.#queue;
  }

  async #copy(records: readonly LogRecord[]): Promise<void> {
    try {
      await this.lines?.append(records);
      if (this.lines) this.linesTrouble = null;
    } catch (error) {
      this.linesTrouble = error instanceof Error ? error.message : String(error);
    }
  }

  async #put(records: readonly LogRecord[]): Promise<void> {
    await this.#strict('records', async (store) => {
      for (const record of records) await store.put(record);
    });
  }

  async #strict<Name extends 'records' | 'photos'>(
    name: Name,
    work: (store: { put(value: Shape[Name]['value'], key?: string): Promise<unknown> }) => Promise<unknown>,
  ): Promise<void> {
    await this.#withDatabase(async (db) => {
      const tx = db.transaction(name, 'readwrite', { durability: 'strict' });
      const wrote = work(tx.store as never);
      await Promise.all([wrote, tx.done]);
    });
  }

  /** A lost connection fails every later call on it: open a new one, try once more, then say so. */
  async #withDatabase<T>(work: (db: IDBPDatabase<Shape>) => Promise<T>): Promise<T> {
    try {
      return await work(await this.#open());
    } catch (error) {
      if (isFull(error)) throw new Error('storage is full');
      (await this.#db?.catch(() => null))?.close();
      this.#db = null;
      return work(await this.#open());
    }
  }

  #open(): Promise<IDBPDatabase<Shape>> {
    this.#db ??= openDB<Shape>(this.name, 1, {
      upgrade(db) {
        db.createObjectStore('records', { keyPath: ['site', 'hash'] });
        db.createObjectStore('photos');
        db.createObjectStore('own');
      },
      terminated: () => {
        this.#db = null;
      },
    });
    return this.#db;
  }
}

const range = (site: string) => IDBKeyRange.bound([site, ''], [site, '\uffff']);

/** Those whose text is what their hash says. */
async function wholeOnes(records: readonly LogRecord[]): Promise<LogRecord[]> {
  const checked = await Promise.all(records.map(async (one) => ((await sha256(one.body)) === one.hash ? [one] : [])));
  return checked.flat();
}

/** Visits of the records, undone ones left out. */
export async function readRecords(
  records: readonly LogRecord[],
): Promise<{ readonly visits: readonly Visit[]; readonly damaged: number }> {
  const whole = await wholeOnes(records);
  const undone = new Set<string>();
  const found: { hash: string; visit: Visit }[] = [];
  let unreadable = records.length - whole.length;
  for (const { hash, body } of whole) {
    const value: unknown = JSON.parse(body);
    const visit = isMembers(value) ? visitOf(value) : null;
    if (visit) found.push({ hash, visit });
    else if (isMembers(value) && typeof value.undone === 'string') undone.add(value.undone);
    else unreadable++;
  }
  const visits = found.filter(({ hash }) => !undone.has(hash)).map(({ visit }) => visit);
  return { visits: mergeVisits(visits), damaged: unreadable };
}
