import { describe, expect, test } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { activeNest, exposureDays, nestsFrom } from '../../../src/visits/nests.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';

let n = 0;
const look = (date: string, state: Visit['state'], change: Partial<Visit> = {}): Visit =>
  makeVisit({
    id: `v${n++}`,
    post: 'p7',
    box: 7,
    date,
    state,
    bird: state === 'empty' ? null : 'eastern-bluebird',
    ...change,
  });
const eggs = (date: string, count: number, change: Partial<Visit> = {}) =>
  look(date, 'eggs', { eggs: { count, color: 'blue', pattern: 'plain', size: null }, ...change });
const young = (date: string, count: number, change: Partial<Visit> = {}) =>
  look(date, 'young', { young: count, ...change });
const nests = (visits: Visit[], today = '2026-09-01') => nestsFrom(visits, birdGuides, today);

describe('one attempt', () => {
  const story = [
    look('2026-04-20', 'empty'),
    look('2026-04-27', 'building'),
    eggs('2026-05-03', 3),
    eggs('2026-05-10', 5),
    eggs('2026-05-17', 5),
    young('2026-05-24', 4, { age: [5, 6] }),
    look('2026-06-10', 'fledged'),
  ];
  test('fledged: dates, counts, exposure to the middle of fledging', () => {
    const [nest, ...rest] = nests(story);
    expect(rest).toEqual([]);
    expect(nest).toMatchObject({
      post: 'p7',
      box: 7,
      year: 2026,
      attempt: 1,
      bird: 'eastern-bluebird',
      eggs: 5,
      young: 4,
      outcome: 'fledged',
      cause: null,
      fledged: [1, 4],
      found: '2026-05-03',
      lastActive: '2026-05-24',
      ended: '2026-06-10',
    });
    expect(nest!.clock!.firstEgg).toEqual({ earliest: '2026-05-01', latest: '2026-05-01' });
    expect(nest!.clock!.hatch).toEqual({ earliest: '2026-05-18', latest: '2026-05-19' });
    expect(exposureDays(nest!)).toBe(34); // 3 May to 6 June, the middle of 3–9 June
    expect(nest!.visits).toHaveLength(6);
  });
  test('the order of the log does not matter', () => {
    expect(nests([...story].reverse())).toEqual(nests(story));
  });
  test('young counted dead at the end did not leave', () => {
    const [nest] = nests([...story.slice(0, -1), look('2026-06-10', 'fledged', { dead: 1 })]);
    expect(nest!.fledged).toEqual([1, 3]);
  });
  test('a count made at the end wins', () => {
    const [nest] = nests([...story.slice(0, -1), look('2026-06-10', 'fledged', { young: 3 })]);
    expect(nest!.fledged).toEqual([1, 3]);
  });
});

describe('other ends', () => {
  test.each<[string, Partial<Visit>, string]>([
    ['predator', { trouble: ['predator-sign'] }, 'predator'],
    ['snake', { trouble: ['snake'] }, 'predator'],
    ['wet', { trouble: ['water'] }, 'weather'],
    ['heat', { trouble: ['heat'] }, 'heat'],
    ['nothing seen', {}, 'not-seen'],
  ])('failed: %s', (_, change, cause) => {
    const [nest] = nests([eggs('2026-05-03', 3), eggs('2026-05-10', 5), look('2026-05-17', 'failed', change)]);
    expect(nest).toMatchObject({ outcome: 'failed', cause, fledged: null });
    expect(exposureDays(nest!)).toBe(10.5);
  });
  test('another user took the box', () => {
    const [nest] = nests([eggs('2026-05-03', 3), look('2026-05-10', 'other-user', { bird: 'house-sparrow' })]);
    expect(nest).toMatchObject({ outcome: 'failed', cause: 'competitor', bird: 'eastern-bluebird' });
  });
  test('empty too early to have fledged: failed; empty later with nothing said: nobody knows', () => {
    const start = [eggs('2026-05-03', 3), eggs('2026-05-10', 5), young('2026-05-20', 5, { age: [1, 2] })];
    expect(nests([...start, look('2026-05-27', 'empty')])[0]).toMatchObject({ outcome: 'failed' });
    expect(nests([...start, look('2026-06-12', 'empty')])[0]).toMatchObject({ outcome: 'unknown', fledged: null });
  });
  test('unknown fate: exposure ends on the last look alive', () => {
    const [nest] = nests([eggs('2026-05-03', 3), eggs('2026-05-10', 5)]);
    expect(nest!.outcome).toBe('unknown');
    expect(exposureDays(nest!)).toBe(7);
  });
  test('still going on', () => {
    const now = nests([eggs('2026-05-03', 3), eggs('2026-05-10', 5)], '2026-05-12');
    expect(now[0]!.outcome).toBe('unfinished');
    expect(activeNest(now, 'p7')).toBe(now[0]);
    expect(activeNest(now, 'p8')).toBeNull();
  });
  test('a wren’s dummy never held eggs', () => {
    const [nest] = nests([
      look('2026-05-20', 'building', { bird: 'house-wren', material: ['twigs'] }),
      look('2026-06-20', 'empty'),
    ]);
    expect(nest).toMatchObject({ outcome: 'no-eggs', eggs: null, found: null, clock: null });
    expect(exposureDays(nest!)).toBeNull();
  });
});

describe('several attempts', () => {
  test('two broods in a season', () => {
    const found = nests([
      eggs('2026-04-20', 5),
      young('2026-05-10', 5),
      look('2026-05-28', 'fledged'),
      eggs('2026-06-10', 4),
      look('2026-06-17', 'failed'),
      look('2027-04-20', 'building'),
    ]);
    expect(found.map(({ year, attempt, outcome }) => [year, attempt, outcome])).toEqual([
      [2026, 1, 'fledged'],
      [2026, 2, 'failed'],
      [2027, 1, 'no-eggs'],
    ]);
  });
  test('eggs of another bird, or eggs after young, are a new nest', () => {
    expect(
      nests([eggs('2026-05-03', 3), eggs('2026-05-17', 4, { bird: 'tree-swallow' })]).map((nest) => nest.bird),
    ).toEqual(['eastern-bluebird', 'tree-swallow']);
    expect(nests([eggs('2026-05-03', 5), young('2026-05-20', 5), eggs('2026-06-20', 4)])).toHaveLength(2);
  });
  test('next year is another story', () => {
    expect(nests([eggs('2025-05-03', 5), eggs('2026-05-03', 5)]).map((nest) => nest.outcome)).toEqual([
      'unknown',
      'unknown',
    ]);
  });
  test('boxes are kept apart; unreadable dates and unknown birds never throw', () => {
    const found = nests([
      eggs('2026-05-03', 3),
      eggs('2026-05-03', 3, { post: 'p8' }),
      eggs('2026-02-31', 3),
      eggs('2026-05-03', 3, { post: 'p9', bird: 'dodo' }),
    ]);
    expect(found.map((nest) => nest.post)).toEqual(['p7', 'p8', 'p9']);
    expect(found[2]!.clock).toBeNull();
  });
  test('nothing at all', () => expect(nests([])).toEqual([]));
});
