/**
 * Ten seeded sites against the twin in whole-twin.ts, from the file's text to the card. Tolerances: shares 0.001 (a 2,048-corner circle
 * is 2e-6 off; Turf snaps corners), distances 3 cm, mean sight 0.6 m (the card says whole meters), sun 0.1 h (a 10-minute ray at an edge, and
 * noon by Spencer's series is up to half a minute off), the one number 1e-6 of 100.
 */
import type { FeatureCollection, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { makePlan } from '../../src/plan.ts';
import { readSite } from '../../src/site/read.ts';
import { distances, lowCoverShare, meanSight, order, plane, sunHours, twinOf } from './whole-twin.ts';

/** SOURCE: mulberry32, public domain. */
function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const foot = 0.3048;
/** Middle of the mounting heights of the guide (USFWS and Penn. agency 3–5 ft; TWRA, AKSB, DCCL 4–6 ft) and season. */
const birds = [
  { id: 'eastern-bluebird', eye: 4 * foot, season: ['2026-04-01', '2026-08-15'] },
  { id: 'tree-swallow', eye: 5 * foot, season: ['2026-05-15', '2026-07-31'] },
] as const;

const centers: [number, number][] = [
  [-83, 40],
  [-105.2, 33.1],
  [151.2, -33],
  [10.4, 59.9],
  [-78.5, 0.01],
];

function randomSite(seed: number) {
  const random = seeded(seed);
  const [lon, lat] = centers[seed % centers.length]!;
  const k = 111_320;
  const at = (x: number, y: number): Position => [
    Number((lon + x / k / Math.cos((lat * Math.PI) / 180)).toFixed(8)),
    Number((lat + y / k).toFixed(8)),
  ];
  const between = (a: number, b: number) => a + (b - a) * random();
  const star = (x: number, y: number, small: number, large: number, corners: number) => {
    const ring = Array.from({ length: corners }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.6 * random())) / corners;
      const r = between(small, large);
      return at(x + r * Math.cos(angle), y + r * Math.sin(angle));
    });
    return [...ring, ring[0]!];
  };
  const features: FeatureCollection['features'] = [];
  const add = (kind: string, type: 'Polygon' | 'LineString' | 'Point', coordinates: unknown, more = {}) =>
    features.push({
      type: 'Feature',
      id: `f${features.length}`,
      properties: { kind, ...more },
      geometry: { type, coordinates } as never,
    });
  const whole = [at(-190, -190), at(190, -190), at(190, 190), at(-190, 190), at(-190, -190)];
  if (random() < 0.6) add('short-grass', 'Polygon', [whole]);
  for (let i = 0; i < 10; i++) {
    const [x, y] = [between(-130, 130), between(-130, 130)];
    const kind = order[Math.floor(random() * order.length)]!;
    const rings = [star(x, y, 18, kind === 'building' ? 25 : 55, 6 + Math.floor(5 * random()))];
    if (random() < 0.35) rings.push(star(x, y, 3, 8, 5).reverse());
    add(kind, 'Polygon', rings, kind === 'woods' && random() < 0.5 ? { height: Math.round(between(6, 25)) } : {});
  }
  for (let i = 0; i < 5; i++)
    add('tree', 'Point', at(between(-120, 120), between(-120, 120)), {
      height: Math.round(between(2, 16)),
      crownRadius: Math.round(between(1, 5)),
    });
  add('hedge', 'LineString', [
    at(between(-150, 0), between(40, 120)),
    at(0, between(40, 90)),
    at(between(20, 150), 100),
  ]);
  add('stream', 'LineString', [at(-150, -150), at(between(-50, 50), -120), at(150, -150)]);
  add('feeder', 'Point', at(between(-80, 80), between(-80, 80)));
  const bird = birds[seed % 2]!;
  for (const id of ['p1', 'p2'])
    features.push({
      type: 'Feature',
      id,
      properties: { kind: 'post', state: 'fixed', bird: bird.id },
      geometry: { type: 'Point', coordinates: at(between(-60, 60), between(-60, 60)) },
    });
  const site = {
    type: 'FeatureCollection',
    meadowpost: {
      fileVersion: 1,
      name: 'twin',
      units: 'metric',
      region: 'eastern-north-america',
      wanted: [],
      date: '2026-06-15',
    },
    features,
  } as FeatureCollection;
  return { site, bird, center: [lon, lat] as const };
}

const number = (text: string, pattern: RegExp) => Number(pattern.exec(text)?.[1] ?? Number.NaN);

describe('ten random sites against a twin made of Turf, suncalc and plain arithmetic', () => {
  it.each(Array.from({ length: 10 }, (_, i) => i + 1))('site %i', async (seed) => {
    const { site, bird, center } = randomSite(seed);
    const read = readSite(JSON.stringify(site), 'twin.geojson');
    expect(read.issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const plan = await makePlan(read.site!, { proof: 'none' });
    expect(plan.boxes).toHaveLength(2);
    const to = plane(center[0], center[1]);
    const twin = twinOf(site, to);
    // South of the equator the season is half a year later.
    const season =
      center[1] < 0
        ? bird.id === 'eastern-bluebird'
          ? ['2026-10-01', '2027-02-15']
          : ['2026-11-15', '2027-01-31']
        : bird.season;
    for (const { post, card } of plan.boxes) {
      const feature = site.features.find(({ id }) => id === post)!;
      const p = to((feature.geometry as { coordinates: Position }).coordinates);
      const row = (id: string) => card.rows.find((one) => one.id === id)!;
      const label = `${post}: ${card.rows.map((r) => r.sentence).join(' | ')}`;

      const share = lowCoverShare(twin, p, 40);
      if (bird.id === 'eastern-bluebird' && share.unmapped < 0.89) {
        expect(Math.abs(row('openness').raw! - share.cover), label).toBeLessThan(0.001);
      }
      expect(Math.abs(card.unmapped - share.unmapped), label).toBeLessThan(0.001);

      expect(Math.abs(row('woods-edge').raw! - distances.woods(twin, p)), label).toBeLessThan(0.03);
      expect(Math.abs(row('brush').raw! - distances.brush(twin, p)), label).toBeLessThan(0.03);
      const house = Math.abs(row('buildings-and-feeders').raw!);
      const near = [distances.building(twin, p), distances.feeder(twin, p)].map(Math.abs);
      expect(Math.min(...near.map((d) => Math.abs(d - house))), label).toBeLessThan(0.03);
      if (bird.id === 'tree-swallow')
        expect(Math.abs(row('water').raw! - distances.water(twin, p)), label).toBeLessThan(0.03);

      const within = /free sight 0 m/.test(row('openness').sentence);
      if (row('openness').raw !== null && !within)
        expect(
          Math.abs(number(row('openness').sentence, /free sight ([\d.]+) m/) - meanSight(twin, p, bird.eye, 150)),
          label,
        ).toBeLessThan(0.6);
      if (row('afternoon-sun').raw !== null && !within)
        expect(
          Math.abs(card.sun.hours - sunHours(twin, p, bird.eye, center, season as [string, string])),
          label,
        ).toBeLessThan(0.1);

      const counted = card.rows.filter((r) => r.score !== null && r.weight > 0);
      const weight = counted.reduce((sum, r) => sum + r.weight, 0);
      const product = counted.reduce((all, r) => all * r.score! ** (r.weight / weight), 1);
      // A hard rule of the bird makes it 0, and the card says which.
      expect(card.score).toBeCloseTo(card.refused.length > 0 ? 0 : 100 * product, 6);
    }
  });
});
