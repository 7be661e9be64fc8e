/** A demo that is edited goes on under another id: its visits and its made-up season go with it, and nothing else does. */
import { describe, expect, it } from 'vitest';
import { followSeason } from '../../../../src/app/actions/season-follow.ts';
import { seasonVisits, setSeason, showsInvented } from '../../../../src/app/actions/season-review.ts';
import { becomes } from '../../../../src/app/actions/shelf-name.ts';
import { followVisits, openVisits, useLog } from '../../../../src/app/actions/visit-log.ts';
import { EngineClient } from '../../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../../src/app/storage/memory-shelf.ts';
import type { VisitLog } from '../../../../src/app/storage/visit-log.ts';
import { Store } from '../../../../src/app/store.ts';
import { newSite } from '../../../../src/site/new-site.ts';
import { makeVisit, type Visit } from '../../../../src/visits/visit.ts';

const deaf = () => ({ say: () => undefined, hear: () => undefined, lost: () => undefined, end: () => undefined });
const visit = makeVisit({ id: 'a', post: 'p1', date: '2026-05-01', state: 'eggs' });

function logWith(kept: Record<string, Visit[]>, refuse = false): VisitLog {
  return {
    open: async (site) => ({ visits: kept[site] ?? [], mended: 0, damaged: 0 }),
    add: async (site, visits) => {
      if (refuse) throw new Error('storage is full');
      kept[site] = [...(kept[site] ?? []), ...visits];
    },
    undo: async () => undefined,
    addPhoto: async () => undefined,
    photo: async () => null,
    own: async () => null,
    setOwn: async () => undefined,
    linesTrouble: null,
  };
}

async function demo(log: VisitLog): Promise<Store> {
  const site = newSite('Demo');
  const store = new Store(new EngineClient(deaf), memoryShelf(), { siteId: 'demo', site, planOf: site });
  useLog(store, log);
  followVisits(store);
  followSeason(store);
  await openVisits(store);
  return store;
}

const rest = () => new Promise((done) => setTimeout(done, 0));

describe('the Season of a demo that becomes a site of its own', () => {
  it('keeps the review of a made-up season', async () => {
    const store = await demo(logWith({}));
    setSeason(store, { page: 'draft', invented: { siteId: 'demo', visits: [visit] }, struck: ['x'] });
    becomes(store, 'mine', 'Demo', 'Demo (yours)');
    expect(showsInvented(store.state)).toBe(true);
    expect(seasonVisits(store.state)).toEqual([visit]);
    expect(store.state.season).toMatchObject({ page: 'draft', struck: ['x'] });
  });

  it('is put away when another site is opened, and is there again on the way back', async () => {
    const store = await demo(logWith({}));
    setSeason(store, { page: 'box', box: 'p1', invented: { siteId: 'demo', visits: [visit] } });
    store.set({ siteId: 'other', site: newSite('Other') });
    expect(showsInvented(store.state)).toBe(false);
    expect(store.state.season).toMatchObject({ page: 'review', box: null, trail: null });
    store.set({ siteId: 'demo', site: newSite('Demo') });
    expect(showsInvented(store.state)).toBe(true);
  });

  it('never shows an empty log while the visits are carried over', async () => {
    const kept: Record<string, Visit[]> = { demo: [visit] };
    const store = await demo(logWith(kept));
    const seen: number[] = [];
    store.subscribe(() => seen.push(seasonVisits(store.state).length));
    becomes(store, 'mine', 'Demo', 'Demo (yours)');
    await openVisits(store);
    expect(store.state.round.logOf).toBe('mine');
    expect(store.state.round.log).toEqual([visit]);
    await rest();
    expect(kept.mine).toEqual([visit]);
    expect(new Set(seen)).toEqual(new Set([1]));
  });

  it('says so when they could not be written under the new id', async () => {
    const store = await demo(logWith({ demo: [visit] }, true));
    becomes(store, 'mine', 'Demo', 'Demo (yours)');
    await rest();
    expect(store.state.round).toMatchObject({ logState: 'memory', logTrouble: 'storage is full', unsaved: [visit] });
  });
});
