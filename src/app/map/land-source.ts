/** The site as the map's source: every feature with the members the layer files ask for, and a place for every name. */
import type { Feature, FeatureCollection, Geometry, Polygon, Position } from 'geojson';
import { crownOf, nameOf, postState } from '../../site/properties.ts';
import { type AreaKind, areaKinds, coverKinds, type Site, type SiteFeature } from '../../site/types.ts';
import { pixelsPerMetre22 } from './ground-scale.ts';
import { mapWords } from './map-words.ts';
import { namePlace, type Rings } from './name-place.ts';

/** Height of a text line and mean width of a letter of names on the map, px (15 px italic serif, measured by eye: ours). */
const line = 18;
const letter = 7.6;

/** Features without geometry are left out here; lists show them. */
export function landFeatures(site: Site): FeatureCollection {
  const placed = site.features.filter((f) => f.geometry !== null);
  return { type: 'FeatureCollection', features: [...placed.flatMap(drawnWithCrown), ...nameFeatures(placed)] };
}

/** A tree is also its crown as it stands on the ground, and its name is written below the crown. */
function drawnWithCrown(feature: SiteFeature): Feature[] {
  const one = drawn(feature);
  if (feature.kind !== 'tree' || feature.geometry?.type !== 'Point') return [one];
  const [lon = 0, lat = 0] = feature.geometry.coordinates;
  const radius = crownOf(feature);
  const below: Feature = {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [lon, lat - radius / metresPerDegree] },
    properties: { ...one.properties, role: 'below' },
  };
  const crown: Feature = {
    ...one,
    geometry: crownRing(lon, lat, radius),
    properties: { ...one.properties, role: 'crown' },
  };
  return [one, crown, below];
}

/** Meters in a degree of latitude, for drawing only (mean earth radius 6 371 008.8 m, IUGG). */
const metresPerDegree = (Math.PI / 180) * 6371008.8;

/** Bumps of a crown, and points on each. */
const bumps = 9;
const points = 5;

/** A scalloped ring whose outermost points lie on the crown's radius. */
function crownRing(lon: number, lat: number, radius: number): Polygon {
  const squash = Math.cos((lat * Math.PI) / 180);
  const ring = Array.from({ length: bumps * points + 1 }, (_, i): Position => {
    const angle = ((i % (bumps * points)) / (bumps * points)) * 2 * Math.PI;
    const reach = radius * (0.88 + 0.12 * Math.abs(Math.sin((angle * bumps) / 2)));
    const degrees = reach / metresPerDegree;
    return [lon + (degrees * Math.sin(angle)) / squash, lat + degrees * Math.cos(angle)];
  });
  return { type: 'Polygon', coordinates: [ring] };
}

function drawn(feature: SiteFeature): Feature {
  const geometry = feature.geometry as Geometry;
  const properties: Record<string, unknown> = {
    id: feature.id,
    kind: feature.kind,
    name: mapWords(nameOf(feature) ?? ''),
    role: '',
    state: feature.kind === 'post' ? postState(feature) : '',
  };
  if (feature.kind === 'tree' && geometry.type === 'Point')
    properties.pixels22 = crownOf(feature) * pixelsPerMetre22(geometry.coordinates[1] ?? 0);
  return { type: 'Feature', geometry, properties };
}

function nameFeatures(features: readonly SiteFeature[]): Feature[] {
  const areas = features
    .filter((f) => (areaKinds as readonly string[]).includes(f.kind) && f.kind !== 'boundary')
    .flatMap((f) => polygonsOf(f).map((rings) => ({ f, rings, box: boxOf(rings), rank: rankOf(f.kind as AreaKind) })));
  return areas.flatMap((one) => {
    const name = mapWords(nameOf(one.f) ?? '');
    const largest = areas.filter((a) => a.f === one.f).every((a) => size(a.box) <= size(one.box));
    if (!name || !largest) return [];
    const over = areas.filter((a) => a.rank < one.rank && overlap(a.box, one.box)).map((a) => a.rings[0] ?? []);
    const place = placeName([...one.rings, ...over], name);
    return place ? [place] : [];
  });
}

/** The name on one line or on two, whichever fits from farther away. */
function placeName(rings: Rings, name: string): Feature | null {
  const latitude = rings[0]?.[0]?.[1] ?? 0;
  const squash = Math.cos((latitude * Math.PI) / 180);
  const flat = rings.map((ring) => ring.map(([x = 0, y = 0]) => [x * squash, y] as Position));
  const words = name.split(' ');
  const options = [name, ...(words.length > 1 ? [inTwo(words)] : [])].flatMap((text) => {
    const rows = text.split('\n');
    const width = Math.max(...rows.map((row) => row.length)) * letter + 10;
    const height = rows.length * line + 6;
    const place = namePlace(flat, width / height);
    return place ? [{ text, place, from: zoomWhere((place.half * 2 * 111_320) / width, latitude) }] : [];
  });
  const best = options.sort((a, b) => a.from - b.from)[0];
  if (!best) return null;
  const [x, y] = best.place.at;
  return {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [x / squash, y] },
    properties: { role: 'name', kind: 'name', name: best.text, fitsFrom: best.from, pixels22: 0, state: '' },
  };
}

/** The zoom from which `metres` take at least one px. */
function zoomWhere(metres: number, latitude: number): number {
  return 22 - Math.log2(metres * pixelsPerMetre22(latitude));
}

function inTwo(words: readonly string[]): string {
  const cut = Math.ceil(words.length / 2);
  return `${words.slice(0, cut).join(' ')}\n${words.slice(cut).join(' ')}`;
}

function rankOf(kind: AreaKind): number {
  const at = (coverKinds as readonly string[]).indexOf(kind);
  return at < 0 ? 99 : at;
}

function polygonsOf({ geometry }: SiteFeature): Position[][][] {
  if (geometry?.type === 'Polygon') return [(geometry as Polygon).coordinates];
  return geometry?.type === 'MultiPolygon' ? geometry.coordinates : [];
}

type Box = readonly [number, number, number, number];

function boxOf(rings: Rings): Box {
  const xs = (rings[0] ?? []).map((p) => p[0] ?? 0);
  const ys = (rings[0] ?? []).map((p) => p[1] ?? 0);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

function size([a, b, c, d]: Box): number {
  return (c - a) * (d - b);
}

function overlap(a: Box, b: Box): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}
