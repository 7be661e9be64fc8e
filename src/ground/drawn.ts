/** What is drawn, on the flat frame: areas, lines and points with the figures measuring needs. */
import { crownOf, hedgeWidth, heightOf, nameOf } from '../site/properties.ts';
import {
  type AreaKind,
  areaKinds,
  type CoverKind,
  coverKinds,
  type LineKind,
  lineKinds,
  type PointKind,
  type Site,
  type SiteFeature,
  type SiteGeometry,
} from '../site/types.ts';
import type { Frame } from './types.ts';

/** x, y of each point, one after the other, in metres. */
export type Path = Float64Array;

export interface DrawnArea {
  readonly kind: AreaKind;
  readonly id: string;
  readonly name: string | null;
  /** Metres; 0 for open ground. */
  readonly height: number;
  /** Each part is an outline and its holes: rings without the closing point, at least 3 points each. */
  readonly parts: readonly (readonly Path[])[];
}

export interface DrawnLine {
  readonly kind: LineKind;
  readonly id: string;
  readonly height: number;
  /** Metres across; 0 for everything but hedges. */
  readonly width: number;
  readonly paths: readonly Path[];
}

export interface DrawnPoint {
  readonly kind: PointKind;
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  /** Metres; 0 for everything but trees. */
  readonly crown: number;
}

export interface Drawn {
  /** Cover areas, the one on top first: by kind, then taller, then later drawn. */
  readonly cover: readonly DrawnArea[];
  readonly offLimits: readonly DrawnArea[];
  readonly boundary: readonly DrawnArea[];
  readonly lines: readonly DrawnLine[];
  readonly points: readonly DrawnPoint[];
  readonly bounds: Bounds | null;
  /** The same without the posts. */
  readonly landBounds: Bounds | null;
}

/** Lowest and highest x and y. */
export interface Bounds {
  readonly min: { readonly x: number; readonly y: number };
  readonly max: { readonly x: number; readonly y: number };
}

/** Positions on the frame; ones that are not numbers are left out, and so are immediate repeats. */
function toPath(positions: readonly (readonly number[])[], frame: Frame): Path {
  const path = new Float64Array(2 * positions.length);
  let used = 0;
  for (let i = 0; i < positions.length; i++) {
    const lon = positions[i]![0]!;
    const lat = positions[i]![1]!;
    if (!Number.isFinite(lon) || !Number.isFinite(lat)) continue;
    const { x, y } = frame.toPlane([lon, lat]);
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    if (used > 0 && path[used - 2] === x && path[used - 1] === y) continue;
    path[used++] = x;
    path[used++] = y;
  }
  return path.subarray(0, used);
}

/** A ring without its closing point; null when fewer than 3 points are left. */
function toRing(positions: readonly (readonly number[])[], frame: Frame): Path | null {
  let ring = toPath(positions, frame);
  const last = ring.length - 2;
  if (last >= 2 && ring[0] === ring[last] && ring[1] === ring[last + 1]) ring = ring.subarray(0, last);
  return ring.length >= 6 ? ring : null;
}

function partsOf(geometry: SiteGeometry, frame: Frame): Path[][] {
  const polygons =
    geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.type === 'MultiPolygon' ? geometry.coordinates : [];
  return polygons
    .map((rings) => rings.map((ring) => toRing(ring, frame)))
    .filter((rings) => rings[0])
    .map((rings) => rings.filter((ring) => ring !== null));
}

function pathsOf(geometry: SiteGeometry, frame: Frame): Path[] {
  const lines =
    geometry.type === 'LineString'
      ? [geometry.coordinates]
      : geometry.type === 'MultiLineString'
        ? geometry.coordinates
        : [];
  return lines.map((line) => toPath(line, frame)).filter((path) => path.length > 0);
}

function drawnArea(feature: SiteFeature, frame: Frame): DrawnArea {
  return {
    kind: feature.kind as AreaKind,
    id: feature.id,
    name: nameOf(feature),
    height: heightOf(feature),
    parts: feature.geometry ? partsOf(feature.geometry, frame) : [],
  };
}

function drawnLine(feature: SiteFeature, frame: Frame): DrawnLine {
  const kind = feature.kind as LineKind;
  return {
    kind,
    id: feature.id,
    height: heightOf(feature),
    width: kind === 'hedge' ? hedgeWidth(feature) : 0,
    paths: feature.geometry ? pathsOf(feature.geometry, frame) : [],
  };
}

function drawnPoint(feature: SiteFeature, frame: Frame): DrawnPoint | null {
  if (feature.geometry?.type !== 'Point') return null;
  const [x, y] = toPath([feature.geometry.coordinates], frame);
  if (x === undefined || y === undefined) return null;
  const kind = feature.kind as PointKind;
  return { kind, id: feature.id, x, y, height: heightOf(feature), crown: kind === 'tree' ? crownOf(feature) : 0 };
}

/** The one on top first; of equals the later drawn. */
function topFirst(areas: readonly DrawnArea[]): DrawnArea[] {
  const rank = (area: DrawnArea): number => coverKinds.indexOf(area.kind as CoverKind);
  return [...areas].reverse().sort((a, b) => rank(a) - rank(b) || b.height - a.height);
}

/** Points among the features, on the flat frame. */
export function drawnPoints(features: readonly SiteFeature[], frame: Frame): DrawnPoint[] {
  return features.flatMap((feature) => drawnPoint(feature, frame) ?? []);
}

/** Bounds that take in the points too. */
export function boundsWith(bounds: Bounds | null, points: readonly DrawnPoint[]): Bounds | null {
  const corners = bounds ? [bounds.min, bounds.max] : [];
  return boundsOf([...corners, ...points].map(({ x, y }) => Float64Array.of(x, y)));
}

function boundsOf(paths: Iterable<Path>): Bounds | null {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const path of paths) {
    for (let i = 0; i < path.length; i += 2) {
      x0 = Math.min(x0, path[i]!);
      x1 = Math.max(x1, path[i]!);
      y0 = Math.min(y0, path[i + 1]!);
      y1 = Math.max(y1, path[i + 1]!);
    }
  }
  return x0 <= x1 ? { min: { x: x0, y: y0 }, max: { x: x1, y: y1 } } : null;
}

/** Puts everything drawn on the frame. Features without a geometry, or with one that does not fit their kind, take no part. */
export function drawnOn(site: Site, frame: Frame): Drawn {
  const areas: DrawnArea[] = [];
  const lines: DrawnLine[] = [];
  const points: DrawnPoint[] = [];
  for (const feature of site.features) {
    if ((areaKinds as readonly string[]).includes(feature.kind)) areas.push(drawnArea(feature, frame));
    else if ((lineKinds as readonly string[]).includes(feature.kind)) lines.push(drawnLine(feature, frame));
    else {
      const point = drawnPoint(feature, frame);
      if (point) points.push(point);
    }
  }
  const cover = topFirst(areas.filter(({ kind }) => kind !== 'off-limits' && kind !== 'boundary'));
  const everything = function* (): Generator<Path> {
    for (const area of areas) for (const part of area.parts) yield* part;
    for (const line of lines) yield* line.paths;
    for (const { kind, x, y } of points) if (kind !== 'post') yield Float64Array.of(x, y);
  };
  const landBounds = boundsOf(everything());
  return {
    cover,
    offLimits: areas.filter(({ kind }) => kind === 'off-limits'),
    boundary: areas.filter(({ kind }) => kind === 'boundary'),
    lines,
    points,
    landBounds,
    bounds: boundsWith(
      landBounds,
      points.filter(({ kind }) => kind === 'post'),
    ),
  };
}
