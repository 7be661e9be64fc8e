/** Where a shape being drawn crosses itself, so that it is shown at once. */
import type { Position } from 'geojson';
import { segmentsMeet, selfCrossing } from '../../../geometry/ring.ts';
import type { LonLat } from '../../../site/types.ts';

const pointOf = ([x = 0, y = 0]: Position) => ({ x, y });

/** Where the last edge of a way meets an earlier one; null when it does not. Planar on degrees: edges of a site are short. */
export function lastEdgeCrossing(way: readonly Position[]): LonLat | null {
  const points = way.map(pointOf);
  const [a, b] = points.slice(-2);
  if (!a || !b) return null;
  for (let i = 0; i + 3 < points.length; i++) {
    const met = segmentsMeet(points[i]!, points[i + 1]!, a, b);
    if (met) return [met.x, met.y];
  }
  return null;
}

/** Where an outline (its corners once) crosses or touches itself; null when it is good. */
export function outlineCrossing(corners: readonly Position[]): LonLat | null {
  const met = selfCrossing(corners.map(pointOf));
  return met ? [met.at.x, met.at.y] : null;
}
