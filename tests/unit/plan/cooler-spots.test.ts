/** A box that lost a nest to heat is offered the shadiest place near, not the one with the best score. */
import { describe, expect, it } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { sunHours } from '../../../src/criteria/afternoon-sun.ts';
import { makeContext } from '../../../src/criteria/context.ts';
import { makeSpot } from '../../../src/criteria/spot.ts';
import { makeSuns } from '../../../src/criteria/suns.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { placeCandidate } from '../../../src/placement/candidates.ts';
import { coolerSpot } from '../../../src/plan/cooler-spots.ts';
import { changesOf } from '../../../src/plan/next-year.ts';
import { reviewTrail } from '../../../src/plan/review-trail.ts';
import { makePlan } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

/** A meadow with one post in full sun; tall woods stand to the west of a second post. */
const [lon, lat] = [-84, 40];
const east = (metres: number) => lon + metres / 85_270;
const north = (metres: number) => lat + metres / 111_030;
const ring = (w: number, s: number, e: number, n: number) => [
  [east(w), north(s)],
  [east(e), north(s)],
  [east(e), north(n)],
  [east(w), north(n)],
  [east(w), north(s)],
];
const area = (id: string, kind: string, at: number[][], more = {}) => ({
  type: 'Feature',
  id,
  geometry: { type: 'Polygon', coordinates: [at] },
  properties: { kind, ...more },
});
const post = (id: string, x: number, y: number) => ({
  type: 'Feature',
  id,
  geometry: { type: 'Point', coordinates: [east(x), north(y)] },
  properties: { kind: 'post', state: 'candidate', name: id },
});
const file = (sites: number) =>
  JSON.stringify({
    type: 'FeatureCollection',
    meadowpost: {
      version: 1,
      name: 'Shade',
      date: '2026-04-01',
      region: 'eastern-north-america',
      wanted: [{ bird: 'eastern-bluebird', sites }],
    },
    features: [
      area('meadow', 'short-grass', ring(-150, -150, 150, 150)),
      area('wood', 'woods', ring(-150, 0, -80, 100), { height: 25 }),
      post('sunny', 60, -60),
      post('shady', -50, 50),
    ],
  });
const site = readSite(file(1), 'shade').site!;
const plan = await makePlan(site, { proof: 'none' });
const ground = prepareGround(site);
const suns = makeSuns(ground, birdGuides);
const finder = { ground, suns, plan, say: (metres: number) => `${Math.round(metres)} m` };
const guide = birdById('eastern-bluebird');
const hoursAt = (at: Point) => {
  const context = makeContext(makeSpot(ground, at), placeCandidate('x', at), guide, suns);
  return sunHours(context.sun, context.spot.shaded(context.eye, context.sun));
};

/** The box stands in full sun; woods stand west of the post left out. */
const [box] = plan.boxes;
const eggs = { count: 5, color: null, pattern: null, size: null };
const bird = 'eastern-bluebird';
const lost = (trouble: 'heat' | 'cold') => [
  makeVisit({ id: 'a', post: 'sunny', date: '2026-06-01', state: 'eggs', bird, eggs }),
  makeVisit({ id: 'b', post: 'sunny', date: '2026-06-08', state: 'failed', bird, trouble: [trouble] }),
];
const reviewed = (trouble: 'heat' | 'cold') =>
  reviewTrail({ ground, suns, plan, visits: lost(trouble), today: '2026-11-01', seed: 1 });

describe('the shadiest place near a box', () => {
  it('is the post in the evening shade of the woods, with its hours of sun beside those of the box', () => {
    expect([box!.post, plan.leftOut.map((one) => one.post)]).toEqual(['sunny', ['shady']]);
    const spot = coolerSpot(finder, box!, []);
    expect(spot).toMatchObject({ how: 'post', post: 'shady' });
    expect(spot!.sun!.here).toBeCloseTo(hoursAt(box!.at), 6);
    expect(spot!.sun!.there).toBeCloseTo(hoursAt(ground.frame.toPlane(spot!.position)), 6);
    expect(spot!.sun!.there).toBeLessThan(spot!.sun!.here - 0.5);
  });
  it('is not offered where another box has it already', () => {
    expect(
      coolerSpot(
        finder,
        box!,
        plan.leftOut.map((one) => one.at),
      ),
    ).toBeNull();
  });
  it('is in the advice and the draft of a box that lost a nest to heat, though the score there is lower', () => {
    const trail = reviewed('heat');
    const [advice] = trail.review.boxes[0]!.advice;
    expect(advice).toMatchObject({ kind: 'move', wants: 'shade' });
    expect(advice!.sentence).toMatch(
      /lost 1 nest to heat and fledged 0\. In the shade: the post “shady” \d+ yd northwest gets 3\.7 hours of afternoon sun instead of 5\.0\./,
    );
    expect(trail.moves.sunny!.gain).toBeLessThan(0);
    expect(changesOf(trail, plan)[0]).toMatchObject({ kind: 'move', cannot: null });
    expect(changesOf(trail, plan)[0]!.sentence).toMatch(/3\.7 hours of afternoon sun, not 5\.0; \d+ points less/);
  });
  it('is not looked for when a nest was lost to cold', () => {
    expect(reviewed('cold').moves).toEqual({});
  });
  it('says so when there is none near, and keeps the box', () => {
    const alone: typeof plan = { ...plan, leftOut: [] };
    const trail = reviewTrail({ ground, suns, plan: alone, visits: lost('heat'), today: '2026-11-01', seed: 1 });
    expect(trail.review.boxes[0]!.advice[0]).toMatchObject({ kind: 'keep' });
    expect(trail.review.boxes[0]!.advice[0]!.sentence).toContain('No clearly shadier spot is known near it.');
    expect(changesOf(trail, alone).map(({ kind, cannot }) => [kind, cannot])).toEqual([['keep', null]]);
  });
  it('does not move a box that fledged more than it lost to heat', () => {
    const good = [2023, 2024].flatMap((year) => [
      makeVisit({ id: `c${year}`, post: 'sunny', date: `${year}-05-01`, state: 'eggs', bird, eggs }),
      makeVisit({ id: `d${year}`, post: 'sunny', date: `${year}-06-08`, state: 'fledged', bird }),
    ]);
    const visits = [...good, ...lost('heat')];
    const { review } = reviewTrail({ ground, suns, plan, visits, today: '2026-11-01', seed: 1 });
    expect(review.boxes[0]!.advice[0]).toMatchObject({ kind: 'keep', to: null });
    expect(review.boxes[0]!.advice[0]!.sentence).toMatch(
      /lost 1 nest to heat and fledged 2\. It does well where it is\. A pale, vented box/,
    );
  });
});
