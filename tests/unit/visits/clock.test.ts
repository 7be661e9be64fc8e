import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { clockFromFirstEgg, nestClock } from '../../../src/visits/clock.ts';
import { addDays, dateOf, dayOf } from '../../../src/visits/days.ts';
import { lastOpening, lastOpeningDay, openingAdvice } from '../../../src/visits/opening.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';

const bluebird = birdById('eastern-bluebird');
let n = 0;
const look = (date: string, change: Partial<Visit>): Visit =>
  makeVisit({ id: `v${n++}`, post: 'p', date, state: 'eggs', bird: bluebird.id, ...change });
const eggs = (date: string, count: number) => look(date, { eggs: { count, color: null, pattern: null, size: null } });
const young = (date: string, age: [number, number] | null, count = 4) =>
  look(date, { state: 'young', young: count, age });

describe('from what was seen', () => {
  test('counted while laying: the first egg to the day', () => {
    const clock = nestClock(bluebird, [eggs('2026-05-03', 3), eggs('2026-05-08', 5), eggs('2026-05-10', 5)]);
    expect(clock.firstEgg).toEqual({ earliest: '2026-05-01', latest: '2026-05-01' });
    expect(clock.hatch).toEqual({ earliest: '2026-05-18', latest: '2026-05-19' });
    expect(clock.fledge).toEqual({ earliest: '2026-06-03', latest: '2026-06-09' });
    expect(clock.clutch).toEqual([5, 5]);
  });
  test('only young of a known age', () => {
    const clock = nestClock(bluebird, [young('2026-05-25', [5, 7])]);
    expect(clock.hatch).toEqual({ earliest: '2026-05-18', latest: '2026-05-20' });
    expect(clock.fledge).toEqual({ earliest: '2026-06-03', latest: '2026-06-10' });
  });
  test('eggs once, nothing else: hatching within the incubation from now', () => {
    const clock = nestClock(bluebird, [eggs('2026-05-10', 4)]);
    expect(clock.hatch!.earliest >= '2026-05-10').toBe(true);
    expect(clock.hatch!.latest <= '2026-05-30').toBe(true);
    expect(clock.firstEgg!.latest).toBe('2026-05-07');
  });
  test('an empty look before bounds the first egg', () => {
    const open = nestClock(bluebird, [eggs('2026-05-10', 2)]);
    const bounded = nestClock(bluebird, [look('2026-05-08', { state: 'building' }), eggs('2026-05-10', 2)]);
    expect(dayOf(bounded.firstEgg!.earliest)).toBeGreaterThan(dayOf(open.firstEgg!.earliest));
    expect(bounded.firstEgg).toEqual({ earliest: '2026-05-08', latest: '2026-05-09' });
  });
  test('young after eggs bound the hatching between the looks', () => {
    const clock = nestClock(bluebird, [eggs('2026-05-14', 5), eggs('2026-05-16', 5), young('2026-05-19', null)]);
    expect(clock.hatch!.earliest >= '2026-05-16').toBe(true);
    expect(clock.hatch!.latest <= '2026-05-19').toBe(true);
  });
  test('no clue, no date – not a guess', () => {
    const clock = nestClock(bluebird, [look('2026-05-10', { state: 'building' })]);
    expect([clock.firstEgg, clock.hatch, clock.fledge, clock.conflict]).toEqual([null, null, null, null]);
  });
  test('clues that cannot be one nest say so', () => {
    const clock = nestClock(bluebird, [eggs('2026-05-01', 5), eggs('2026-05-04', 5), young('2026-07-20', [2, 3])]);
    expect(clock.hatch).toBeNull();
    expect(clock.conflict).toMatch(/do not fit one nest of the Eastern Bluebird/);
  });
  test('a kestrel lays every second day and sits early: wider, never narrower than the truth', () => {
    const kestrel = birdById('american-kestrel');
    const clock = clockFromFirstEgg(kestrel, '2026-04-10', 4);
    expect(clock.lastEgg).toEqual({ earliest: '2026-04-13', latest: '2026-04-16' });
    expect(clock.hatch).toEqual({ earliest: '2026-05-09', latest: '2026-05-16' });
  });

  test('the truth always lies within the span, for every bird and any looks', () => {
    const world = fc.record({
      bird: fc.constantFrom(...birdGuides),
      lay: fc.nat(1000),
      sit: fc.nat(1000),
      grow: fc.nat(1000),
      clutch: fc.nat(1000),
      looks: fc.uniqueArray(fc.integer({ min: -12, max: 110 }), { minLength: 1, maxLength: 9 }),
      aged: fc.boolean(),
    });
    fc.assert(
      fc.property(world, ({ bird, lay, sit, grow, clutch, looks, aged }) => {
        const within = ([low, high]: readonly [number, number], pick: number) => low + (pick % (high - low + 1));
        const gap = within(bird.clock.layEvery?.value ?? [1, 1], lay);
        const full = within(bird.eggs.count.value, clutch);
        const first = dayOf('2026-05-01');
        const last = first + (full - 1) * gap;
        const hatch = last + within(bird.clock.incubation.value, sit);
        const fledge = hatch + within(bird.clock.nestling.value, grow);
        const clues = [...looks]
          .sort((a, b) => a - b)
          .map((offset): Visit => {
            const day = first + offset;
            const date = dateOf(day);
            const base = { bird: bird.id };
            if (day < first) return look(date, { ...base, state: 'building' });
            if (day < hatch)
              return look(date, {
                ...base,
                state: 'eggs',
                eggs: {
                  count: Math.min(full, 1 + Math.floor((day - first) / gap)),
                  color: null,
                  pattern: null,
                  size: null,
                },
              });
            if (day < fledge)
              return look(date, {
                ...base,
                state: 'young',
                young: full,
                age: aged ? [day - hatch, day - hatch] : null,
              });
            return look(date, { ...base, state: 'fledged' });
          });
        const clock = nestClock(bird, clues);
        expect(clock.conflict).toBeNull();
        for (const [span, truth] of [
          [clock.firstEgg, first],
          [clock.lastEgg, last],
          [clock.hatch, hatch],
          [clock.fledge, fledge],
        ] as const) {
          if (span === null) continue;
          expect(dayOf(span.earliest)).toBeLessThanOrEqual(truth);
          expect(dayOf(span.latest)).toBeGreaterThanOrEqual(truth);
        }
      }),
      { seed: 2026, numRuns: 600 },
    );
  });
});

describe('opening the box', () => {
  const clock = clockFromFirstEgg(bluebird, '2026-05-01', 5);
  test('the experienced have one day more', () => {
    expect(lastOpeningDay(bluebird, 'new')).toBe(12);
    expect(lastOpeningDay(bluebird, 'experienced')).toBe(13);
    expect(lastOpening(bluebird, clock, 'experienced')).toEqual({ earliest: '2026-05-31', latest: '2026-06-01' });
  });
  test('birds that fledge early are left alone earlier; ducklings from hatching on', () => {
    expect(lastOpeningDay(birdById('prothonotary-warbler'), 'experienced')).toBe(6);
    expect(lastOpeningDay(birdById('wood-duck'), 'new')).toBe(0);
    for (const bird of birdGuides) {
      for (const experience of ['new', 'experienced'] as const) {
        const day = lastOpeningDay(bird, experience);
        expect(day === 0 || day + 3 <= bird.clock.nestling.value[0]).toBe(true);
      }
    }
  });
  test('never opened between the last opening and the latest fledging, always outside', () => {
    for (let day = 0; day < 60; day++) {
      const date = addDays('2026-05-01', day);
      const shut = date > '2026-05-30' && date <= '2026-06-09';
      expect(openingAdvice(bluebird, clock, date, 'new').do, date).toBe(shut ? 'watch' : 'open');
    }
  });
  test('the sentence gives the rule and how days are counted', () => {
    expect(openingAdvice(bluebird, clock, '2026-06-03', 'new').sentence).toBe(
      'Do not open until Jun 9: the last opening was May 30, nestling day 12 (hatch day is day 0; hatched May 18–19). Older young may jump and cannot fly yet.',
    );
  });
  test('age not known: watch first; no nest: open', () => {
    const unknown = nestClock(bluebird, [look('2026-05-10', { state: 'building' })]);
    expect(openingAdvice(bluebird, unknown, '2026-05-12', 'new').do).toBe('watch');
    expect(openingAdvice(null, null, '2026-05-12', 'new').do).toBe('open');
  });
});
