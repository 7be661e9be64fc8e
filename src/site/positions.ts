/** Positions of a geometry: built right, finite, in range, and in the part of the world a site may lie in. */
import type { Position } from 'geojson';
import { limits } from './defaults.ts';
import type { LonLat, SiteFeature } from './types.ts';

/** Degrees. */
export type Box = [west: number, south: number, east: number, north: number];

/** Ids of the issues a single position can raise. */
export type PositionTrouble =
  | 'position-not-a-number'
  | 'metres-not-degrees'
  | 'lat-lon-swapped'
  | 'position-out-of-range'
  | 'near-pole'
  | 'near-antimeridian';

/** How many arrays stand around a position, by geometry type. */
const levels: Readonly<Record<string, number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};

/** Every position of a geometry's coordinates in order; null when they are not built as the type says. */
export function positionsOf(type: string, coordinates: unknown): unknown[] | null {
  const level = levels[type];
  if (level === undefined || !Array.isArray(coordinates)) return null;
  let list: unknown[] = [coordinates];
  for (let i = 0; i < level; i++) {
    if (!list.every((inner) => Array.isArray(inner))) return null;
    list = list.flat();
  }
  return list.length > 0 && !list.some((position) => Array.isArray(position)) ? null : list;
}

/** Metres people have pasted as degrees: above any degree, below the ends of the usual grids. */
function looksLikeMetres(value: number): boolean {
  return Math.abs(value) > 1000 && Math.abs(value) < 3e7;
}

/** What is wrong with a position; null when nothing is. */
export function positionTrouble(position: unknown): PositionTrouble | null {
  if (!Array.isArray(position) || position.length < 2) return 'position-not-a-number';
  if (!position.every((value) => typeof value === 'number' && Number.isFinite(value))) return 'position-not-a-number';
  const [lon, lat] = position as LonLat;
  if (Math.abs(lon) > 180 || Math.abs(lat) > 90) return rangeTrouble(lon, lat);
  if (Math.abs(lat) > limits.latitude) return 'near-pole';
  return Math.abs(lon) > 180 - limits.antimeridian ? 'near-antimeridian' : null;
}

function rangeTrouble(lon: number, lat: number): PositionTrouble {
  if (looksLikeMetres(lon) || looksLikeMetres(lat)) return 'metres-not-degrees';
  return Math.abs(lon) <= 90 && Math.abs(lat) <= 180 ? 'lat-lon-swapped' : 'position-out-of-range';
}

/** Same longitude and latitude. */
export function samePlace(a: Position, b: Position): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** The first two numbers as a place. */
export function placeOf(position: Position): LonLat {
  return [position[0] ?? 0, position[1] ?? 0];
}

/** [west, south, east, north] of positions known to be good; null of none. */
export function boxOf(positions: readonly Position[]): Box | null {
  if (positions.length === 0) return null;
  const box: Box = [Infinity, Infinity, -Infinity, -Infinity];
  for (const position of positions) {
    const [lon, lat] = placeOf(position);
    box[0] = Math.min(box[0], lon);
    box[1] = Math.min(box[1], lat);
    box[2] = Math.max(box[2], lon);
    box[3] = Math.max(box[3], lat);
  }
  return box;
}

/** All positions of a feature's geometry; empty when it has none. */
export function featurePositions(feature: SiteFeature): Position[] {
  const { geometry } = feature;
  return geometry ? ((positionsOf(geometry.type, geometry.coordinates) ?? []) as Position[]) : [];
}

/** First position, or null. */
export function firstPlace({ geometry }: SiteFeature): LonLat | null {
  let first: unknown = geometry?.coordinates;
  while (Array.isArray(first) && Array.isArray(first[0])) first = first[0];
  return Array.isArray(first) && first.length >= 2 ? placeOf(first as Position) : null;
}
