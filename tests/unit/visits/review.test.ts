import { describe, expect, test } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { sourceByKey } from '../../../src/birds/sources.ts';
import { adviceFor, type BoxFacts } from '../../../src/visits/advice.ts';
import { inventSeasons } from '../../../src/visits/invent.ts';
import { type ReviewBox, reviewSeason } from '../../../src/visits/review.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';

const reviewBox = (number: number, change: Partial<ReviewBox> = {}): ReviewBox => ({
  post: `p${number}`,
  number,
  site: `p${number}`,
  bird: 'eastern-bluebird',
  scores: {},
  guarded: null,
  better: null,
  ...change,
});
let n = 0;
const look = (post: string, date: string, state: Visit['state'], change: Partial<Visit> = {}) =>
  makeVisit({ id: `v${n++}`, post, date, state, bird: state === 'empty' ? null : 'eastern-bluebird', ...change });
const eggs = (post: string, date: string, bird = 'eastern-bluebird') =>
  look(post, date, 'eggs', { bird, eggs: { count: 5, color: null, pattern: null, size: null } });
const review = (boxes: ReviewBox[], visits: readonly Visit[]) =>
  reviewSeason({ boxes, visits, birds: birdGuides, today: '2027-01-01', seed: 1 });

describe('occupancy counts sites, not boxes', () => {
  test('47 nests in 50 pairs are 94 % of sites (47 % of boxes)', () => {
    const boxes = Array.from({ length: 100 }, (_, i) => reviewBox(i, { site: `site-${Math.floor(i / 2)}` }));
    const visits = boxes.flatMap((box, i) =>
      i % 2 === 0 && i / 2 < 47 ? [eggs(box.post, '2026-05-03')] : [look(box.post, '2026-05-03', 'empty')],
    );
    const { occupancy } = review(boxes, visits);
    expect(occupancy).toMatchObject({ part: 47, of: 50, share: 0.94 });
    expect(occupancy.interval!.low).toBeCloseTo(0.8378, 3); // Wilson, 47 of 50
  });
  test('both boxes of a pair used are one site; a pest’s nest and a dummy are none', () => {
    const boxes = [reviewBox(1, { site: 's' }), reviewBox(2, { site: 's' }), reviewBox(3), reviewBox(4)];
    const visits = [
      eggs('p1', '2026-05-03'),
      eggs('p2', '2026-05-03', 'tree-swallow'),
      eggs('p3', '2026-05-03', 'house-sparrow'),
      look('p4', '2026-05-03', 'building', { bird: 'house-wren' }),
    ];
    expect(review(boxes, visits).occupancy).toMatchObject({ part: 1, of: 3 });
  });
  test('sites nobody looked at are not counted; years are told apart', () => {
    const boxes = [reviewBox(1), reviewBox(2)];
    const found = review(boxes, [eggs('p1', '2025-05-03'), look('p1', '2026-05-03', 'empty')]);
    expect(found.occupancy).toMatchObject({ part: 1, of: 2 });
    expect(found.byYear.map(({ year, occupancy }) => [year, occupancy.part, occupancy.of])).toEqual([
      [2025, 1, 1],
      [2026, 0, 1],
    ]);
  });
  test('nothing at all: no share, no NaN, too few to tell', () => {
    const found = review([reviewBox(1)], []);
    expect(found.occupancy).toEqual({ part: 0, of: 0, share: null, interval: null });
    expect(found.told.kind).toBe('too-few');
    expect(found.boxes[0]!.advice[0]!.sentence).toBe('Box 1 was not looked at: nothing can be said.');
    expect(JSON.stringify(found)).not.toContain('NaN');
    expect(review([], []).boxes).toEqual([]);
  });
});

describe('by bird', () => {
  const season = [
    ...['p1', 'p2', 'p3'].flatMap((post) => [
      eggs(post, '2026-05-03'),
      eggs(post, '2026-05-10'),
      look(post, '2026-05-24', 'young', { young: 4 }),
      look(post, '2026-06-14', 'fledged'),
    ]),
    eggs('p4', '2026-05-03'),
    look('p4', '2026-05-10', 'failed', { trouble: ['predator-sign'] }),
    eggs('p5', '2026-05-03'),
  ];
  const found = review(
    [1, 2, 3, 4, 5].map((i) => reviewBox(i)),
    season,
  );
  test('success of those whose end was seen, exact interval; Mayfield beside it', () => {
    const [bird] = found.birds;
    expect(bird).toMatchObject({
      bird: 'eastern-bluebird',
      nests: 5,
      fledged: [3, 12],
      success: { part: 3, of: 4, share: 0.75 },
    });
    expect(bird!.success.interval!.low).toBeCloseTo(0.194, 3); // Clopper–Pearson, 3 of 4
    expect(bird!.survival!.losses).toBe(1);
    expect(bird!.period!.days).toBe(36);
    expect(bird!.period!.share).toBeCloseTo(bird!.survival!.daily ** 36, 12);
  });
  test('causes and the box sentence', () => {
    expect(found.causes).toEqual({ predator: 1 });
    expect(found.boxes[3]!.sentence).toBe(
      'Box 4: 1 season looked at, 1 nest, 0 fledged (up to 0 young), 1 failed (1 predator).',
    );
    expect(found.boxes[3]!.advice.map((advice) => advice.kind)).toEqual(['guard']);
  });
});

test('a guard that was added on a visit is not advised again', () => {
  const lost = [eggs('p1', '2026-05-03'), look('p1', '2026-05-10', 'failed', { trouble: ['predator-sign'] })];
  const kinds = (visits: Visit[]) => review([reviewBox(1)], visits).boxes[0]!.advice.map((advice) => advice.kind);
  expect(kinds(lost)).toEqual(['guard']);
  expect(kinds([...lost, look('p1', '2026-05-11', 'empty', { action: ['guard-added'] })])).toEqual(['keep']);
});

describe('advice', () => {
  const facts: BoxFacts = {
    name: 'Box 7',
    seasons: 3,
    usedSeasons: 2,
    fledged: 2,
    failed: 0,
    causes: {},
    pestNests: 0,
    rivalNests: 0,
    rivalShare: 0,
    paired: false,
    pairs: true,
    guarded: null,
    entrance: 0.9,
    better: null,
  };
  const shady = { label: 'a spot 20 ft east', gain: -4, sun: { there: 2, here: 4.5 } };
  const better = { label: 'a post 40 yd east', gain: 12 };
  const kinds = (change: Partial<BoxFacts>) => adviceFor({ ...facts, ...change }).map((advice) => advice.kind);
  test.each<[string, Partial<BoxFacts>, string[]]>([
    ['nothing wrong', {}, ['keep']],
    ['unused two years, better spot', { usedSeasons: 0, seasons: 2, fledged: 0, better }, ['move']],
    ['unused two years, no better spot: wait', { usedSeasons: 0, seasons: 2, fledged: 0 }, ['keep']],
    ['unused three years, no better spot', { usedSeasons: 0, fledged: 0 }, ['retire']],
    [
      'unused, the better spot is hardly better',
      { usedSeasons: 0, fledged: 0, better: { label: 'x', gain: 2 } },
      ['retire'],
    ],
    ['sparrows twice', { pestNests: 2 }, ['move']],
    ['loses more than it fledges', { fledged: 1, failed: 3, better }, ['move']],
    ['predator, no guard', { failed: 1, causes: { predator: 1 }, guarded: false }, ['guard']],
    ['predator in spite of a guard', { failed: 1, causes: { predator: 1 }, guarded: true }, ['keep']],
    ['swallows hold most boxes', { rivalNests: 1, rivalShare: 0.6 }, ['pair']],
    ['a swallow now and then', { rivalNests: 1, rivalShare: 0.2 }, ['keep']],
    ['already a pair', { rivalNests: 1, rivalShare: 0.6, paired: true }, ['keep']],
    ['wet nest, bad facing', { failed: 1, causes: { weather: 1 }, entrance: 0.2 }, ['re-face']],
    ['wet nest, good facing', { failed: 1, causes: { weather: 1 } }, ['keep']],
    [
      'heat: shade, never turning',
      { failed: 1, fledged: 0, causes: { heat: 1 }, entrance: 0.2, better: shady },
      ['move'],
    ],
    ['heat without a shadier spot', { failed: 1, fledged: 0, causes: { heat: 1 }, better }, ['keep']],
    ['heat in a box that does well', { failed: 1, fledged: 2, causes: { heat: 1 }, better: shady }, ['keep']],
    [
      'several at once, the weightiest first',
      { failed: 2, fledged: 0, causes: { predator: 1, weather: 1 }, entrance: 0.1, better },
      ['move', 'guard', 're-face'],
    ],
  ])('%s', (_, change, expected) => expect(kinds(change)).toEqual(expected));
  test('carries the gain, evidence and known sources; promises nothing', () => {
    const all = adviceFor({
      ...facts,
      failed: 3,
      fledged: 0,
      causes: { predator: 2, heat: 1, weather: 1 },
      entrance: 0.1,
      better,
      rivalNests: 1,
      rivalShare: 0.9,
      pestNests: 2,
    });
    expect(all.map((advice) => advice.kind)).toEqual(['move', 'guard', 'pair', 're-face']);
    expect(all[0]!.to).toEqual(better);
    for (const advice of all) {
      for (const key of advice.sources) sourceByKey(key);
      expect(advice.sentence).toMatch(/Box 7|the trail/);
      expect(advice.sentence).not.toMatch(/predator-?proof|\bsafe\b/i);
    }
    expect(all[1]!.sentence).toContain('6.7 % better; none is proof against every animal');
  });
});

describe('a three-year invented trail', () => {
  const boxes = Array.from({ length: 40 }, (_, i) => ({
    post: `p${i + 1}`,
    number: i + 1,
    bird: birdById('eastern-bluebird'),
    score: i / 39,
  }));
  const reviewBoxes = boxes.map((box) =>
    reviewBox(box.number, { scores: { openness: box.score, perch: ((box.number * 7) % 11) / 11 } }),
  );
  const visits = inventSeasons({ boxes, firstYear: 2024, years: 3, seed: 8 });
  const found = review(reviewBoxes, visits);
  test('finds what the generator built in, and only that', () => {
    if (found.told.kind !== 'told') throw new Error('expected an answer');
    expect(found.told.criteria.find((one) => one.criterion === 'openness')).toMatchObject({ verdict: 'told' });
    expect(found.told.criteria.find((one) => one.criterion === 'perch')).toMatchObject({ verdict: 'no-sign' });
  });
  test('counts add up', () => {
    expect(found.years).toEqual([2024, 2025, 2026]);
    expect(found.occupancy.of).toBe(120);
    expect(found.nests.length).toBe(found.boxes.reduce((sum, box) => sum + box.nests.length, 0));
    const [bird] = found.birds;
    expect(bird!.success.part + found.nests.filter((nest) => nest.outcome === 'failed').length).toBe(bird!.success.of);
    expect(Object.values(found.causes).reduce((sum, count) => sum + count, 0)).toBe(
      found.nests.filter((nest) => nest.outcome === 'failed').length,
    );
    for (const box of found.boxes) expect(box.advice.length).toBeGreaterThan(0);
  });
  test('the order and doubling of visits change nothing', () => {
    expect(review(reviewBoxes, [...visits, ...visits].reverse())).toEqual(found);
  });
});
