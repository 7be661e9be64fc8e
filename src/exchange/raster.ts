/** A grid of heights as a GeoTIFF gives it, apart from any format. */
import type { LonLat } from '../site/types.ts';

/** Heights in metres, row by row from the top left; NaN = not known. Column 0 and row 0 are the outer edges of the first cell. */
export interface HeightRaster {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
  /** Size of a cell on the ground, metres. */
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Longitude and latitude of a place in the grid, parts of cells included; null outside the projection. */
  toLonLat(column: number, row: number): LonLat | null;
}

/** Surface minus ground, cell by cell, both over the same grid; a reason when they are not. Small negative differences are 0. */
export function heightAboveGround(surface: HeightRaster, ground: HeightRaster): HeightRaster | string {
  if (surface.width !== ground.width || surface.height !== ground.height) {
    return `The two rasters differ in size: ${surface.width} × ${surface.height} and ${ground.width} × ${ground.height} cells.`;
  }
  const shift = cornerShift(surface, ground);
  if (!(shift < 0.5 * surface.cellWidth))
    return `The two rasters do not lie over each other: they are ${shift.toFixed(1)} m apart.`;
  return { ...surface, values: surface.values.map((value, i) => Math.max(0, value - ground.values[i]!)) };
}

/** Metres between the places of the first corners, on a sphere. */
function cornerShift(a: HeightRaster, b: HeightRaster): number {
  const [p, q] = [a.toLonLat(0, 0), b.toLonLat(0, 0)];
  if (!p || !q) return Number.POSITIVE_INFINITY;
  const metresPerDegree = 111_195;
  return metresPerDegree * Math.hypot(p[1] - q[1], (p[0] - q[0]) * Math.cos((p[1] * Math.PI) / 180));
}
