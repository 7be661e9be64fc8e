import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical, conflictsIn, forSharing, mergeVisits, settledVisits } from '../../../src/visits/merge.ts';
import { makeVisit, type Visit, visitStates } from '../../../src/visits/visit.ts';

/** Few ids, days and walkers, so that conflicts are common. */
const anyVisit: fc.Arbitrary<Visit> = fc
  .record({
    id: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    post: fc.constantFrom('p1', 'p2'),
    date: fc.constantFrom('2026-05-01', '2026-05-08', '2026-05-09'),
    time: fc.constantFrom(null, '09:00', '15:30'),
    state: fc.constantFrom(...visitStates),
    observer: fc.constantFrom('Ann', 'Bo'),
    note: fc.constantFrom('', 'windy'),
    madeAt: fc.constantFrom('2026-05-01T10:00:00Z', '2026-05-09T10:00:00Z', 'nonsense'),
    replaces: fc.constantFrom(null, null, 'a', 'b'),
    device: fc.constantFrom('', 'phone-1', 'phone-2'),
    photo: fc.constantFrom(null, 'one.jpg'),
  })
  .map(makeVisit);
const anyLog = fc.array(anyVisit, { maxLength: 12 });
const run = { seed: 6, numRuns: 150 };
const same = (a: readonly Visit[], b: readonly Visit[]) => canonical(a) === canonical(b);

describe('merging logs', () => {
  test('idempotent', () => {
    fc.assert(
      fc.property(
        anyLog,
        (a) => same(mergeVisits(a, a), mergeVisits(a)) && same(mergeVisits(mergeVisits(a)), mergeVisits(a)),
      ),
      run,
    );
  });
  test('commutative', () => {
    fc.assert(
      fc.property(anyLog, anyLog, (a, b) => same(mergeVisits(a, b), mergeVisits(b, a))),
      run,
    );
  });
  test('associative', () => {
    fc.assert(
      fc.property(anyLog, anyLog, anyLog, (a, b, c) =>
        same(mergeVisits(mergeVisits(a, b), c), mergeVisits(a, mergeVisits(b, c))),
      ),
      run,
    );
  });
  test('four walkers in any order, any file twice: one result, nothing lost', () => {
    const walkers = fc.tuple(anyLog, anyLog, anyLog, anyLog);
    fc.assert(
      fc.property(walkers, fc.array(fc.nat(3), { minLength: 4, maxLength: 9 }), (logs, order) => {
        const needed = [...order, 0, 1, 2, 3].map((i) => logs[i]!);
        const merged = needed.reduce<readonly Visit[]>((log, next) => mergeVisits(log, next), []);
        const texts = new Set(merged.map((visit) => canonical(forSharing(visit))));
        return (
          same(merged, mergeVisits(...logs)) && logs.flat().every((visit) => texts.has(canonical(forSharing(visit))))
        );
      }),
      run,
    );
  });
  test('what is settled and what conflicts do not depend on the order', () => {
    fc.assert(
      fc.property(anyLog, anyLog, (a, b) => {
        const [one, two] = [mergeVisits(a, b), [...b, ...a]];
        return (
          same(settledVisits(one), settledVisits(two)) && canonical(conflictsIn(one)) === canonical(conflictsIn(two))
        );
      }),
      run,
    );
  });
  test('the order of members in a file does not make another record', () => {
    const visit = makeVisit({ id: 'a', post: 'p', date: '2026-05-01', state: 'empty' });
    const turned = Object.fromEntries(Object.entries(visit).reverse()) as unknown as Visit;
    expect(mergeVisits([visit], [turned])).toHaveLength(1);
  });
});

test('every member but device and photo makes another record', () => {
  const base = makeVisit({
    id: 'a',
    post: 'p',
    date: '2026-05-01',
    state: 'eggs',
    eggs: { count: 1, color: null, pattern: null, size: null },
    extra: { x: 1 },
  });
  const keys = Object.keys(base) as (keyof Visit)[];
  expect(keys.length).toBeGreaterThan(20);
  const same = keys.filter(
    (key) => mergeVisits([base], [{ ...base, [key]: 'another' } as unknown as Visit]).length === 1,
  );
  expect(same.sort()).toEqual(['device', 'photo']);
  for (const key of ['count', 'color', 'pattern', 'size']) {
    expect(
      mergeVisits([base], [{ ...base, eggs: { ...base.eggs!, [key]: 'another' } } as unknown as Visit]),
    ).toHaveLength(2);
  }
});

describe('conflicts', () => {
  const base = { id: 'a', post: 'p1', box: 7, date: '2026-05-01', state: 'eggs', observer: 'Ann' } as const;
  test('one id, two contents: both kept and shown, the later made is used', () => {
    const first = makeVisit({ ...base, madeAt: '2026-05-01T10:00:00Z' });
    const second = makeVisit({ ...base, state: 'young', madeAt: '2026-05-01T11:00:00Z' });
    const log = mergeVisits([second], [first]);
    expect(log).toHaveLength(2);
    expect(settledVisits(log).map((visit) => visit.state)).toEqual(['young']);
    expect(conflictsIn(log)[0]!.kind).toBe('same-id');
    expect(conflictsIn(log)[0]!.sentence).toMatch(/box 7.*2 versions.*All are kept/);
  });
  test('two walkers, one day, different states', () => {
    const log = [makeVisit(base), makeVisit({ ...base, id: 'b', observer: 'Bo', state: 'empty' })];
    expect(conflictsIn(log).map((conflict) => conflict.kind)).toEqual(['same-day']);
    expect(settledVisits(log)).toHaveLength(2);
  });
  test('a correction takes the old record out of use, not out of the log', () => {
    const log = mergeVisits([makeVisit(base), makeVisit({ ...base, id: 'b', state: 'young', replaces: 'a' })]);
    expect(log).toHaveLength(2);
    expect(settledVisits(log).map((visit) => visit.id)).toEqual(['b']);
  });
  test('a record that names itself or goes in a circle never throws', () => {
    const self = makeVisit({ ...base, replaces: 'a' });
    expect(settledVisits([self])).toHaveLength(1);
    const circle = [
      makeVisit({ ...base, replaces: 'b' }),
      makeVisit({ ...base, id: 'b', replaces: 'a', madeAt: '2026-06-01T00:00:00Z' }),
    ];
    expect(settledVisits(circle).map((visit) => visit.id)).toEqual(['b']);
    const outside = [...circle, makeVisit({ ...base, id: 'c', replaces: 'b' })];
    expect(settledVisits(outside).map((visit) => visit.id)).toEqual(['c']);
  });

  test('a correction of a correction, with any clocks', () => {
    const chain = [
      makeVisit({ ...base, madeAt: '2026-06-03T00:00:00Z' }),
      makeVisit({ ...base, id: 'b', replaces: 'a', madeAt: '2026-06-02T00:00:00Z' }),
      makeVisit({ ...base, id: 'c', replaces: 'b', madeAt: '2026-06-01T00:00:00Z' }),
    ];
    expect(settledVisits(chain).map((visit) => visit.id)).toEqual(['c']);
  });
  test('some record of every box stays in use', () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const settled = settledVisits(log);
        return log.length === 0 || settled.length > 0;
      }),
      run,
    );
  });
  test('a copy shared without device and photo is no conflict when it comes back', () => {
    const own = makeVisit({ ...base, device: 'phone-1', photo: 'box-7.jpg' });
    for (const log of [mergeVisits([own], [forSharing(own)]), mergeVisits([forSharing(own)], [own])]) {
      expect(log).toEqual([own]);
      expect(conflictsIn(log)).toEqual([]);
    }
  });
});
