/** What the criteria that ask "how far to the nearest …" share. */

import type { Curve } from '../birds/guide.ts';
import type { Found, Target } from '../ground/types.ts';
import type { Measured, PostContext } from './criterion.ts';
import { wantsLength, wantsText } from './curve-shape.ts';
import { lengthText } from './units.ts';

/** The nearest place of a target as a measure; not judged, with `missing` as the reason, where none is drawn. */
export function measureNearest({ spot }: PostContext, target: Target, missing: string): Measured {
  const found = spot.ground.has(target) ? spot.nearest(target) : null;
  return found ? measuredAt(found) : { raw: null, reason: missing };
}

/** A place found as a measure: its signed distance, and the place for map and paper. */
export function measuredAt({ distance, at, feature }: Found): Measured & { raw: number } {
  return { raw: distance, at: { shape: 'place', at, feature, distance } };
}

/** "46 m off", or "12 m from the edge, inside it" for a distance below zero; in the unit of `like` where that is longer. */
export function offText(metres: number, { site }: PostContext, like = 0): string {
  return metres < 0
    ? `${lengthText(-metres, site.units, like)} from the edge, inside it`
    : `${lengthText(metres, site.units, like)} off`;
}

/** How far off a thing is and what a curve wants, in one unit: "46 m off, wants 45 m". */
export function offAndWants(metres: number, curve: Curve, context: PostContext): string {
  return `${offText(metres, context, wantsLength(curve))}, ${wantsText(curve, context.site.units, Math.abs(metres))}`;
}
