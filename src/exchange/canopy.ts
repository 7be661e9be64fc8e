/** Woods, brush and single trees from a raster of heights above ground. What comes out is shown before it is kept. */
import { polygon, simplify } from '@turf/turf';
import { contours } from 'd3-contour';
import type { Position } from 'geojson';
import { checkPolygon } from '../site/check-area.ts';
import type { Draft } from './import-types.ts';
import { closed, eachCellInside, type Mask, opened } from './mask.ts';
import type { HeightRaster } from './raster.ts';

/** All ours: wide enough to leave out noise of the survey, narrow enough to keep what a bird sees. Lengths in metres, areas in square metres. */
export interface CanopySettings {
  /** At least this tall is woods or a tree (the siting model counts trees over 3 m as woods edge). */
  readonly woodsFrom: number;
  /** At least this tall is brush. */
  readonly brushFrom: number;
  /** Taller is a mistake of the survey (a bird, a wire, a cloud) and not used. */
  readonly tallest: number;
  /** Gaps and specks up to about twice this wide are smoothed away. */
  readonly smooth: number;
  readonly leastWoods: number;
  readonly leastBrush: number;
  /** Tall patches of this size up to `leastWoods` become a tree with its crown; smaller ones are left out. */
  readonly leastTree: number;
  /** How far the simplified outline may lie from the drawn one. */
  readonly tolerance: number;
}

export const canopySettings: CanopySettings = {
  woodsFrom: 3,
  brushFrom: 0.5,
  tallest: 80,
  smooth: 1,
  leastWoods: 200,
  leastBrush: 25,
  leastTree: 6,
  tolerance: 0.5,
};

/** What was found, and how many patches were too small or without a place. */
export interface Canopy {
  readonly features: readonly Draft[];
  readonly tooSmall: number;
  readonly unknownShare: number;
}

/** Finds them. The height of woods and brush is the 90th percentile inside, of a tree the highest cell (ours: what blocks the sun). */
export function canopyFeatures(raster: HeightRaster, changed: Partial<CanopySettings> = {}): Canopy {
  const settings = { ...canopySettings, ...changed };
  const reach = Math.round(settings.smooth / Math.min(raster.cellWidth, raster.cellHeight));
  const woods = patches(raster, maskOf(raster, settings.woodsFrom, settings.tallest), reach, settings);
  const big = woods.filter((patch) => patch.area >= settings.leastWoods);
  const single = woods.filter((patch) => patch.area < settings.leastWoods && patch.area >= settings.leastTree);
  const low = maskOf(raster, settings.brushFrom, settings.woodsFrom);
  const brush = patches(raster, low, reach, settings);
  const kept = brush.filter((patch) => patch.area >= settings.leastBrush && !isRim(patch, raster, settings));
  const features = [
    ...big.flatMap((patch) => areaDraft('woods', patch, raster, settings)),
    ...kept.flatMap((patch) => areaDraft('brush', patch, raster, settings)),
    ...single.flatMap((patch) => treeDraft(patch, raster)),
  ];
  const unknown = unknownCells(raster.values);
  return {
    features,
    tooSmall: woods.length + brush.length - features.length,
    unknownShare: raster.values.length === 0 ? 1 : unknown / raster.values.length,
  };
}

function unknownCells(values: Float32Array): number {
  let cells = 0;
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) cells++;
  return cells;
}

/** Rings in cells; heights of the cells inside, sorted. */
interface Patch {
  readonly rings: Position[][];
  readonly area: number;
  readonly heights: Float32Array;
}

function maskOf({ width, height, values }: HeightRaster, from: number, below: number): Mask {
  const cells = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) if (values[i]! >= from && values[i]! < below) cells[i] = 1;
  return { width, height, cells };
}

function patches(raster: HeightRaster, mask: Mask, reach: number, settings: CanopySettings): Patch[] {
  const clean = opened(closed(mask, reach), Math.floor(reach / 2));
  // The library only reads the cells by index; its types ask for an array.
  const [outlines] = contours().size([mask.width, mask.height]).thresholds([0.5])(clean.cells as unknown as number[]);
  return (outlines?.coordinates ?? []).map((rings) => patchOf(rings, raster, settings.tallest));
}

function patchOf(rings: Position[][], raster: HeightRaster, tallest: number): Patch {
  const heights: number[] = [];
  let cells = 0;
  eachCellInside(rings, raster, (index) => {
    const value = raster.values[index]!;
    cells++;
    if (value < tallest) heights.push(value);
  });
  return { rings, area: cells * raster.cellWidth * raster.cellHeight, heights: Float32Array.from(heights).sort() };
}

/**
 * Around every wood the heights run down to the ground through a strip of "brush" one or two cells wide, which is no brush.
 * A patch that an erosion of one cell would leave nothing of is such a rim.
 */
function isRim(patch: Patch, raster: HeightRaster, settings: CanopySettings): boolean {
  const perimeter = patch.rings.reduce((sum, ring) => sum + ringLength(ring, raster), 0);
  const width = perimeter > 0 ? (2 * patch.area) / perimeter : 0;
  return width < Math.max(settings.smooth, 1.5 * Math.min(raster.cellWidth, raster.cellHeight));
}

function ringLength(ring: readonly Position[], { cellWidth, cellHeight }: HeightRaster): number {
  return ring
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot((x! - ring[i]![0]!) * cellWidth, (y! - ring[i]![1]!) * cellHeight), 0);
}

function areaDraft(kind: 'woods' | 'brush', patch: Patch, raster: HeightRaster, settings: CanopySettings): Draft[] {
  const rings = [simplified(patch.rings, raster, settings.tolerance), patch.rings]
    .map((one) => placed(one, raster))
    .map((one) => one && checkPolygon(one, { id: '', label: kind }).value)
    .find((one) => one);
  if (!rings) return [];
  return [draft(kind, { type: 'Polygon', coordinates: rings }, { height: percentile(patch.heights, 0.9) })];
}

/** One Douglas–Peucker in metres, so that the tolerance means the same in both directions. */
function simplified(rings: Position[][], { cellWidth, cellHeight }: HeightRaster, tolerance: number): Position[][] {
  const metres = rings.map((ring) => ring.map(([x, y]) => [x! * cellWidth, y! * cellHeight]));
  const { coordinates } = simplify(polygon(metres), { tolerance, highQuality: true }).geometry;
  return coordinates.map((ring) => ring.map(([x, y]) => [x! / cellWidth, y! / cellHeight]));
}

function placed(rings: readonly Position[][], raster: HeightRaster): Position[][] | null {
  const out = rings.map((ring) => ring.map(([x, y]) => raster.toLonLat(x!, y!)));
  return out.every((ring) => ring.every((at) => at !== null)) ? (out as Position[][]) : null;
}

function treeDraft(patch: Patch, raster: HeightRaster): Draft[] {
  const ring = patch.rings[0]!;
  const [xs, ys] = [ring.map(([x]) => x!), ring.map(([, y]) => y!)];
  const at = raster.toLonLat((Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2);
  if (!at) return [];
  const crownRadius = Math.round(Math.sqrt(patch.area / Math.PI) * 10) / 10;
  return [draft('tree', { type: 'Point', coordinates: at }, { height: percentile(patch.heights, 1), crownRadius })];
}

function draft(kind: Draft['kind'], geometry: Draft['geometry'], properties: Draft['properties']): Draft {
  return { from: 'height raster', source: 0, id: null, kind, geometry, properties };
}

/** Heights rounded to decimetres; 0 when there is none. */
function percentile(sorted: Float32Array, share: number): number {
  const value = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return Math.round(value * 10) / 10;
}
