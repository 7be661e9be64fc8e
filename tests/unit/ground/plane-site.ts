/** Sites drawn in metres for tests: what a test gives at (x, y) stands there on the ground's own frame. */
import type { Point } from '../../../src/geometry/point.ts';
import { makeFrame } from '../../../src/ground/frame.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import type { Ground } from '../../../src/ground/types.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';
import type { Kind, LonLat, Site, SiteFeature, SiteGeometry } from '../../../src/site/types.ts';

export type Pair = readonly [x: number, y: number];

export interface Shape {
  readonly kind: Kind;
  /** An area's rings (outline, holes), or several such parts; a line; or a point. */
  readonly rings?: readonly (readonly Pair[])[];
  readonly parts?: readonly (readonly (readonly Pair[])[])[];
  readonly line?: readonly Pair[];
  readonly at?: Pair;
  readonly properties?: Record<string, unknown>;
}

export const testCentre: LonLat = [-72.3, 43.1];

const toPlace = (centre: LonLat) => {
  const frame = makeFrame(centre);
  return ([x, y]: Pair): LonLat => frame.toLonLat({ x, y });
};

function geometryOf(shape: Shape, place: (pair: Pair) => LonLat): SiteGeometry {
  const ring = (pairs: readonly Pair[]): LonLat[] => [...pairs, pairs[0]!].map(place);
  if (shape.rings) return { type: 'Polygon', coordinates: shape.rings.map(ring) };
  if (shape.parts) return { type: 'MultiPolygon', coordinates: shape.parts.map((rings) => rings.map(ring)) };
  if (shape.line) return { type: 'LineString', coordinates: shape.line.map(place) };
  return { type: 'Point', coordinates: place(shape.at!) };
}

/** Two landmarks far out hold the middle of the box, and with it the frame, at the centre. */
function holders([lon, lat]: LonLat): SiteFeature[] {
  const [dx, dy] = [0.2 / Math.cos((lat * Math.PI) / 180), 0.2];
  return [-1, 1].map((sign) => ({
    id: `holder${sign}`,
    kind: 'landmark',
    geometry: { type: 'Point', coordinates: [lon + sign * dx, lat + sign * dy] },
    properties: {},
  }));
}

export function planeSite(shapes: readonly Shape[], centre: LonLat = testCentre): Site {
  const place = toPlace(centre);
  const features = shapes.map((shape, i): SiteFeature => {
    const properties = { ...shape.properties };
    return { id: `f${i}`, kind: shape.kind, geometry: geometryOf(shape, place), properties };
  });
  return { settings: { ...defaultSettings, name: 'Test' }, features: [...features, ...holders(centre)] };
}

export const planeGround = (shapes: readonly Shape[], centre: LonLat = testCentre): Ground =>
  prepareGround(planeSite(shapes, centre));

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Pair[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

export const at = (x: number, y: number): Point => ({ x, y });

/** A star-shaped ring of `count` corners around a middle, radius `least` … `most`. */
export function star(random: () => number, x: number, y: number, least: number, most: number, count: number): Pair[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.8 * random())) / count;
    const radius = least + (most - least) * random();
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
}
