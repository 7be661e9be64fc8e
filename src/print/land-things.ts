/** The site's features laid on the flat frame once, so that every sheet draws from the same list. */
import type { Point } from '../geometry/point.ts';
import type { Frame } from '../ground/types.ts';
import { crownOf, nameOf } from '../site/properties.ts';
import type { Kind, LonLat, Site, SiteFeature } from '../site/types.ts';
import { plain } from './measure.ts';

/** A feature in metres. `areas` are polygons as lists of rings (outer first); `lines` are open; `at` is a single place. */
export interface Thing {
  readonly id: string;
  readonly kind: Kind;
  readonly name: string;
  readonly areas: readonly (readonly (readonly Point[])[])[];
  readonly lines: readonly (readonly Point[])[];
  readonly at: Point | null;
  /** Crown radius of a tree, metres; 0 for everything else. */
  readonly crown: number;
  readonly min: Point;
  readonly max: Point;
}

/** Every feature with a geometry the frame can place. Retired and candidate posts are left out: paper shows the plan. */
export function thingsOf(site: Site, frame: Frame): Thing[] {
  return site.features.flatMap((feature) => thingOf(feature, frame) ?? []);
}

function thingOf(feature: SiteFeature, frame: Frame): Thing | null {
  const { geometry, kind } = feature;
  if (!geometry || kind === 'post') return null;
  const lay = (row: readonly (readonly number[])[]): Point[] => row.map((p) => frame.toPlane(p as LonLat));
  let areas: Point[][][] = [];
  let lines: Point[][] = [];
  let at: Point | null = null;
  if (geometry.type === 'Polygon') areas = [geometry.coordinates.map(lay)];
  else if (geometry.type === 'MultiPolygon') areas = geometry.coordinates.map((one) => one.map(lay));
  else if (geometry.type === 'LineString') lines = [lay(geometry.coordinates)];
  else if (geometry.type === 'MultiLineString') lines = geometry.coordinates.map(lay);
  else at = frame.toPlane(geometry.coordinates as LonLat);
  const crown = kind === 'tree' ? crownOf(feature) : 0;
  const bounds = boundsOf(at ? [at] : [...areas.flat(2), ...lines.flat()]);
  if (!bounds) return null;
  return { id: feature.id, kind, name: plain(nameOf(feature) ?? ''), areas, lines, at, crown, ...bounds };
}

/** Lowest and highest corner of points; null when there are none or one is not a number. */
export function boundsOf(points: readonly Point[]): { min: Point; max: Point } | null {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return null;
    x1 = Math.min(x1, x);
    y1 = Math.min(y1, y);
    x2 = Math.max(x2, x);
    y2 = Math.max(y2, y);
  }
  return points.length === 0 ? null : { min: { x: x1, y: y1 }, max: { x: x2, y: y2 } };
}
