/** Random sites, seeded: every kind, every shape, odd names. */
import type { Position } from 'geojson';
import { allKinds, shapeOf } from '../../../src/site/kinds.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Kind, Site, SiteFeature, SiteGeometry } from '../../../src/site/types.ts';

/** Mulberry32: a small seeded generator, enough for test data. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const odd = [
  'Gate',
  '=1+1',
  '+x',
  '-5',
  '@a',
  "'=q",
  '<b>&"',
  'Ærø Ö',
  '木',
  '🦉 owl',
  'a,b;c',
  'two\nlines',
  '"',
  "O'Hara",
  '007',
  '1e5',
];

export function randomSite(seed: number): Site {
  const random = seeded(seed);
  const centre: Position = [random() * 340 - 170, random() * 140 - 70];
  const features = Array.from({ length: Math.floor(random() * 9) }, (_, i) => randomFeature(i, centre, random));
  const site = newSite(odd[Math.floor(random() * odd.length)]!, { date: '2026-06-15' });
  return { ...site, features };
}

function randomFeature(i: number, centre: Position, random: () => number): SiteFeature {
  const kind = allKinds[Math.floor(random() * allKinds.length)]!;
  const name = random() < 0.7 ? { name: odd[Math.floor(random() * odd.length)]! } : {};
  const note = random() < 0.3 ? { note: odd[Math.floor(random() * odd.length)]! } : {};
  const height =
    random() < 0.5 && ['woods', 'tree', 'hedge', 'building'].includes(kind)
      ? { height: Math.round(random() * 300) / 10 }
      : {};
  const post = kind === 'post' ? { state: 'candidate', number: i + 1, facing: Math.round(random() * 3600) / 10 } : {};
  const geometry = random() < 0.05 ? null : randomGeometry(kind, centre, random);
  return {
    id: `f${i}`,
    kind,
    geometry,
    properties: { ...name, ...note, ...height, ...post, sown: random() < 0.5, extraText: odd[i % odd.length]! },
  };
}

function randomGeometry(kind: Kind, [lon, lat]: Position, random: () => number): SiteGeometry {
  const near = (): Position => [round(lon! + (random() - 0.5) * 0.01), round(lat! + (random() - 0.5) * 0.01)];
  const shape = shapeOf(kind);
  if (shape === 'point') return { type: 'Point', coordinates: near() };
  if (shape === 'line') {
    const lines = Array.from({ length: random() < 0.3 ? 2 : 1 }, () =>
      Array.from({ length: 2 + Math.floor(random() * 6) }, near),
    );
    return lines.length === 1
      ? { type: 'LineString', coordinates: lines[0]! }
      : { type: 'MultiLineString', coordinates: lines };
  }
  const parts = Array.from({ length: random() < 0.3 ? 2 : 1 }, (_, i) => star([round(lon! + i * 0.02), lat!], random));
  return parts.length === 1
    ? { type: 'Polygon', coordinates: parts[0]! }
    : { type: 'MultiPolygon', coordinates: parts };
}

/** A star-shaped outline (never crosses itself), sometimes with a hole. */
function star([lon, lat]: Position, random: () => number): Position[][] {
  const corners = 3 + Math.floor(random() * 8);
  const ring = (least: number, most: number): Position[] => {
    const open = Array.from({ length: corners }, (_, i) => {
      const angle = ((i + random() * 0.5) / corners) * 2 * Math.PI;
      const reach = least + random() * (most - least);
      return [round(lon! + reach * Math.cos(angle)), round(lat! + reach * Math.sin(angle))];
    });
    return [...open, [...open[0]!]];
  };
  const hole = corners > 5 && random() < 0.4 ? [ring(0.0001, 0.0004).reverse()] : [];
  return [ring(0.002, 0.005), ...hole];
}

function round(value: number): number {
  return Number(value.toFixed(7));
}
