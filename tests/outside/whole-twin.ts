/**
 * A second way to a card's raw figures, from the raw GeoJSON alone: Turf's boolean operations for what is seen of each kind, plain arithmetic
 * for distances, sight and sun. Nothing of the engine is used here. Positions become metres by the WGS84 radii of curvature at the site's
 * middle (within 300 m that and a transverse Mercator differ by less than a centimetre).
 */
import * as turf from '@turf/turf';
import type { Feature, FeatureCollection, MultiPolygon, Polygon, Position } from 'geojson';
import { getPosition } from 'suncalc';

type XY = readonly [number, number];
type Areal = Feature<Polygon | MultiPolygon>;
type Side = readonly [XY, XY];

const degree = Math.PI / 180;
const shrink = 1e-4;

/** SOURCE: WGS84 ellipsoid (a = 6,378,137 m, f = 1/298.257223563). */
export function plane(lon0: number, lat0: number): (at: Position) => XY {
  const e2 = 0.00669437999014;
  const w = Math.sqrt(1 - e2 * Math.sin(lat0 * degree) ** 2);
  const across = (6378137 / w) * Math.cos(lat0 * degree) * degree;
  const up = ((6378137 * (1 - e2)) / w ** 3) * degree;
  return ([lon, lat]) => [(lon! - lon0) * across, (lat! - lat0) * up];
}

/** The order of docs/file-format.md: earlier wins. Heights and weights: siting model §1–2. */
export const order = [
  'building',
  'water',
  'paved',
  'woods',
  'brush',
  'orchard',
  'wetland',
  'crop',
  'meadow',
  'short-grass',
];
const heights: Record<string, number> = { woods: 18, brush: 2.5, building: 6 };
const weights: Record<string, number> = {
  'short-grass': 1,
  orchard: 0.8,
  wetland: 0.5,
  meadow: 0.45,
  paved: 0.4,
  crop: 0.3,
  brush: 0.1,
};

interface Thing {
  readonly kind: string;
  readonly height: number;
  readonly crown: number;
  readonly half: number;
  readonly at: readonly XY[];
}

export interface Twin {
  /** Every area as drawn, planar, in meters times `shrink`. */
  readonly own: readonly { readonly kind: string; readonly area: Areal }[];
  /** What is seen of each area, planar, in metres times `shrink`. */
  readonly seen: readonly { readonly kind: string; readonly height: number; readonly area: Areal }[];
  readonly things: readonly Thing[];
}

function seenOf(features: readonly Feature[], to: (at: Position) => XY): Pick<Twin, 'own' | 'seen'> {
  const all: { kind: string; area: Areal }[] = [];
  const seen: { kind: string; height: number; area: Areal }[] = [];
  let above: Areal | null = null;
  for (const kind of order)
    for (const { properties, geometry } of features.filter((f) => f.properties!.kind === kind)) {
      const rings = (geometry as Polygon).coordinates.map((ring) =>
        ring.map((p) => to(p).map((v) => v * shrink) as Position),
      );
      const own: Areal = turf.polygon(rings);
      all.push({ kind, area: own });
      const both = (a: Areal, b: Areal) => turf.featureCollection<Polygon | MultiPolygon>([a, b]);
      const left: Areal | null = above ? turf.difference(both(own, above)) : own;
      if (left) seen.push({ kind, height: (properties!.height as number) ?? heights[kind] ?? 0, area: left });
      above = above ? turf.union(both(above, own)) : own;
    }
  return { own: all, seen };
}

export function twinOf(site: FeatureCollection, to: (at: Position) => XY): Twin {
  const loose = site.features.filter((f) => f.geometry.type === 'Point' || f.geometry.type === 'LineString');
  const things = loose.map(({ properties, geometry }): Thing => {
    const { kind, height, crownRadius, width } = properties as Record<string, never>;
    const tall: Record<string, number> = { tree: 10, hedge: 2, shrub: 2, fence: 1.2 };
    const path =
      geometry.type === 'Point' ? [geometry.coordinates] : (geometry as { coordinates: Position[] }).coordinates;
    return {
      kind,
      height: height ?? tall[kind] ?? 0,
      crown: kind === 'tree' ? (crownRadius ?? 3) : 0,
      half: kind === 'hedge' ? (width ?? 2) / 2 : 0,
      at: path.map(to),
    };
  });
  return { ...seenOf(site.features, to), things };
}

const rings = ({ geometry }: Areal): Position[][] =>
  geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
const sides = (path: readonly XY[]): Side[] => path.slice(1).map((b, i) => [path[i]!, b]);
const known = new WeakMap<Areal, readonly Side[]>();
function sidesOf(area: Areal): readonly Side[] {
  const before = known.get(area);
  if (before) return before;
  const made = rings(area).flatMap((ring) => sides(ring.map(([x, y]) => [x! / shrink, y! / shrink] as XY)));
  known.set(area, made);
  return made;
}

function planarArea(area: Areal | null): number {
  if (!area) return 0;
  // Outer rings run one way and holes the other, whichever way that is: the shoelace sum of all takes care of both.
  const ringArea = (ring: Position[]) =>
    ring.slice(1).reduce((sum, p, i) => sum + (ring[i]![0]! * p[1]! - p[0]! * ring[i]![1]!) / 2, 0);
  const parts = area.geometry.type === 'Polygon' ? [area.geometry.coordinates] : area.geometry.coordinates;
  return parts.reduce(
    (sum, part) => sum + part.reduce((all, ring, i) => all + (i === 0 ? 1 : -1) * Math.abs(ringArea(ring)), 0),
    0,
  );
}

/** Share of low cover in the true circle, read from a polygon of 2,048 corners; undrawn ground counts as none. */
export function lowCoverShare({ seen }: Twin, [x, y]: XY, radius: number): { cover: number; unmapped: number } {
  const circle = Array.from({ length: 2049 }, (_, i) => {
    const angle = (2 * Math.PI * (i % 2048)) / 2048;
    return [(x + radius * Math.cos(angle)) * shrink, (y + radius * Math.sin(angle)) * shrink];
  });
  const disc = turf.polygon([circle]);
  const whole = planarArea(disc);
  let [cover, mapped] = [0, 0];
  for (const { kind, area } of seen) {
    const share = planarArea(turf.intersect(turf.featureCollection<Polygon | MultiPolygon>([disc, area]))) / whole;
    mapped += share;
    cover += share * (weights[kind] ?? 0);
  }
  return { cover, unmapped: 1 - mapped };
}

function toSide([px, py]: XY, [[ax, ay], [bx, by]]: Side): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(ax + t * dx - px, ay + t * dy - py);
}

function inside([px, py]: XY, area: Areal): boolean {
  let odd = false;
  for (const [[ax, ay], [bx, by]] of sidesOf(area))
    if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  return odd;
}

const pair = (a: Areal, b: Areal) => turf.featureCollection<Polygon | MultiPolygon>([a, b]);
const joined = (areas: readonly Areal[]): Areal | null =>
  areas.length === 0 ? null : areas.reduce((a, b) => turf.union(pair(a, b))!);

/** What is seen of some kinds together. Whole areas are joined first: joining pieces that only touch leaves seams in Turf's answer. */
function seenTogether({ own }: Twin, kinds: readonly string[]): Areal | null {
  const parts = kinds.flatMap((kind) => {
    const whole = joined(own.filter((one) => one.kind === kind).map(({ area }) => area));
    if (!whole) return [];
    const higher = order.slice(0, order.indexOf(kind)).filter((one) => !kinds.includes(one));
    const above = joined(own.filter((one) => higher.includes(one.kind)).map(({ area }) => area));
    const left = above ? turf.difference(pair(whole, above)) : whole;
    return left ? [left] : [];
  });
  return joined(parts);
}

/** Signed metres to what is seen of some kinds of area: to the edge of their union, below zero inside. Infinity when none is. */
function toAreas(twin: Twin, p: XY, kinds: readonly string[]): number {
  const one = seenTogether(twin, kinds);
  if (!one) return Infinity;
  const near = Math.min(...sidesOf(one).map((side) => toSide(p, side)));
  return inside(p, one) ? -near : near;
}

const toPath = (p: XY, at: readonly XY[]) =>
  at.length === 1 ? Math.hypot(at[0]![0] - p[0], at[0]![1] - p[1]) : Math.min(...sides(at).map((s) => toSide(p, s)));

function toThings({ things }: Twin, p: XY, fits: (thing: Thing) => boolean, less: (thing: Thing) => number): number {
  return Math.min(Infinity, ...things.filter(fits).map((thing) => toPath(p, thing.at) - less(thing)));
}

export const distances = {
  woods: (twin: Twin, p: XY) =>
    least(
      toAreas(twin, p, ['woods']),
      toThings(
        twin,
        p,
        ({ kind, height }) => kind === 'tree' && height > 3,
        () => 0,
      ),
    ),
  brush: (twin: Twin, p: XY) =>
    least(
      toAreas(twin, p, ['brush', 'woods']),
      Math.max(
        0,
        toThings(
          twin,
          p,
          ({ kind }) => kind === 'hedge',
          (t) => t.half,
        ),
      ),
    ),
  building: (twin: Twin, p: XY) => toAreas(twin, p, ['building']),
  feeder: (twin: Twin, p: XY) =>
    toThings(
      twin,
      p,
      ({ kind }) => kind === 'feeder',
      () => 0,
    ),
  water: (twin: Twin, p: XY) =>
    least(
      toAreas(twin, p, ['water', 'wetland']),
      toThings(
        twin,
        p,
        ({ kind }) => kind === 'stream',
        () => 0,
      ),
    ),
};

/** Inside an area its own edge counts; outside, whatever is nearest. */
function least(area: number, other: number): number {
  return area < 0 ? area : Math.min(area, other);
}

/** Metres along a ray (unit east and north) to where something higher than the eye stands, and that height: every crossing. */
function crossings(twin: Twin, [px, py]: XY, [ux, uy]: XY): { d: number; height: number }[] {
  const found: { d: number; height: number }[] = [];
  const wall = ([[ax, ay], [bx, by]]: Side, height: number) => {
    const [ex, ey] = [bx - ax, by - ay];
    const cross = ux * ey - uy * ex;
    if (cross === 0) return;
    const [wx, wy] = [ax - px, ay - py];
    const d = (wx * ey - wy * ex) / cross;
    const t = (wx * uy - wy * ux) / cross;
    if (d > 0 && t >= 0 && t <= 1) found.push({ d, height });
  };
  const round = ([cx, cy]: XY, radius: number, height: number) => {
    const [wx, wy] = [cx - px, cy - py];
    const along = wx * ux + wy * uy;
    const off2 = wx * wx + wy * wy - along * along;
    if (off2 < radius * radius && along > 0) found.push({ d: along - Math.sqrt(radius * radius - off2), height });
  };
  for (const { height, area } of twin.seen) if (height > 0) for (const side of sidesOf(area)) wall(side, height);
  for (const { kind, at, crown, half, height } of twin.things) {
    if (kind === 'tree') round(at[0]!, crown, height);
    if (kind !== 'hedge') continue;
    for (const end of at) round(end, half, height);
    for (const [a, b] of sides(at)) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [nx, ny] = [(half * (b[1] - a[1])) / length, (half * (a[0] - b[0])) / length];
      wall(
        [
          [a[0] + nx, a[1] + ny],
          [b[0] + nx, b[1] + ny],
        ],
        height,
      );
      wall(
        [
          [a[0] - nx, a[1] - ny],
          [b[0] - nx, b[1] - ny],
        ],
        height,
      );
    }
  }
  return found;
}

const toward = (azimuth: number): XY => [Math.sin(azimuth * degree), Math.cos(azimuth * degree)];

/** Mean free sight over whole degrees, past anything taller than the eye, at most `reach`. */
export function meanSight(twin: Twin, p: XY, eye: number, reach: number): number {
  let sum = 0;
  for (let azimuth = 0; azimuth < 360; azimuth++) {
    const taller = crossings(twin, p, toward(azimuth)).filter(({ height }) => height > eye);
    sum += Math.min(reach, ...taller.map(({ d }) => d));
  }
  return sum / 360;
}

/** Minutes the sun is ahead of the clock of its meridian. SOURCE: Spencer 1971, as the NOAA solar sheet prints it. */
function equationOfTime(dayOfYear: number): number {
  const g = (2 * Math.PI * (dayOfYear - 1)) / 365;
  return (
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(g) -
      0.032077 * Math.sin(g) -
      0.014615 * Math.cos(2 * g) -
      0.040849 * Math.sin(2 * g))
  );
}

/** Mean hours of sun within solar 12–17 h on every 7th day from `from` to `to` ("YYYY-MM-DD"), minute by minute in steps of `step`. */
export function sunHours(
  twin: Twin,
  p: XY,
  eye: number,
  [lon, lat]: readonly [number, number],
  [from, to]: readonly [string, string],
): number {
  const day = 86_400_000;
  let [hours, days] = [0, 0];
  for (let at = Date.parse(from); at <= Date.parse(to); at += 7 * day, days++) {
    const ofYear = Math.floor((at - Date.UTC(new Date(at).getUTCFullYear(), 0, 1)) / day) + 1;
    const noon = at + day / 2 - (lon / 15) * 3_600_000 - equationOfTime(ofYear) * 60_000;
    for (let minute = 5; minute < 300; minute += 10) {
      const { azimuth, altitude } = getPosition(new Date(noon + minute * 60_000), lat, lon);
      if (altitude <= 0) continue;
      const tangent = Math.tan(altitude * degree);
      const hidden = crossings(twin, p, toward(azimuth)).some(({ d, height }) => (height - eye) / d > tangent);
      if (!hidden) hours += 1 / 6;
    }
  }
  return hours / days;
}
