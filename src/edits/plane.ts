/** A small flat frame for drawing edits: metres around a position. Good to a few parts in ten thousand over a site, as only shapes matter here. */
import type { Position } from 'geojson';
import type { Point } from '../geometry/point.ts';

/** Mean radius of the earth, metres (IUGG). Only ratios and tolerances hang on it. */
const radius = 6_371_008.8;
const degree = Math.PI / 180;

/** To metres {x east, y north} and back to [lon, lat]. */
export interface Plane {
  to(position: Position): Point;
  from(point: Point): [number, number];
}

/** Metres east and north of `origin`. */
export function planeAt(origin: Position): Plane {
  const [lon, lat] = [origin[0]!, origin[1]!];
  const north = radius * degree;
  const east = north * Math.cos(lat * degree);
  return {
    to: (position) => ({ x: (position[0]! - lon) * east, y: (position[1]! - lat) * north }),
    from: ({ x, y }) => [lon + x / east, lat + y / north],
  };
}
