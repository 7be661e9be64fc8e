/** Things nobody drew on ground that is drawn: they are at least so far off. */

import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { Spot } from './spot.ts';

/** Discs that are looked at, metres; the largest that is drawn counts. */
const reaches = [160, 80, 40] as const;

/** Most of a disc that may be undrawn for it to count as drawn. */
const mostUndrawn = 0.01;

const owner = {};

/** Metres around a place within which all ground is drawn: 160, 80 or 40; 0 when less is. Kept on the spot. */
function drawnAround(spot: Spot): number {
  return spot.keep(owner, 0, () => reaches.find((reach) => spot.shares(reach).unmapped <= mostUndrawn) ?? 0);
}

/** What a curve lets one say of a thing that is drawn nowhere within `far` metres: whether knowing so much is worth anything. */
function tells(curve: Curve, far: number): boolean {
  const here = curveAt(curve, far);
  let best = 0;
  for (const [raw, score] of curve) {
    if (raw >= far && score > here) return false;
    if (score > best) best = score;
  }
  return here < best;
}

/**
 * For a thing that is drawn nowhere on a site and that the bird wants near: how far off it must be at least, since the ground around is
 * drawn without it; null where that says nothing, because too little is drawn or because the bird would rather have it far off.
 */
export function atLeastOff(spot: Spot, curve: Curve): number | null {
  // Most curves rise: then the wide discs, the dearest of all, need not be measured.
  if (!reaches.some((reach) => tells(curve, reach))) return null;
  const far = drawnAround(spot);
  return far > 0 && tells(curve, far) ? far : null;
}
