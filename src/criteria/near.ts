/** What the criteria that ask "how far to the nearest …" share. */

import type { Curve } from '../birds/guide.ts';
import type { Found, Target } from '../ground/types.ts';
import type { Measured, PostContext } from './criterion.ts';
import { wantsLength, wantsText } from './curve-shape.ts';
import { atLeastOff } from './none-near.ts';
import { lengthText } from './units.ts';

/**
 * The nearest place of a target as a measure. Where none is drawn on the site, a bird that wants one near (`curve`) is told how far off it
 * must be at least; else it is not judged, with `missing` as the reason.
 */
export function measureNearest({ spot }: PostContext, target: Target, missing: string, curve?: Curve): Measured {
  const found = spot.ground.has(target) ? spot.nearest(target) : null;
  if (found) return measuredAt(found);
  const least = curve ? atLeastOff(spot, curve) : null;
  return least === null ? { raw: null, reason: missing } : { raw: least, parts: { atLeast: 1 } };
}

/** A place found as a measure: its signed distance, and the place for map and paper. */
export function measuredAt({ distance, at, feature }: Found): Measured & { raw: number } {
  return { raw: distance, at: { shape: 'place', at, feature, distance } };
}

/** How a distance to a thing is said: outside it, and inside it. */
export interface Saying {
  /** "Woods edge", said before "46 m off". */
  readonly off: string;
  /** "inside the woods", said after "12 m". */
  readonly inside: string;
  /** "No woods or trees", said before "within 80 m". */
  readonly none: string;
}

/** "Woods edge 46 m off", "Woods edge at the post", "12 m inside the woods"; in the unit of `like` where that is longer. */
export function offText(
  metres: number,
  { off, inside }: Pick<Saying, 'off' | 'inside'>,
  context: PostContext,
  like = 0,
) {
  const length = lengthText(Math.abs(metres), context.site.units, like);
  if (/^0 /.test(length)) return `${off} at the post`;
  return metres < 0 ? `${length} ${inside}` : `${off} ${length} off`;
}

/** How far off a thing is and what a curve wants, in one unit: "Woods edge 46 m off, wants 45 m". */
export function offAndWants(
  measured: Measured & { raw: number },
  saying: Saying,
  curve: Curve,
  context: PostContext,
): string {
  const { raw, parts } = measured;
  const { units } = context.site;
  const wants = wantsText(curve, units, Math.abs(raw));
  if (parts?.atLeast) return `${saying.none} within ${lengthText(raw, units, wantsLength(curve))}, ${wants}`;
  return `${offText(raw, saying, context, wantsLength(curve))}, ${wants}`;
}
