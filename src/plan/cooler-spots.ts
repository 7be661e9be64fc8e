/** Where the afternoon sun reaches a box least: for one that lost nests to heat. Shade counts there, the score only as far as it must. */
import type { BirdGuide } from '../birds/guide.ts';
import { sunHours } from '../criteria/afternoon-sun.ts';
import { makeContext } from '../criteria/context.ts';
import { scoreOf, verdictsIn } from '../criteria/quick-score.ts';
import { makeSpot } from '../criteria/spot.ts';
import { distance, type Point } from '../geometry/point.ts';
import { nudge } from '../placement/nudge.ts';
import type { PlannedBox } from '../plan-types.ts';
import {
  type BetterSpot,
  drawnPost,
  free,
  guideOf,
  mostPosts,
  type SpotFinder,
  spotAt,
  steps,
  usable,
} from './better-spots.ts';

/** Hours of sun a place must save, and points of score it may cost, to be worth the digging (ours). */
const worthHours = 0.5;
const mostLoss = 25;

interface Place {
  readonly at: Point;
  readonly post: string | null;
  readonly hours: number;
  readonly score: number;
}

/** The place with the fewest hours of afternoon sun, a few steps away or at a post left out; null when none is clearly cooler. */
export function coolerSpot(finder: SpotFinder, box: PlannedBox, taken: readonly Point[]): BetterSpot | null {
  const guide = guideOf(box.bird);
  if (!guide) return null;
  const look = looker(finder, guide);
  const here = look(box.at, box.post);
  if (!here) return null;
  const mayStand = free(finder, box, guide, taken);
  const good = (place: Place | null): place is Place =>
    place !== null && place.score > 0 && place.score >= here.score - mostLoss;
  const near = nudge(box.at, steps, (at) => {
    const place = at === box.at || mayStand(at) ? look(at, box.post) : null;
    return good(place) ? -place.hours : null;
  });
  const close = near && near.metres > 0 ? look(near.at, box.post) : null;
  const found = [close ? { ...close, post: null } : null, ...posts(finder, box, mayStand, look)].filter(good);
  const best = found.reduce<Place | null>((a, b) => (a === null || b.hours < a.hours - 1e-9 ? b : a), null);
  if (!best || here.hours - best.hours < worthHours) return null;
  return spotAt(finder, box, best.at, best.score - here.score, best.post, { there: best.hours, here: here.hours });
}

/** Sun and score of a place; null where too little is drawn to say how much sun it gets. */
function looker(finder: SpotFinder, guide: BirdGuide) {
  const { ground, suns } = finder;
  return (at: Point, post: string): Place | null => {
    const context = makeContext(makeSpot(ground, at), { ...drawnPost(finder, post, at), at }, guide, suns);
    const verdicts = verdictsIn(context);
    const judged = verdicts.some(
      ({ criterion, measured }) => criterion.id === 'afternoon-sun' && measured.raw !== null,
    );
    if (!judged) return null;
    const hours = sunHours(context.sun, context.spot.shaded(context.eye, context.sun));
    return { at, post, hours, score: scoreOf(verdicts, context).score };
  };
}

function posts(
  { plan }: SpotFinder,
  box: PlannedBox,
  mayStand: (at: Point) => boolean,
  look: ReturnType<typeof looker>,
): (Place | null)[] {
  if (box.pairedWith !== null) return [];
  return plan.leftOut
    .filter((out) => usable.includes(out.code) && out.score !== null && mayStand(out.at))
    .sort((a, b) => distance(a.at, box.at) - distance(b.at, box.at))
    .slice(0, mostPosts)
    .map((out) => look(out.at, out.post));
}
