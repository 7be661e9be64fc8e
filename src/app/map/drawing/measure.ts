/** Lengths and areas of what is drawn, measured in the flat frame the engine measures in. */
import type { Position } from 'geojson';
import { chainsOf } from '../../../edits/chains.ts';
import { distance } from '../../../geometry/point.ts';
import { ringArea } from '../../../geometry/ring.ts';
import { makeFrame } from '../../../ground/frame.ts';
import type { SiteFeature } from '../../../site/types.ts';

/** Metres and square metres; `area` is null for a line, both for a point. */
export interface Measure {
  readonly length: number | null;
  readonly area: number | null;
}

function pointsOf(corners: readonly Position[]) {
  const first = corners[0];
  if (!first) return [];
  const frame = makeFrame([first[0]!, first[1]!]);
  return corners.map((corner) => frame.toPlane([corner[0]!, corner[1]!]));
}

/** Metres along corners, one after the other. */
export function wayMetres(corners: readonly Position[]): number {
  const points = pointsOf(corners);
  return points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0);
}

/** Square metres inside an open or closed ring; 0 for fewer than three corners. */
export function ringMetres(corners: readonly Position[]): number {
  return Math.abs(ringArea(pointsOf(corners)));
}

/** Area (holes taken out) and outline of an area, length of a line. Null when it has no place. */
export function measureOf({ geometry }: SiteFeature): Measure | null {
  if (!geometry) return null;
  if (geometry.type === 'Point') return { length: null, area: null };
  const length = chainsOf(geometry).reduce(
    (sum, { corners, closed }) => sum + wayMetres(closed ? [...corners, corners[0]!] : corners),
    0,
  );
  if (geometry.type === 'LineString' || geometry.type === 'MultiLineString') return { length, area: null };
  const parts = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  const area = parts.reduce(
    (sum, [outer = [], ...holes]) => sum + ringMetres(outer) - holes.reduce((hole, ring) => hole + ringMetres(ring), 0),
    0,
  );
  return { length, area };
}
