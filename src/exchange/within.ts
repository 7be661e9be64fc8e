/** Whether a shape may touch a box of degrees: by its own box, so a long diagonal counts although it only passes by. */
import type { SiteGeometry } from '../site/types.ts';
import { positionsOf } from './project-geometry.ts';

/** True when the bounding boxes overlap. */
export function touches(
  geometry: SiteGeometry,
  [west, south, east, north]: readonly [number, number, number, number],
): boolean {
  let [minX, minY, maxX, maxY] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const [x, y] of positionsOf(geometry)) {
    minX = Math.min(minX, x!);
    maxX = Math.max(maxX, x!);
    minY = Math.min(minY, y!);
    maxY = Math.max(maxY, y!);
  }
  return minX <= east && maxX >= west && minY <= north && maxY >= south;
}
