/** Bad visits on their way in: each is told in clear words with a fix, and every one is kept. */
import { describe, expect, it } from 'vitest';
import { takeFile } from '../../../../src/app/actions/round-share.ts';
import { keepVisits, openVisits, useLog } from '../../../../src/app/actions/visit-log.ts';
import { oddVisits } from '../../../../src/app/actions/visit-odd.ts';
import { EngineClient } from '../../../../src/app/engine/client.ts';
import type { FieldRound, Stop } from '../../../../src/app/field/field-round.ts';
import { clockDoubt, localTime } from '../../../../src/app/field/local-time.ts';
import { firstRound } from '../../../../src/app/round-state.ts';
import { memoryShelf } from '../../../../src/app/storage/memory-shelf.ts';
import type { VisitLog } from '../../../../src/app/storage/visit-log.ts';
import { Store } from '../../../../src/app/store.ts';
import { newSite } from '../../../../src/site/new-site.ts';
import type { Site } from '../../../../src/site/types.ts';
import { makeVisit, type Visit } from '../../../../src/visits/visit.ts';
import { writeVisitFile } from '../../../../src/visits/visit-file.ts';

const deaf = () => ({ say: () => undefined, hear: () => undefined, lost: () => undefined, end: () => undefined });
const stop = (number: number): Stop => ({
  number,
  post: `p${number}`,
  position: [-84, 40],
  bird: 'eastern-bluebird',
  facing: null,
  way: null,
});
const round: FieldRound = {
  site: 'Meadow',
  hash: null,
  walker: 1,
  stops: [1, 2].map(stop),
  back: null,
  metres: 0,
  minutes: 0,
  blur: 0,
};
const feature = (number: number, since?: string) => ({
  id: `p${number}`,
  kind: 'post' as const,
  geometry: { type: 'Point' as const, coordinates: [-84, 40] },
  properties: { kind: 'post', ...(since ? { since } : {}) },
});
const site: Site = { ...newSite('Meadow'), features: [feature(1, '2026-03-01'), feature(2)] };

function log(broken: string | null = null): VisitLog {
  const kept: Visit[] = [];
  const work = async () => {
    if (broken) throw new Error(broken);
  };
  return {
    open: () => work().then(() => ({ visits: kept, mended: 0, damaged: 0 })),
    add: (_, visits) => work().then(() => void kept.push(...visits)),
    undo: work,
    addPhoto: work,
    photo: async () => null,
    own: async () => null,
    setOwn: async () => undefined,
    linesTrouble: null,
  };
}

async function meadow(broken: string | null = null): Promise<Store> {
  const store = new Store(new EngineClient(deaf), memoryShelf(), {
    siteId: 'meadow',
    site,
    round: { ...firstRound, shared: round },
  });
  useLog(store, log(broken));
  await openVisits(store);
  store.set({ round: { ...store.state.round, shared: round } });
  return store;
}

const { zone } = localTime(new Date());
const visit = (more: Partial<Visit>) =>
  makeVisit({
    id: `v-${JSON.stringify(more)}`,
    post: 'p1',
    box: 1,
    date: '2026-05-18',
    time: '15:00',
    zone,
    state: 'eggs',
    bird: 'eastern-bluebird',
    observer: 'Ann',
    madeAt: '2026-06-01T00:00:00Z',
    ...more,
  });
const eggs = { count: 12, color: null, pattern: null, size: null };

describe('a file with a bad visit', () => {
  it.each([
    [
      'before the box stood',
      [visit({ date: '2026-02-01' })],
      /before the box was put up \(2026-03-01\)\. Correct the date/,
    ],
    [
      'from another zone',
      [visit({ zone: zone + 420 })],
      /noted 420 minutes off this site’?'?s time zone\. Check the time zone/,
    ],
    [
      'recorded before it happened',
      [visit({ madeAt: '2026-05-17T00:00:00Z' })],
      /recorded \d+ minutes before it happened\. Check the clock/,
    ],
    [
      'after today',
      [visit({ date: '2199-05-01', madeAt: '2199-05-02T00:00:00Z' })],
      /lies after today .* Check the clock/,
    ],
    [
      'of 12 eggs of a five-egg bird',
      [visit({ eggs })],
      /12 eggs is more than one Eastern Bluebird lays .* two hens may share/,
    ],
    [
      'noted twice in one minute',
      [visit({}), visit({ note: 'again' })],
      /noted twice in the same minute\. .*both are kept/,
    ],
    ['at two boxes in one minute', [visit({}), visit({ post: 'p2', box: 2 })], /both noted at 15:00/],
    ['to a box nobody knows', [visit({}), visit({ post: 'p9', time: '16:00' })], /no post “p9”.*The visit is kept\./],
  ])('%s: said, and kept', async (_, visits, words) => {
    const store = await meadow();
    const answer = await takeFile(store, writeVisitFile({ site: 'Meadow', invented: false, visits }));
    expect(answer.kind).toBe('visits');
    const { taken, kept } = answer as Extract<typeof answer, { kind: 'visits' }>;
    expect(taken.issues.map((one) => `${one.sentence} ${one.fix}`).join('\n')).toMatch(words);
    expect(kept).toBe(true);
    expect(store.state.round.log).toHaveLength(visits.length);
  });
  it('says nothing of a good one', async () => {
    const store = await meadow();
    const answer = await takeFile(store, writeVisitFile({ site: 'Meadow', invented: false, visits: [visit({})] }));
    expect(answer).toMatchObject({ kind: 'visits', kept: true, taken: { issues: [], conflicts: [] } });
  });
  it('of another site is refused in words, and what is here stays', async () => {
    const store = await meadow();
    await keepVisits(store, [visit({})]);
    const answer = await takeFile(
      store,
      writeVisitFile({ site: 'Far Field', invented: false, visits: [visit({ post: 'x1' })] }),
    );
    expect(answer).toMatchObject({ kind: 'refused', reason: expect.stringContaining('Far Field') });
    expect(store.state.round.log).toHaveLength(1);
  });
});

describe('a visit about to be kept', () => {
  it('is compared with the one of the same minute that is kept already, and only it is named', async () => {
    const store = await meadow();
    await keepVisits(store, [visit({})]);
    const issues = oddVisits(store.state, [visit({ note: 'second look' })]);
    expect(issues.map((one) => one.id)).toEqual(['visit-same-minute']);
  });
});

describe('a clock that cannot be right', () => {
  it('is told before the walk goes on: behind the last visit, or hours off the sun', () => {
    const now = { date: '2026-05-10', time: '10:00', zone: -300, instant: '2026-05-10T15:00:00Z' };
    expect(clockDoubt(now, [visit({})], null)).toEqual({ kind: 'behind', today: '2026-05-10', last: '2026-05-18' });
    expect(clockDoubt({ ...now, date: '2026-05-19', zone: 120 }, [visit({})], -84)).toMatchObject({ kind: 'zone' });
    expect(clockDoubt({ ...now, date: '2026-05-19' }, [visit({})], -84)).toBeNull();
  });
});

describe('storage that is gone', () => {
  it('is told in words; new visits stay in the window, told as not saved', async () => {
    const store = await meadow('the database was cleared');
    expect(store.state.messages.map((one) => one.sentence).join()).toContain(
      'could not be read: the database was cleared',
    );
    expect(await keepVisits(store, [visit({})])).toBe(false);
    const { log: here, unsaved, logState, logTrouble } = store.state.round;
    expect([here.length, unsaved.length, logState, logTrouble]).toEqual([1, 1, 'memory', 'the database was cleared']);
    expect(store.state.words.round.unsaved(1, logTrouble!)).toContain('NOT saved: the database was cleared');
  });
});
