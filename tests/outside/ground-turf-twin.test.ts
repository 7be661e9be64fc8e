/**
 * Random overlapping sites against Turf, a second way to the same answers: areas are cut by Turf's boolean operations under the overlap
 * rule, and the circle is a polygon of 2,048 corners. Turf's planar operations are run on metres scaled to small "degrees".
 */
import * as turf from '@turf/turf';
import type { Feature, MultiPolygon, Polygon } from 'geojson';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/geometry/random.ts';
import { ringArea } from '../../src/geometry/ring.ts';
import { type CoverKind, coverKinds } from '../../src/site/types.ts';
import { at, type Pair, planeGround, type Shape, star } from '../unit/ground/plane-site.ts';

type Areal = Feature<Polygon | MultiPolygon>;

const scale = 1e-4;
const close = (ring: readonly Pair[]): number[][] => [...ring, ring[0]!].map(([x, y]) => [x * scale, y * scale]);

/** Planar area in m²: outlines less holes. */
function planarArea(feature: Areal | null): number {
  if (!feature) return 0;
  const { geometry } = feature;
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  const ringOf = (ring: number[][]): number =>
    Math.abs(ringArea(ring.map(([x, y]) => ({ x: x! / scale, y: y! / scale }))));
  return polygons.reduce(
    (sum, rings) => sum + rings.reduce((area, ring, i) => area + (i === 0 ? 1 : -1) * ringOf(ring), 0),
    0,
  );
}

const kinds: CoverKind[] = ['building', 'water', 'woods', 'woods', 'brush', 'meadow', 'meadow', 'short-grass'];

function randomSite(random: () => number): Shape[] {
  return Array.from({ length: 14 }, (): Shape => {
    const [x, y] = [160 * (random() - 0.5), 160 * (random() - 0.5)];
    const rings = [star(random, x, y, 15, 60, 5 + Math.floor(12 * random()))];
    if (random() < 0.3) rings.push(star(random, x, y, 2, 7, 5));
    return { kind: kinds[Math.floor(random() * kinds.length)]!, rings };
  });
}

type Pieces = readonly { readonly kind: CoverKind; readonly seen: Areal }[];
const both = (a: Areal, b: Areal) => turf.featureCollection<Polygon | MultiPolygon>([a, b]);

/** What Turf makes of the overlap rule: from each area everything that stands above it is taken away. */
function seenPieces(shapes: readonly Shape[]): Pieces {
  const pieces: { kind: CoverKind; seen: Areal }[] = [];
  let above: Areal | null = null;
  for (const kind of coverKinds) {
    for (const shape of shapes.filter((s) => s.kind === kind)) {
      const area: Areal = turf.polygon(shape.rings!.map(close));
      const seen: Areal | null = above ? turf.difference(both(area, above)) : area;
      if (seen) pieces.push({ kind, seen });
      above = above ? turf.union(both(above, area)) : area;
    }
  }
  return pieces;
}

function turfShares(pieces: Pieces, x: number, y: number, radius: number): Map<CoverKind, number> {
  const circle = Array.from({ length: 2048 }, (_, i): Pair => {
    const angle = (2 * Math.PI * i) / 2048;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  const disc = turf.polygon([close(circle)]);
  const whole = planarArea(disc);
  const shares = new Map<CoverKind, number>();
  for (const { kind, seen } of pieces) {
    const share = planarArea(turf.intersect(both(disc, seen))) / whole;
    shares.set(kind, (shares.get(kind) ?? 0) + share);
  }
  return shares;
}

describe('random overlapping sites against Turf', () => {
  for (let seed = 1; seed <= 3; seed++) {
    it(`shares of three discs, site ${seed}`, () => {
      const random = seededRandom(seed);
      const shapes = randomSite(random);
      const ground = planeGround(shapes);
      const pieces = seenPieces(shapes);
      for (let i = 0; i < 3; i++) {
        const [x, y, radius] = [120 * (random() - 0.5), 120 * (random() - 0.5), 15 + 60 * random()];
        const [mine, twin] = [ground.shares(at(x, y), radius), turfShares(pieces, x, y, radius)];
        // A 2,048-sided circle has sides 1.2e-6 r inside the true one.
        for (const kind of coverKinds) {
          const apart = Math.abs(mine[kind] - (twin.get(kind) ?? 0));
          expect(apart, `${kind} of ${radius} m at ${x}, ${y}`).toBeLessThan(5e-6);
        }
      }
    });

    it(`distance to the woods' edge and free sight, site ${seed}`, () => {
      const random = seededRandom(100 + seed);
      const shapes = randomSite(random);
      const ground = planeGround(shapes);
      const woods = woodsOf(shapes);
      const tall = tallOf(shapes);
      for (let i = 0; i < 6; i++) {
        const [x, y] = [160 * (random() - 0.5), 160 * (random() - 0.5)];
        if (woods) {
          const expected =
            edgeDistance(woods, x, y) * (turf.booleanPointInPolygon([x * scale, y * scale], woods) ? -1 : 1);
          expect(Math.abs(ground.nearest(at(x, y), 'woods-edge')!.distance - expected)).toBeLessThan(2e-4);
        }
        const inside = tall !== null && turf.booleanPointInPolygon([x * scale, y * scale], tall);
        const sight = ground.sight(at(x, y), 1.5, 150);
        for (const azimuth of [0, 17, 90, 133, 180, 222, 270, 301]) {
          const free = inside ? 0 : freeSight(tall, x, y, azimuth, 150);
          expect(Math.abs(sight[azimuth]! - free), `${azimuth}° from ${x}, ${y}`).toBeLessThan(2e-3);
        }
      }
    });
  }
});

/**
 * Whole areas of some kinds joined, less everything of other kinds above them. (Joining what is seen of each fails: Turf's union leaves
 * slivers where two pieces share a cut border.)
 */
function joined(shapes: readonly Shape[], wanted: readonly CoverKind[]): Areal | null {
  let [sum, above]: [Areal | null, Areal | null] = [null, null];
  const add = (to: Areal | null, area: Areal): Areal | null => (to ? turf.union(both(to, area)) : area);
  for (const kind of coverKinds) {
    for (const shape of shapes.filter((s) => s.kind === kind)) {
      const area: Areal = turf.polygon(shape.rings!.map(close));
      if (!wanted.includes(kind)) above = add(above, area);
      else {
        const seen: Areal | null = above ? turf.difference(both(area, above)) : area;
        if (seen) sum = add(sum, seen);
      }
    }
  }
  return sum;
}

const woodsOf = (shapes: readonly Shape[]): Areal | null => joined(shapes, ['woods']);
const tallOf = (shapes: readonly Shape[]): Areal | null => joined(shapes, ['building', 'woods', 'brush']);

const ringsOf = ({ geometry }: Areal): Pair[][] =>
  (geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates)
    .flat()
    .map((ring) => ring.map(([x, y]): Pair => [x! / scale, y! / scale]));

/** Brute force over every edge. */
function edgeDistance(area: Areal, x: number, y: number): number {
  let least = Infinity;
  for (const ring of ringsOf(area)) {
    for (let i = 0; i + 1 < ring.length; i++) {
      const [[ax, ay], [bx, by]] = [ring[i]!, ring[i + 1]!];
      const length2 = (bx - ax) ** 2 + (by - ay) ** 2;
      const share =
        length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2));
      least = Math.min(least, Math.hypot(ax + share * (bx - ax) - x, ay + share * (by - ay) - y));
    }
  }
  return least;
}

/** Brute force: the ray against every edge. */
function freeSight(area: Areal | null, x: number, y: number, azimuth: number, reach: number): number {
  let least = reach;
  const [dx, dy] = [Math.sin((azimuth * Math.PI) / 180), Math.cos((azimuth * Math.PI) / 180)];
  for (const ring of area ? ringsOf(area) : []) {
    for (let i = 0; i + 1 < ring.length; i++) {
      const [[ax, ay], [bx, by]] = [ring[i]!, ring[i + 1]!];
      const across = dx * (by - ay) - dy * (bx - ax);
      const distance = ((ax - x) * (by - ay) - (ay - y) * (bx - ax)) / across;
      const share = ((ax - x) * dy - (ay - y) * dx) / across;
      if (distance > 0 && share >= 0 && share <= 1) least = Math.min(least, distance);
    }
  }
  return least;
}
