/** Outlines and lines of a geometry as plain lists of corners, so that edits need not know how deep they are nested. */
import type { Position } from 'geojson';
import { samePlace } from '../site/positions.ts';
import type { SiteGeometry } from '../site/types.ts';

/** One outline (its closing position left out) or one line. */
export interface Chain {
  readonly corners: readonly Position[];
  readonly closed: boolean;
}

/** A corner of a geometry: which chain (outlines and holes in the order of the file), and which corner of it, from 0. */
export interface Corner {
  readonly chain: number;
  readonly corner: number;
}

/** All chains of a geometry in order; none of a point. */
export function chainsOf(geometry: SiteGeometry | null): Chain[] {
  if (geometry?.type === 'Polygon') return geometry.coordinates.map(openRing);
  if (geometry?.type === 'MultiPolygon') return geometry.coordinates.flat().map(openRing);
  if (geometry?.type === 'LineString') return [{ corners: geometry.coordinates, closed: false }];
  if (geometry?.type === 'MultiLineString') return geometry.coordinates.map((corners) => ({ corners, closed: false }));
  return [];
}

function openRing(ring: readonly Position[]): Chain {
  return { corners: ring.slice(0, -1), closed: true };
}

function closedRing(corners: readonly Position[]): Position[] {
  return corners.length > 0 ? [...corners, [...corners[0]!]] : [];
}

/** The geometry with every chain's corners replaced by what `change` gives for them. */
export function mapChains(
  geometry: SiteGeometry,
  change: (corners: readonly Position[], chain: number, closed: boolean) => readonly Position[],
): SiteGeometry {
  let n = 0;
  const ring = (old: readonly Position[]) => closedRing(change(old.slice(0, -1), n++, true));
  const line = (old: readonly Position[]) => [...change(old, n++, false)];
  if (geometry.type === 'Polygon') return { ...geometry, coordinates: geometry.coordinates.map(ring) };
  if (geometry.type === 'MultiPolygon') {
    return { ...geometry, coordinates: geometry.coordinates.map((part) => part.map(ring)) };
  }
  if (geometry.type === 'LineString') return { ...geometry, coordinates: line(geometry.coordinates) };
  if (geometry.type === 'MultiLineString') return { ...geometry, coordinates: geometry.coordinates.map(line) };
  return geometry;
}

/** The geometry with every position changed, points too. */
export function mapPositions(geometry: SiteGeometry, change: (position: Position) => Position): SiteGeometry {
  if (geometry.type === 'Point') return { ...geometry, coordinates: change(geometry.coordinates) };
  return mapChains(geometry, (corners) => corners.map(change));
}

/** Corners before and after number `i` of a chain; undefined beyond the ends of a line. */
export function beside({ corners, closed }: Chain, i: number): [Position | undefined, Position | undefined] {
  const count = corners.length;
  if (closed) return [corners[(i + count - 1) % count], corners[(i + 1) % count]];
  return [corners[i - 1], corners[i + 1]];
}

/** Where the corner at exactly this position is; null when the geometry has none there. */
export function cornerAt(geometry: SiteGeometry | null, place: Position): Corner | null {
  for (const [chain, { corners }] of chainsOf(geometry).entries()) {
    const corner = corners.findIndex((position) => samePlace(position, place));
    if (corner >= 0) return { chain, corner };
  }
  return null;
}

/** The position of a corner. Asking for one that is not there is the caller's mistake. */
export function positionAt(geometry: SiteGeometry | null, { chain, corner }: Corner): Position {
  const found = chainsOf(geometry)[chain]?.corners[corner];
  if (!found) throw new Error(`no such corner: ${corner} of chain ${chain}`);
  return found;
}
