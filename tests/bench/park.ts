/**
 * A seeded make-believe park of 2 km × 2 km: cells of a random split, one area each – wavy woods, brush, meadows and water, and buildings
 * with courtyards and round ends. Three sizes with ten times the areas from one to the next.
 */

import type { Point } from '../../src/geometry/point.ts';
import { seededRandom } from '../../src/geometry/random.ts';
import { makeFrame } from '../../src/ground/frame.ts';
import type { CoverKind, LonLat, Site, SiteFeature, SiteSettings } from '../../src/site/types.ts';

export type ParkSize = 'S' | 'M' | 'L';

export const parkSizes: Readonly<Record<ParkSize, { areas: number; vertices: number }>> = {
  S: { areas: 50, vertices: 2_000 },
  M: { areas: 500, vertices: 50_000 },
  L: { areas: 5_000, vertices: 500_000 },
};

export const parkSide = 2000;

export const parkSettings: SiteSettings = {
  fileVersion: 1,
  name: 'Make-believe park',
  units: 'metric',
  region: 'eastern-north-america',
  wanted: [{ bird: 'eastern-bluebird', sites: 40 }],
  stormFrom: null,
  julyMaximum: null,
  box: 'natural',
  start: null,
  date: '2026-06-15',
  suggestGrid: null,
  reachOfPaths: null,
  minimumScore: 0,
  walkLimit: null,
  minutesPerBox: 4,
  walkers: 1,
  seed: 1,
  weights: {},
  figures: {},
  direction: null,
  order: [],
  plans: [],
};

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

type Random = () => number;

/** Splits the largest cell across its longer side until there are enough. */
function split(count: number, random: Random): Box[] {
  const cells: Box[] = [{ x: -parkSide / 2, y: -parkSide / 2, w: parkSide, h: parkSide }];
  while (cells.length < count) {
    cells.sort((a, b) => a.w * a.h - b.w * b.h);
    const { x, y, w, h } = cells.pop()!;
    const share = 0.35 + 0.3 * random();
    if (w > h) cells.push({ x, y, w: w * share, h }, { x: x + w * share, y, w: w * (1 - share), h });
    else cells.push({ x, y, w, h: h * share }, { x, y: y + h * share, w, h: h * (1 - share) });
  }
  return cells;
}

/** A closed wavy curve of six harmonics that fills `fill` of its cell. */
function wavy(cell: Box, count: number, fill: number, random: Random): Point[] {
  const waves = Array.from({ length: 6 }, (_, k) => ({
    size: (0.25 * random()) / (k + 1),
    phase: 2 * Math.PI * random(),
  }));
  const most = 1 + waves.reduce((sum, { size }) => sum + size, 0);
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const wave = waves.reduce((sum, { size, phase }, k) => sum + size * Math.cos((k + 2) * angle + phase), 1);
    const radius = (fill * wave) / most / 2;
    return {
      x: cell.x + cell.w / 2 + cell.w * radius * Math.cos(angle),
      y: cell.y + cell.h / 2 + cell.h * radius * Math.sin(angle),
    };
  });
}

/** A turned rectangle, every third with one end rounded. */
function building(cell: Box, scale: number, round: boolean, turn: number): Point[] {
  const [a, b] = [0.3 * cell.w * scale, 0.2 * cell.h * scale];
  const end = round
    ? Array.from({ length: 16 }, (_, i) => {
        const angle = -Math.PI / 2 + (Math.PI * (i + 0.5)) / 16;
        return { x: a + b * Math.cos(angle) * 0.8, y: b * Math.sin(angle) };
      })
    : [
        { x: a, y: -b },
        { x: a, y: b },
      ];
  return [{ x: -a, y: -b }, ...end, { x: -a, y: b }].map(({ x, y }) => ({
    x: cell.x + cell.w / 2 + x * Math.cos(turn) - y * Math.sin(turn),
    y: cell.y + cell.h / 2 + x * Math.sin(turn) + y * Math.cos(turn),
  }));
}

const kindsOf = (random: Random): CoverKind => {
  const share = random();
  if (share < 0.25) return 'woods';
  if (share < 0.4) return 'brush';
  if (share < 0.75) return 'meadow';
  return share < 0.85 ? 'water' : 'building';
};

interface Patch {
  readonly kind: CoverKind;
  readonly rings: Point[][];
}

function patches(size: ParkSize, random: Random): Patch[] {
  const { areas, vertices } = parkSizes[size];
  const cells = split(areas, random).map((cell, i) => ({ cell, i, kind: kindsOf(random) }));
  const made: Patch[] = [];
  let left = vertices;
  for (const { cell, i, kind } of cells.filter((c) => c.kind === 'building')) {
    const turn = random() * Math.PI;
    const rings = [building(cell, 1, i % 3 === 0, turn)];
    if (i % 3 === 1) rings.push(building(cell, 0.4, false, turn).reverse());
    made.push({ kind, rings });
    left -= rings.flat().length;
  }
  const rest = cells.filter((c) => c.kind !== 'building');
  rest.forEach(({ cell, kind }, n) => {
    const count = Math.round(left / (rest.length - n));
    left -= count;
    const holed = random() < 0.15;
    const inner = holed ? Math.floor(count / 3) : 0;
    const rings = [wavy(cell, count - inner, 0.96, random)];
    if (holed) rings.push(wavy(cell, inner, 0.3, random).reverse());
    made.push({ kind, rings });
  });
  return made;
}

export const parkCentre: LonLat = [-72, 43];

/** The park as a site of areas. */
export function makePark(size: ParkSize, seed = 1): Site {
  const frame = makeFrame(parkCentre);
  const features = patches(size, seededRandom(seed)).map(({ kind, rings }, i): SiteFeature => {
    const coordinates = rings.map((ring) => [...ring, ring[0]!].map((p) => frame.toLonLat(p)));
    return { id: `area-${i + 1}`, kind, geometry: { type: 'Polygon', coordinates }, properties: { kind } };
  });
  return { settings: parkSettings, features };
}

/** Posts on a jittered grid over the park, in metres from its centre: `across` × `across` of them, row by row. */
export function parkPosts(across: number, seed = 2): Point[] {
  const random = seededRandom(seed);
  const step = parkSide / across;
  return Array.from({ length: across * across }, (_, i) => ({
    x: -parkSide / 2 + ((i % across) + 0.15 + 0.7 * random()) * step,
    y: -parkSide / 2 + (Math.floor(i / across) + 0.15 + 0.7 * random()) * step,
  }));
}
