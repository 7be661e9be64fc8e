/** The visits on a real disk: added once, undone by a mark, mended from the second copy, told when there is no room. */
import { afterEach, describe, expect, it } from 'vitest';
import { keepVisits, openVisits, retryVisits, undoVisit, useLog } from '../../../src/app/actions/visit-log.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { privateVisitLines } from '../../../src/app/storage/visit-lines.ts';
import { type VisitLog, visitLog } from '../../../src/app/storage/visit-log.ts';
import { Store } from '../../../src/app/store.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';

let turn = 0;
const names: string[] = [];
const freshName = () => {
  const name = `test-visits-${Date.now()}-${turn++}`;
  names.push(name);
  return name;
};
const visit = (id: string, more: Partial<Visit> = {}) =>
  makeVisit({ id, post: 'p1', date: '2026-05-01', state: 'empty', ...more });

const drop = (name: string) =>
  new Promise((done) => {
    const asked = indexedDB.deleteDatabase(name);
    asked.onsuccess = asked.onerror = asked.onblocked = done;
  });

afterEach(async () => {
  for (const name of names.splice(0)) {
    await drop(name);
    const root = await navigator.storage.getDirectory();
    await root.removeEntry(name, { recursive: true }).catch(() => undefined);
  }
});

const storeWith = (log: VisitLog): Store => {
  const engine = new EngineClient(() => {
    throw new Error('the engine is not asked here');
  });
  const store = new Store(engine, memoryShelf(), { siteId: 'meadow' });
  useLog(store, log);
  return store;
};

describe('the visit log', () => {
  it('keeps visits over a new opening, each once, sites apart', async () => {
    const name = freshName();
    const log = visitLog(await privateVisitLines(name), name);
    await log.add('meadow', [visit('a'), visit('b')]);
    await log.add('meadow', [visit('a')]);
    await log.add('park', [visit('c')]);
    const again = visitLog(await privateVisitLines(name), name);
    expect((await again.open('meadow')).visits.map((one) => one.id)).toEqual(['a', 'b']);
    expect((await again.open('park')).visits.map((one) => one.id)).toEqual(['c']);
    expect(again.linesTrouble).toBeNull();
  });

  it('keeps two versions of one id, and leaves out what was undone', async () => {
    const name = freshName();
    const log = visitLog(await privateVisitLines(name), name);
    await log.add('meadow', [visit('a'), visit('a', { note: 'other' }), visit('b')]);
    await log.undo('meadow', visit('b'));
    expect((await log.open('meadow')).visits.map((one) => [one.id, one.note])).toEqual([
      ['a', ''],
      ['a', 'other'],
    ]);
  });

  it('mends a database that was cleared from the second copy, undone ones still undone', async () => {
    const name = freshName();
    const lines = await privateVisitLines(name);
    expect(lines).not.toBeNull();
    const log = visitLog(lines, name);
    await log.add('meadow', [visit('a'), visit('b'), visit('c')]);
    await log.undo('meadow', visit('c'));
    const other = freshName();
    const bare = visitLog(lines, other);
    const opened = await bare.open('meadow');
    expect(opened.visits.map((one) => one.id)).toEqual(['a', 'b']);
    expect(opened.mended).toBe(4);
    expect((await visitLog(null, other).open('meadow')).visits.map((one) => one.id)).toEqual(['a', 'b']);
  });
});

/** A disk that refuses the first writes. */
function full(real: VisitLog, times: number): VisitLog {
  let left = times;
  return {
    open: (site) => real.open(site),
    add: async (site, visits) => {
      if (left-- > 0) throw new Error('storage is full');
      return real.add(site, visits);
    },
    undo: (site, one) => real.undo(site, one),
    addPhoto: (photo, blob) => real.addPhoto(photo, blob),
    photo: (photo) => real.photo(photo),
    own: (key) => real.own(key),
    setOwn: (key, value) => real.setOwn(key, value),
    linesTrouble: null,
  };
}

describe('a disk without room', () => {
  it('is told, the visits stay in the window and are written later', async () => {
    const name = freshName();
    const real = visitLog(null, name);
    const store = storeWith(full(real, 2));
    await openVisits(store);
    expect(await keepVisits(store, [visit('a')])).toBe(false);
    expect(await keepVisits(store, [visit('b')])).toBe(false);
    const { round } = store.state;
    expect([round.logState, round.logTrouble, round.unsaved.length, round.log.length]).toEqual([
      'memory',
      'storage is full',
      2,
      2,
    ]);
    expect((await real.open('meadow')).visits).toEqual([]);
    expect(await retryVisits(store)).toBe(true);
    expect(store.state.round.unsaved).toEqual([]);
    expect((await real.open('meadow')).visits.map((one) => one.id)).toEqual(['a', 'b']);
  });

  it('writes what was left with the next visit', async () => {
    const name = freshName();
    const real = visitLog(null, name);
    const store = storeWith(full(real, 1));
    await openVisits(store);
    await keepVisits(store, [visit('a')]);
    expect(await keepVisits(store, [visit('b')])).toBe(true);
    expect((await real.open('meadow')).visits.map((one) => one.id)).toEqual(['a', 'b']);
    await undoVisit(store, store.state.round.log[0]!);
    expect(store.state.round.log.map((one) => one.id)).toEqual(['b']);
    expect((await real.open('meadow')).visits.map((one) => one.id)).toEqual(['b']);
  });
});
