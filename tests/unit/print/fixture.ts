/** An invented park and its plan, and smaller ones: places, names and scores are made up. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import proj4 from 'proj4';
import { subjects } from '../../../layers/all.ts';
import { bearing, distance, type Point } from '../../../src/geometry/point.ts';
import type { Frame } from '../../../src/ground/types.ts';
import type { Leg, Plan, PlannedBox, PostCard, Round } from '../../../src/plan-types.ts';
import type { SheetInput, SheetOptions } from '../../../src/print/input.ts';
import type { SheetFonts } from '../../../src/print/pdf-fonts.ts';
import { windOf } from '../../../src/print/units.ts';
import type { Kind, LonLat, Site, SiteFeature, Units } from '../../../src/site/types.ts';

/** A frame of the kind the ground room makes: transverse Mercator, scale 1 at its middle. */
export function frameAt(centre: LonLat): Frame {
  const plane = proj4('EPSG:4326', `+proj=tmerc +lat_0=${centre[1]} +lon_0=${centre[0]} +k=1 +datum=WGS84 +units=m`);
  return {
    centre,
    toPlane: (position) => {
      const [x, y] = plane.forward([...position]) as [number, number];
      return { x, y };
    },
    toLonLat: ({ x, y }) => plane.inverse([x, y]) as LonLat,
  };
}

/** Seeded figures 0–1. */
export function dice(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 4294967296;
  };
}

interface Wish {
  readonly boxes: number;
  readonly centre?: LonLat;
  readonly units?: Units;
  /** Metres between neighbors of the net the boxes stand on. */
  readonly gap?: number;
  readonly name?: string;
  readonly land?: boolean;
  readonly rounds?: number;
}

/** A made-up site with its plan; boxes stand on a shaken net, every fifth is standing, 3 and 4 are a pair. */
export function invented(wish: Wish): { site: Site; plan: Plan; frame: Frame } {
  const { boxes: n, centre = [-83.1234, 40.1357], units = 'us', gap = 118, name = 'Quillback Meadow' } = wish;
  const frame = frameAt(centre);
  const random = dice(7);
  const columns = Math.max(1, Math.ceil(Math.sqrt(n * 1.7)));
  const rows = Math.max(1, Math.ceil(n / columns));
  const spots: Point[] = Array.from({ length: n }, (_, i) => {
    const row = Math.floor(i / columns);
    const column = row % 2 === 0 ? i % columns : columns - 1 - (i % columns);
    const shake = () => (random() - 0.5) * gap * 0.35;
    return { x: (column - (columns - 1) / 2) * gap + shake(), y: ((rows - 1) / 2 - row) * gap + shake() };
  });
  if (n >= 4) spots[3] = { x: spots[2]!.x + 5, y: spots[2]!.y + 4 };
  const half = { x: (columns * gap) / 2 + 40, y: (rows * gap) / 2 + 40 };
  const start = { x: -half.x + 15, y: half.y - 25 };
  const features = wish.land === false ? [] : landOf(frame, half, start);
  const boxes = spots.map((at, i) => boxOf(i + 1, at, frame, random, n));
  return { frame, site: siteOf(name, units, features), plan: planOf(name, boxes, start, wish.rounds ?? 1) };
}

function boxOf(number: number, at: Point, frame: Frame, random: () => number, n: number): PlannedBox {
  const pair = n >= 4 ? (number === 3 ? 4 : number === 4 ? 3 : null) : null;
  const facing = Math.round(45 + random() * 90);
  const bird = number % 4 === 0 ? 'tree-swallow' : 'eastern-bluebird';
  return {
    number,
    post: `post-${number}`,
    at,
    position: frame.toLonLat(at),
    bird,
    state: number % 5 === 0 ? 'standing' : 'new',
    pairedWith: pair,
    holeHeight: 1.524,
    sureness: 0.9,
    card: cardOf(`post-${number}`, bird, Math.round(55 + random() * 42), facing),
  };
}

function cardOf(post: string, bird: string, score: number, facing: number): PostCard {
  const row = (id: string, title: string, value: number, sentence: string) =>
    ({
      id,
      title,
      unit: 'm',
      weight: 1,
      raw: 1,
      score: value,
      sentence,
      sources: ['ours'],
      at: null,
      curve: null,
    }) as PostCard['rows'][number];
  return {
    post,
    bird,
    score,
    judged: 0.9,
    weakest: ['brush', 'perch'],
    rows: [
      row('openness', 'Openness', 0.96, 'Short grass and paths fill 88 % of the 44 yd around; 85 % is plenty.'),
      row('woods-edge', 'Woods edge', 0.9, 'The woods edge is 51 yd off; 49 yd and more is full marks.'),
      row('brush', 'Brush', 0.35, 'Brush stands 31 yd off: wrens may find the box; 67 yd and more is full marks.'),
      row('perch', 'Perch', 0.4, 'The nearest perch in front is 41 yd off; 8–33 yd is best.'),
    ],
    facing: {
      best: facing,
      from: facing - 30,
      to: facing + 30,
      used: facing,
      word: windOf(facing),
      magnetic: { degrees: facing + 8, declination: -8, model: 'World Magnetic Model 2025, 2026-03-01' },
      sentence: 'East to southeast keeps out the storm and the afternoon sun.',
    },
    sun: {
      hours: 4.2,
      grade: 'HIGH',
      front: 1,
      roof: 2,
      hottestWall: 1.5,
      sunny: [[12, 16]],
      sentence: 'Sun to 16 h.',
      help: ['Pale roof with a wide overhang.'],
    },
    refused: [],
    flags: ['The nearest road is 29 yd in front of the hole.'],
    unmapped: 0.04,
    who: [],
  };
}

function landOf(frame: Frame, { x: w, y: h }: Point, start: Point): SiteFeature[] {
  let made = 0;
  const lay = (points: readonly [number, number][]): LonLat[] =>
    points.map(([x, y]) => frame.toLonLat({ x: x * w, y: y * h }));
  const add = (
    kind: Kind,
    geometry: SiteFeature['geometry'],
    properties: Record<string, unknown> = {},
  ): SiteFeature => ({
    id: `${kind}-${++made}`,
    kind,
    geometry,
    properties: { kind, ...properties },
  });
  const area = (kind: Kind, points: [number, number][], name?: string) =>
    add(kind, { type: 'Polygon', coordinates: [lay([...points, points[0]!])] }, name ? { name } : {});
  const blob = (kind: Kind, cx: number, cy: number, rx: number, ry: number, name?: string) => {
    const random = dice(Math.round(cx * 100 + cy * 1000 + 5000));
    const points = Array.from({ length: 28 }, (_, i): [number, number] => {
      const turn = (i / 28) * 2 * Math.PI;
      const r = 0.85 + random() * 0.3;
      return [cx + Math.cos(turn) * rx * r, cy + Math.sin(turn) * ry * r];
    });
    return area(kind, points, name);
  };
  const run = (kind: Kind, points: [number, number][], name?: string) =>
    add(kind, { type: 'LineString', coordinates: lay(points) }, name ? { name } : {});
  const spot = (kind: Kind, x: number, y: number, more: Record<string, unknown> = {}) =>
    add(kind, { type: 'Point', coordinates: frame.toLonLat({ x: x * w, y: y * h }) }, more);
  return [
    area(
      'meadow',
      [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ],
      'West Meadow',
    ),
    area(
      'short-grass',
      [
        [-0.9, -0.85],
        [0.35, -0.85],
        [0.45, -0.1],
        [-0.55, 0.05],
      ],
      'Sheep Pasture',
    ),
    blob('woods', -0.1, 0.62, 0.16, 0.32, 'Long Spinney'),
    blob('woods', 0.82, 0.7, 0.22, 0.34, 'Hob Wood'),
    blob('brush', 0.15, 0.42, 0.13, 0.18),
    blob('wetland', 0.72, -0.2, 0.2, 0.26),
    blob('water', 0.75, -0.2, 0.12, 0.15, 'Teal Pond'),
    area(
      'crop',
      [
        [0.5, -0.95],
        [0.97, -0.95],
        [0.97, -0.55],
        [0.5, -0.6],
      ],
      'Barley',
    ),
    blob('orchard', -0.75, 0.45, 0.15, 0.2, 'Old Orchard'),
    area(
      'building',
      [
        [-0.98, 0.86],
        [-0.955, 0.86],
        [-0.955, 0.93],
        [-0.98, 0.93],
      ],
      'Barn',
    ),
    area('paved', [
      [-0.95, 0.84],
      [-0.9, 0.84],
      [-0.9, 0.95],
      [-0.95, 0.95],
    ]),
    area(
      'off-limits',
      [
        [0.05, -0.55],
        [0.22, -0.55],
        [0.22, -0.35],
        [0.05, -0.35],
      ],
      'Dig',
    ),
    area('boundary', [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ]),
    run(
      'path',
      [
        [start.x / w, start.y / h],
        [-0.5, 0.6],
        [-0.3, 0.1],
        [0.2, 0.1],
        [0.55, 0.2],
        [0.9, 0.2],
      ],
      'Mill Walk',
    ),
    run(
      'road',
      [
        [-1, 0.98],
        [0, 0.95],
        [1, 0.99],
      ],
      'Ferry Lane',
    ),
    run('fence', [
      [-0.9, -0.85],
      [0.35, -0.85],
      [0.45, -0.1],
      [-0.55, 0.05],
      [-0.9, -0.85],
    ]),
    run('hedge', [
      [-0.98, -0.9],
      [-0.2, -0.95],
      [0.45, -0.93],
    ]),
    run(
      'stream',
      [
        [0.75, -0.2],
        [0.9, -0.4],
        [0.99, -0.5],
      ],
      'Nettle Brook',
    ),
    run('overhead-wire', [
      [-0.98, 0.3],
      [0.98, -0.05],
    ]),
    spot('tree', -0.4, 0.35, { crownRadius: 6 }),
    spot('tree', 0.5, -0.3, { crownRadius: 9, name: 'Grandmother Oak' }),
    spot('shrub', 0.3, -0.2),
    spot('perch', -0.2, -0.4),
    spot('feeder', -0.93, 0.8),
    spot('landmark', 0.02, -0.02, { name: 'Old gate' }),
    spot('landmark', -0.55, -0.5, { name: 'Trig stone' }),
    add('trailhead', { type: 'Point', coordinates: frame.toLonLat(start) }, { name: 'Trailhead' }),
  ];
}

function siteOf(name: string, units: Units, features: SiteFeature[]): Site {
  return {
    settings: {
      fileVersion: 1,
      name,
      units,
      region: 'eastern-north-america',
      wanted: [{ bird: 'eastern-bluebird', sites: 40 }],
      stormFrom: 270,
      julyMaximum: 29,
      box: 'pale',
      start: null,
      date: '2026-03-01',
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
    },
    features,
  };
}

function planOf(siteName: string, boxes: PlannedBox[], start: Point, walkers: number): Plan {
  const size = Math.ceil(boxes.length / walkers);
  const rounds = Array.from({ length: walkers }, (_, i) =>
    roundOf(i + 1, boxes.slice(i * size, (i + 1) * size), start),
  );
  return {
    siteName,
    date: '2026-03-01',
    boxes,
    sites: boxes.length,
    leftOut: [],
    rounds: rounds.filter((round) => round.boxes.length > 0),
    sureness: null,
    proof: { state: 'best-possible', value: 1, bound: 1, gap: 0, mostSites: null, sentence: '', seconds: 0 },
    issues: [],
    unmapped: 0.04,
  };
}

function roundOf(walker: number, boxes: PlannedBox[], start: Point): Round {
  const stops: { id: Leg['from'] | Leg['to']; at: Point }[] = [
    { id: 'start', at: start },
    ...boxes.map((box) => ({ id: box.number, at: box.at })),
    { id: 'end', at: start },
  ];
  const legs = stops.slice(1).map((to, i): Leg => {
    const from = stops[i]!;
    const metres = distance(from.at, to.at);
    return {
      from: from.id as Leg['from'],
      to: to.id as Leg['to'],
      metres,
      minutes: metres / 80,
      bearing: bearing(from.at, to.at),
      line: [from.at, to.at],
    };
  });
  const metres = legs.reduce((sum, leg) => sum + leg.metres, 0);
  return {
    walker,
    start,
    boxes: boxes.map((box) => box.number),
    legs,
    metres,
    minutes: metres / 80 + 4 * boxes.length,
    gap: null,
  };
}

export const standardOptions: SheetOptions = {
  paper: 'letter',
  orientation: 'landscape',
  scale: null,
  variant: 'standard',
  sheets: ['index', 'details', 'check', 'cards', 'labels', 'materials', 'landowner'],
};

/** A whole input for `makeSheets`. */
export function inputOf(wish: Wish, options: Partial<SheetOptions> = {}): SheetInput {
  return {
    ...invented(wish),
    layers: subjects,
    options: { ...standardOptions, ...options },
    stamp: {
      date: '2026-03-01',
      revision: '3',
      hash: '9f2c41aa07',
      declination: { degrees: -8.1, yearly: -0.05, model: 'World Magnetic Model 2025', date: '2026-03-01' },
      credit: 'Drawn from the ground',
      address: null,
    },
  };
}

/** The shipped fonts as the caller hands them over: Latin first, then the other alphabets. */
export function testFonts(): SheetFonts {
  const require = createRequire(import.meta.url);
  const load = (family: string, weight: number, slant: string) =>
    ['latin', 'latin-ext', 'greek', 'cyrillic'].map((part) => {
      const folder = join(require.resolve(`@fontsource/${family}/package.json`), '..', 'files');
      return new Uint8Array(readFileSync(join(folder, `${family}-${part}-${weight}-${slant}.woff`)));
    });
  return {
    sans: load('source-sans-3', 400, 'normal'),
    sansBold: load('source-sans-3', 700, 'normal'),
    sansItalic: load('source-sans-3', 400, 'italic'),
    serif: load('source-serif-4', 400, 'normal'),
    serifBold: load('source-serif-4', 700, 'normal'),
    serifItalic: load('source-serif-4', 400, 'italic'),
  };
}
