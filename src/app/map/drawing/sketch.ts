/** The shape in progress as things on the map: filled ground, the way so far, corners, lengths and the place of a crossing. */
import { circle } from '@turf/turf';
import type { Feature, Position } from 'geojson';
import { distance } from '../../../geometry/point.ts';
import { makeFrame } from '../../../ground/frame.ts';
import { shapeOf } from '../../../site/kinds.ts';
import type { LonLat, Units } from '../../../site/types.ts';
import { area as areaText, length as lengthText } from '../../format.ts';
import type { Tool } from '../../land-state.ts';
import { lastEdgeCrossing, outlineCrossing } from './crossing.ts';
import { ringMetres, wayMetres } from './measure.ts';

/** What the tool draws: an outline that closes, a way from end to end, a middle and a rim, one point, or nothing. */
export function draws(tool: Tool | null): 'outline' | 'way' | 'round' | 'point' | null {
  if (!tool) return null;
  if (tool.does === 'draw') return ({ area: 'outline', line: 'way', point: 'point' } as const)[shapeOf(tool.kind)];
  if (tool.does === 'circle') return 'round';
  if (tool.does === 'hole') return 'outline';
  return tool.does === 'split' || tool.does === 'reshape' ? 'way' : null;
}

/** Fewest corners the tool can finish with. */
export function leastCorners(tool: Tool): number {
  return { outline: 3, way: 2, round: 2, point: 1, none: 0 }[draws(tool) ?? 'none'];
}

export function shape(
  type: 'Point' | 'LineString' | 'Polygon',
  coordinates: unknown,
  role: string,
  more = {},
): Feature {
  return { type: 'Feature', geometry: { type, coordinates } as never, properties: { role, ...more } };
}

/** Metres from one place to another. */
export function metresBetween(a: LonLat, b: LonLat): number {
  return distance({ x: 0, y: 0 }, makeFrame(a).toPlane(b));
}

/** Corners put, and where the hand is (null on touch, between two taps). */
export interface Progress {
  readonly tool: Tool;
  readonly corners: readonly LonLat[];
  readonly hand: LonLat | null;
  readonly units: Units;
}

/** Everything to draw of the shape in progress. */
export function sketch({ tool, corners, hand, units }: Progress): Feature[] {
  const how = draws(tool);
  const way: LonLat[] = hand && corners.length > 0 ? [...corners, hand] : [...corners];
  if (how === 'round') return [...round(way, units), ...cornerMarks(corners)];
  const crossing = how === 'outline' ? crossingShown(way) : null;
  return [
    ...(how === 'outline' && way.length > 2 ? [shape('Polygon', [[...way, way[0]]], 'ground')] : []),
    ...(way.length > 1 ? [shape('LineString', way, 'way')] : []),
    ...(how === 'outline' && way.length > 2 ? [shape('LineString', [way.at(-1), way[0]], 'closing')] : []),
    ...cornerMarks(corners),
    ...labels(way, how === 'outline', units),
    ...(crossing ? [shape('Point', crossing, 'crossing')] : []),
  ];
}

/** The place where the way crosses itself now: the newest edge first, then any earlier one that was let stand. */
export function crossingShown(way: readonly LonLat[]): LonLat | null {
  const newest = lastEdgeCrossing(way);
  if (newest) return newest;
  for (let n = way.length - 1; n > 3; n--) {
    const earlier = lastEdgeCrossing(way.slice(0, n));
    if (earlier) return earlier;
  }
  return null;
}

function round(way: readonly LonLat[], units: Units): Feature[] {
  const [middle, rim] = way;
  if (!middle || !rim) return [];
  const metres = metresBetween(middle, rim);
  if (!(metres > 0.01 && metres < 20_000)) return [];
  const ring = circle([...middle], metres, { units: 'meters', steps: 64 }).geometry.coordinates;
  return [
    shape('Polygon', ring, 'ground'),
    shape('LineString', ring[0], 'way'),
    shape('LineString', [middle, rim], 'closing'),
    shape('Point', halfway(middle, rim), 'label', { text: lengthText(metres, units) }),
  ];
}

function cornerMarks(corners: readonly LonLat[]): Feature[] {
  return corners.map((corner, i) => {
    const end = i === 0 ? 'first' : i === corners.length - 1 ? 'last' : '';
    return shape('Point', corner, 'put', { end });
  });
}

/** The newest edge's length, and the area once there is one. */
function labels(way: readonly LonLat[], closes: boolean, units: Units): Feature[] {
  const [a, b] = way.slice(-2);
  if (!a || !b) return [];
  const edge = shape('Point', halfway(a, b), 'label', { text: lengthText(metresBetween(a, b), units) });
  if (!closes || way.length < 3 || outlineCrossing(way)) return [edge];
  const x = way.reduce((sum, p) => sum + p[0], 0) / way.length;
  const y = way.reduce((sum, p) => sum + p[1], 0) / way.length;
  return [edge, shape('Point', [x, y], 'label', { text: areaText(ringMetres(way), units) })];
}

export function halfway(a: Position, b: Position): Position {
  return [(a[0]! + b[0]!) / 2, (a[1]! + b[1]!) / 2];
}

/** Length of the whole way so far and the area it encloses, for the notebook. */
export function progressMeasures(tool: Tool, corners: readonly LonLat[]): { length: number; area: number | null } {
  const [middle, rim] = corners;
  if (draws(tool) === 'round') {
    const radius = middle && rim ? metresBetween(middle, rim) : 0;
    return { length: radius, area: Math.PI * radius * radius };
  }
  const closes = draws(tool) === 'outline' && corners.length > 2;
  return { length: wayMetres(corners), area: closes ? ringMetres(corners) : null };
}
