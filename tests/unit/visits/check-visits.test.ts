import { describe, expect, test } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { type CheckContext, checkVisits } from '../../../src/visits/check-visits.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';

const context: CheckContext = {
  boxes: [
    { post: 'p7', number: 7, since: '2026-03-01' },
    { post: 'p8', number: 8, since: null },
  ],
  birds: birdGuides,
  today: '2026-06-01',
  zone: -300,
};
const good = makeVisit({
  id: 'v',
  post: 'p7',
  box: 7,
  date: '2026-05-18',
  time: '15:00',
  zone: -300,
  observer: 'Ann',
  state: 'eggs',
  bird: 'eastern-bluebird',
  eggs: { count: 5, color: 'blue', pattern: 'plain', size: null },
  madeAt: '2026-05-18T20:02:00Z',
});
const ids = (...changes: Partial<Visit>[]) =>
  checkVisits(
    changes.map((change) => ({ ...good, ...change })),
    context,
  ).map((issue) => issue.id);

describe('trouble in visits', () => {
  test('a good visit has none', () => expect(ids({})).toEqual([]));
  test.each<[string, Partial<Visit>]>([
    ['visit-date-unreadable', { date: '2026-02-31' }],
    ['visit-time-unreadable', { time: '25:00', madeAt: '' }],
    ['visit-box-unknown', { post: 'p99' }],
    ['visit-number-differs', { box: 8 }],
    ['visit-before-box', { date: '2026-02-01', madeAt: '2026-05-18T20:02:00Z' }],
    ['visit-in-future', { date: '2026-06-02', madeAt: '2026-06-02T21:00:00Z' }],
    ['visit-other-zone', { zone: 120, madeAt: '2026-05-18T13:02:00Z' }],
    ['visit-clock-wrong', { madeAt: '2026-05-18T15:02:00Z' }],
    ['visit-bird-unknown', { bird: 'dodo' }],
    ['visit-count-impossible', { young: -1 }],
    ['visit-count-impossible', { age: [Number.NaN, 2] }],
    ['visit-age-reversed', { age: [9, 4] }],
    ['visit-too-many-eggs', { eggs: { count: 12, color: null, pattern: null, size: null } }],
    ['visit-state-disagrees', { state: 'empty' }],
  ])('%s', (id, change) => expect(ids(change)).toEqual([id]));
  test('12 eggs of a five-egg bird: what is usual, and the fix', () => {
    const [issue] = checkVisits([{ ...good, eggs: { count: 12, color: null, pattern: null, size: null } }], context);
    expect(issue!.sentence).toBe(
      'Visit of 2026-05-18 to box 7: 12 eggs is more than one Eastern Bluebird lays (4–6, at most 7).',
    );
    expect(issue!.fix).toMatch(/two hens/);
    expect(issue).toMatchObject({ severity: 'warning', feature: 'v', place: null });
  });
  test('twelve eggs of a Wood Duck are fine', () => {
    expect(ids({ bird: 'wood-duck', eggs: { count: 12, color: 'white', pattern: 'plain', size: 'large' } })).toEqual(
      [],
    );
  });
  test('entered from paper days later is fine', () => expect(ids({ madeAt: '2026-05-25T01:00:00Z' })).toEqual([]));
  test('one box twice in a minute; one walker at two boxes in a minute; different walkers are fine', () => {
    expect(ids({}, { id: 'w' })).toEqual(['visit-same-minute']);
    expect(ids({}, { id: 'w', post: 'p8', box: 8 })).toEqual(['visit-same-minute']);
    expect(ids({}, { id: 'w', post: 'p8', box: 8, observer: 'Bo' })).toEqual([]);
    expect(ids({ time: null }, { id: 'w', time: null })).toEqual([]);
  });
  test('nothing is thrown away or thrown', () => {
    const junk = [{ ...good, date: '', time: 'x', madeAt: '?' }];
    expect(() => checkVisits(junk, context)).not.toThrow();
    expect(junk).toHaveLength(1);
  });
});
