/** Where the afternoon sun reaches a box least: for one that lost nests to heat. Shade counts there, the score only as far as it must. */
import type { BirdGuide } from '../birds/guide.ts';
import { afternoonSun } from '../criteria/afternoon-sun.ts';
import { makeContext } from '../criteria/context.ts';
import { quickScore } from '../criteria/quick-score.ts';
import { makeSpot } from '../criteria/spot.ts';
import { destination, distance, type Point } from '../geometry/point.ts';
import type { Candidate, PlannedBox } from '../plan-types.ts';
import {
  type BetterSpot,
  drawnPost,
  free,
  guideOf,
  mostPosts,
  type SpotFinder,
  spotAt,
  usable,
} from './better-spots.ts';

/** Hours of sun a place must save, and points of score it may cost, to be worth the digging (ours). */
const worthHours = 0.5;
const mostLoss = 25;

/** Rings of places looked at around a box, metres, and places on each (ours: shade changes over metres, not centimetres). */
const rings = [3, 6, 9, 12];
const onRing = 12;
/** Places scored, fewest hours first: the shadiest may be too near to what throws the shade. */
const mostScored = 24;

/** The place with the fewest hours of afternoon sun, a few steps away or at a post left out; null when none is clearly cooler. */
export function coolerSpot(finder: SpotFinder, box: PlannedBox, taken: readonly Point[]): BetterSpot | null {
  const guide = guideOf(box.bird);
  if (!guide) return null;
  const own: Candidate = drawnPost(finder, box.post, box.at);
  const sun = sunAt(finder, guide);
  const here = sun(own);
  if (here === null) return null;
  const mayStand = free(finder, box, guide, taken);
  const cooler = [...around(box, own), ...posts(finder, box)]
    .filter(({ at }) => mayStand(at))
    .flatMap((place) => {
      const hours = sun(place.as);
      return hours !== null && here - hours >= worthHours ? [{ ...place, hours }] : [];
    })
    .sort((a, b) => a.hours - b.hours || distance(a.at, box.at) - distance(b.at, box.at));
  const score = (as: Candidate) => quickScore(finder.ground, as, guide, finder.suns);
  const now = cooler.length > 0 ? score(own) : 0;
  for (const { at, post, as, hours } of cooler.slice(0, mostScored)) {
    const there = score(as);
    if (there > 0 && there >= now - mostLoss) return spotAt(finder, box, at, there - now, post, { there: hours, here });
  }
  return null;
}

interface Place {
  readonly at: Point;
  /** Id of the left-out post it is at. */
  readonly post: string | null;
  /** The post that would stand there. */
  readonly as: Candidate;
}

function around({ at }: PlannedBox, own: Candidate): Place[] {
  const turns = Array.from({ length: onRing }, (_, i) => (360 / onRing) * i);
  return rings.flatMap((metres) =>
    turns.map((turn) => {
      const there = destination(at, turn, metres);
      return { at: there, post: null, as: { ...own, at: there } };
    }),
  );
}

function posts(finder: SpotFinder, box: PlannedBox): Place[] {
  if (box.pairedWith !== null) return [];
  return finder.plan.leftOut
    .filter((out) => usable.includes(out.code) && out.score !== null)
    .sort((a, b) => distance(a.at, box.at) - distance(b.at, box.at))
    .slice(0, mostPosts)
    .map(({ at, post }) => ({ at, post, as: drawnPost(finder, post, at) }));
}

/** Afternoon hours of sun at a place; null where too little is drawn to say. */
function sunAt({ ground, suns }: SpotFinder, guide: BirdGuide) {
  return (as: Candidate): number | null =>
    afternoonSun.measure(makeContext(makeSpot(ground, as.at), as, guide, suns)).raw;
}
