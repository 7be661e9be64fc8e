/** The n-th operation of the browser's storage fails, for every n until a save runs clean: what is kept is the state before or after, and a failure is told. */
import { afterEach, describe, expect, it } from 'vitest';
import { type DurableShelf, durableShelf } from '../../../src/app/storage/durable-shelf.ts';
import { privateFilesMirror } from '../../../src/app/storage/mirror.ts';
import { Vault } from '../../../src/app/storage/vault.ts';

type Kind = 'throws' | 'aborts' | 'full' | 'closes';
const kinds: readonly Kind[] = ['throws', 'aborts', 'full', 'closes'];

/** Counts every request of the database and fails one of them. */
class Fault {
  calls = 0;
  readonly #undo: (() => void)[] = [];

  constructor(
    readonly at: number,
    readonly kind: Kind,
  ) {
    for (const name of ['get', 'put', 'delete', 'getAll', 'getAllKeys'] as const)
      this.#wrap(IDBObjectStore.prototype, name);
    this.#wrap(IDBDatabase.prototype, 'transaction');
    this.#wrap(IDBFactory.prototype, 'open');
  }

  #wrap(on: object, name: string): void {
    const target = on as Record<string, (...given: unknown[]) => unknown>;
    const real = target[name]!;
    const fault = this;
    target[name] = function (this: unknown, ...given: unknown[]) {
      if (++fault.calls === fault.at) fault.#fail(this, name);
      return real.apply(this, given);
    };
    this.#undo.push(() => {
      target[name] = real;
    });
  }

  #fail(on: unknown, name: string): void {
    const tx = on instanceof IDBObjectStore ? on.transaction : null;
    if (this.kind === 'full') throw new DOMException('no room', 'QuotaExceededError');
    if (this.kind === 'closes' && tx) return void tx.db.close();
    if (this.kind === 'aborts' && tx && name !== 'get') return void setTimeout(() => abort(tx), 0);
    throw new DOMException('Connection to Indexed Database server lost', 'UnknownError');
  }

  heal(): void {
    for (const undo of this.#undo) undo();
  }
}

function abort(tx: IDBTransaction): void {
  try {
    tx.abort();
  } catch {
    // It was done already.
  }
}

let made = 0;
let fault: Fault | null = null;
afterEach(() => fault?.heal());

async function fresh(): Promise<{ shelf: DurableShelf; reopen(): Promise<DurableShelf> }> {
  const name = `faults-${made++}`;
  const open = async () => durableShelf(new Vault(name), await privateFilesMirror(name));
  const shelf = await open();
  await shelf.save('a', 'A', 'before', 'first');
  await shelf.copied();
  return { shelf, reopen: open };
}

describe.each(kinds)('when the n-th request %s', (kind) => {
  it('a save is done or not done, and says which', async () => {
    let clean = 0;
    let failures = 0;
    for (let n = 1; clean < 1 && n < 60; n++) {
      const { shelf, reopen } = await fresh();
      const now = new Fault(n, kind);
      fault = now;
      const said = await shelf.save('a', 'A', 'after', 'second').then(
        () => 'saved' as const,
        (error: Error) => error,
      );
      await shelf.copied();
      now.heal();
      if (now.calls < n) clean++;
      const again = await reopen();
      const kept = await again.open('a');
      if (said === 'saved') expect(kept, `n=${n}`).toBe('after');
      else {
        failures++;
        expect(said.message.length, `n=${n}`).toBeGreaterThan(5);
        expect(['before', 'after'], `n=${n}`).toContain(kept);
        if (kind === 'full') expect(kept).toBe('before');
      }
      expect(
        (await again.check()).map((f) => f.trouble),
        `n=${n}`,
      ).toEqual([]);
      await shelf.save('a', 'A', 'retried', 'third');
      expect(await (await reopen()).open('a'), `n=${n}`).toBe('retried');
    }
    expect(clean).toBe(1);
    if (kind === 'full') expect(failures).toBeGreaterThan(2);
  });
});

describe('when the n-th operation of the private files fails', () => {
  it('the save stands, the missing second copy is told, and the old copy or the new one is whole', async () => {
    for (let n = 1; n < 30; n++) {
      const { shelf, reopen } = await fresh();
      let calls = 0;
      const undo: (() => void)[] = [];
      const wrap = (on: object, name: string) => {
        const target = on as Record<string, (...given: unknown[]) => unknown>;
        const real = target[name]!;
        target[name] = function (this: unknown, ...given: unknown[]) {
          if (++calls === n) return Promise.reject(new DOMException('the disk', 'QuotaExceededError'));
          return real.apply(this, given);
        };
        undo.push(() => {
          target[name] = real;
        });
      };
      wrap(FileSystemFileHandle.prototype, 'createWritable');
      wrap(FileSystemFileHandle.prototype, 'getFile');
      wrap(FileSystemDirectoryHandle.prototype, 'getFileHandle');
      wrap(FileSystemDirectoryHandle.prototype, 'removeEntry');
      wrap(FileSystemWritableFileStream.prototype, 'write');
      wrap(FileSystemWritableFileStream.prototype, 'close');
      await shelf.save('a', 'A', 'after', 'second');
      await shelf.copied();
      for (const u of undo) u();
      const again = await reopen();
      expect(await again.copyText('a', 'database')).toBe('after');
      const copy = await again.copyText('a', 'mirror');
      expect(['before', 'after'], `n=${n}`).toContain(copy);
      if (copy === 'before') expect(shelf.mirrorTrouble, `n=${n}`).not.toBeNull();
      expect(await again.check()).toEqual([]);
      if (calls < n) {
        expect(copy).toBe('after');
        return;
      }
    }
    expect.unreachable('never ran clean');
  });
});
