/** Whatever a file holds, the season's parts answer with issues and dates, never with a throw or NaN. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { checkVisits } from '../../../src/visits/check-visits.ts';
import { dueVisits } from '../../../src/visits/due.ts';
import { conflictsIn } from '../../../src/visits/merge.ts';
import { activeNest, nestsFrom } from '../../../src/visits/nests.ts';
import { reviewSeason } from '../../../src/visits/review.ts';
import { cups, eggColors, materials, troubles, visitStates } from '../../../src/visits/visit.ts';
import { readVisitFile, writeVisitFile } from '../../../src/visits/visit-file.ts';
import { nestRows, visitRows } from '../../../src/visits/visit-rows.ts';

const odd = fc.oneof(
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.string(),
  fc.constant(null),
  fc.constant([]),
  fc.constant({}),
);
const number = fc.oneof({ weight: 5, arbitrary: fc.integer({ min: 0, max: 12 }) }, { weight: 1, arbitrary: odd });
const date = fc.oneof(
  {
    weight: 8,
    arbitrary: fc
      .integer({ min: 0, max: 700 })
      .map((day) => new Date(Date.UTC(2025, 2, 1) + day * 86_400_000).toISOString().slice(0, 10)),
  },
  { weight: 1, arbitrary: fc.constantFrom('2026-02-30', '9999-12-31', '0001-01-01', 'soon', '') },
);
const anyVisit = fc.record({
  id: fc.string({ minLength: 1, maxLength: 2 }),
  post: fc.constantFrom('p1', 'p2', '__proto__', 'x'),
  box: number,
  date,
  time: fc.constantFrom(null, '09:00', '99:99', ''),
  zone: number,
  state: fc.constantFrom(...visitStates),
  bird: fc.constantFrom(null, 'dodo', 'toString', ...birdGuides.map((bird) => bird.id)),
  material: fc.uniqueArray(fc.constantFrom(...materials, 'seaweed')),
  cup: fc.constantFrom(null, ...cups),
  eggs: fc.oneof(odd, fc.record({ count: number, color: fc.constantFrom(null, ...eggColors) })),
  young: number,
  age: fc.oneof(fc.constant(null), fc.tuple(number, number)),
  dead: number,
  trouble: fc.uniqueArray(fc.constantFrom(...troubles)),
  madeAt: fc.constantFrom('2026-05-01T10:00:00Z', 'yesterday', ''),
  replaces: fc.constantFrom(null, 'a', ' '),
});

test('any visits', () => {
  fc.assert(
    fc.property(fc.array(anyVisit, { maxLength: 25 }), (made) => {
      const { file } = readVisitFile(JSON.stringify({ meadowpostVisits: 1, site: 'x', visits: made }));
      const visits = file!.visits;
      expect(readVisitFile(writeVisitFile(file!)).file).toEqual(file);
      const boxes = ['p1', 'p2', '__proto__'].map((post, i) => ({
        post,
        number: i,
        since: '2025-01-01',
        site: post,
        bird: 'tree-swallow',
        scores: { a: i / 2 },
        guarded: null,
        better: null,
      }));
      const today = '2026-08-01';
      const nests = nestsFrom(visits, birdGuides, today);
      const due = dueVisits(
        boxes.map(({ post, number: box }) => {
          const nest = activeNest(nests, post);
          const own = visits.filter(
            (visit) => visit.post === post && /^20\d\d-/.test(visit.date) && visit.date !== '2026-02-30',
          );
          return {
            post,
            number: box,
            visits: own,
            bird: birdGuides.find((bird) => bird.id === nest?.bird) ?? null,
            clock: nest?.clock ?? null,
          };
        }),
        today,
        'new',
      );
      const everything = JSON.stringify([
        checkVisits(visits, { boxes, birds: birdGuides, today, zone: 0 }),
        conflictsIn(visits),
        nests,
        due,
        reviewSeason({ boxes, visits, birds: birdGuides, today, seed: 1 }),
        visitRows(visits),
        nestRows(nests),
      ]);
      expect(everything).not.toMatch(/NaN|Infinity|Invalid|undefined/);
    }),
    { seed: 99, numRuns: 250 },
  );
});
