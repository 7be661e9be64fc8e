import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { Ground } from '../../../src/ground/types.ts';
import { coverKinds } from '../../../src/site/types.ts';
import { at, type Pair, planeGround, rectangle, type Shape, star } from './plane-site.ts';

const sum = (ground: Ground, x: number, y: number, radius: number): number =>
  Object.values(ground.shares(at(x, y), radius)).reduce((a, b) => a + b, 0);

const disc = 60;
const segment = (d: number): number =>
  (disc * disc * Math.acos(d / disc) - d * Math.sqrt(disc * disc - d * d)) / (Math.PI * disc * disc);

describe('the overlap rule', () => {
  it('puts the finer kind on top whatever the drawing order', () => {
    const meadow: Shape = { kind: 'meadow', rings: [rectangle(-100, -100, 100, 100)] };
    const pond: Shape = { kind: 'water', rings: [rectangle(-100, -100, 20, 100)] };
    for (const shapes of [
      [meadow, pond],
      [pond, meadow],
    ]) {
      const shares = planeGround(shapes).shares(at(0, 0), disc);
      expect(shares.meadow).toBeCloseTo(segment(20), 9);
      expect(shares.water).toBeCloseTo(1 - segment(20), 9);
    }
  });

  it('keeps the fixed order of kinds at one place', () => {
    const order = [...coverKinds];
    for (let i = 0; i < order.length; i++) {
      const shapes = order.slice(i).map((kind): Shape => ({ kind, rings: [rectangle(-10, -10, 10, 10)] }));
      expect(planeGround(shapes.reverse()).coverAt(at(1, 2))).toBe(order[i]);
    }
  });

  it('within one kind puts the taller on top, then the later drawn', () => {
    const low: Shape = { kind: 'woods', rings: [rectangle(-100, -100, 100, 100)], properties: { height: 6 } };
    const tall: Shape = { kind: 'woods', rings: [rectangle(-100, -100, 0, 100)], properties: { height: 30 } };
    const altitude = (shapes: Shape[]): number => planeGround(shapes).horizon(at(150, 0), 0, Float64Array.of(270))[0]!;
    const expected = (Math.atan(Math.max(6 / 50, 30 / 150)) * 180) / Math.PI;
    expect(altitude([low, tall])).toBeCloseTo(expected, 6);
    expect(altitude([tall, low])).toBeCloseTo(expected, 6);
    const ground = planeGround([
      { kind: 'building', rings: [rectangle(-10, -10, 10, 10)], properties: { name: 'Barn' } },
      { kind: 'building', rings: [rectangle(-5, -5, 5, 5)], properties: { name: 'Silo' } },
    ]);
    expect(ground.forbidden(at(0, 0))?.reason).toBe('on a roof (Silo)');
    expect(ground.forbidden(at(7, 7))?.reason).toBe('on a roof (Barn)');
  });

  it('does not count off-limits ground and the boundary as cover', () => {
    const ground = planeGround([
      { kind: 'boundary', rings: [rectangle(-100, -100, 100, 100)] },
      { kind: 'off-limits', rings: [rectangle(-50, -50, 50, 50)] },
    ]);
    expect(ground.shares(at(0, 0), 30).unmapped).toBe(1);
    expect(ground.coverAt(at(0, 0))).toBeNull();
  });
});

/** A made-up site with everything that makes trouble: overlaps, shared borders, holes, repeats, slivers. */
function messySite(seed: number): Shape[] {
  const random = seededRandom(seed);
  const kinds = ['woods', 'meadow', 'water', 'brush', 'short-grass', 'building'] as const;
  const kind = () => kinds[Math.floor(random() * kinds.length)]!;
  const shapes: Shape[] = [];
  for (let i = 0; i < 6; i++) {
    const [x, y] = [100 * (random() - 0.5), 100 * (random() - 0.5)];
    shapes.push({ kind: kind(), rings: [star(random, x, y, 10, 60, 9), star(random, x, y, 2, 8, 5)] });
  }
  // Neighbors on a grid that share borders, with corners in the middle of each other's sides and off by a hair.
  for (let i = -2; i < 2; i++) {
    const hair = 2e-5 * (random() - 0.5);
    const ring: Pair[] = [...rectangle(20 * i, -20, 20 * i + 20, 7 * i), [20 * i + hair, -3 + i]];
    shapes.push({ kind: kind(), rings: [ring] });
  }
  shapes.push({ ...shapes[3]!, kind: kind() }, shapes[4]!);
  shapes.push({ kind: kind(), rings: [rectangle(-30, -30, 30, -29.99995)] });
  return shapes;
}

describe('shares', () => {
  it('add to 1 and stay within 0 … 1 on messy sites', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = seededRandom(seed);
        const ground = planeGround(messySite(seed));
        for (let i = 0; i < 8; i++) {
          const [x, y, radius] = [100 * (random() - 0.5), 100 * (random() - 0.5), 1 + 80 * random()];
          const shares = ground.shares(at(x, y), radius);
          for (const share of Object.values(shares)) {
            expect(share).toBeGreaterThanOrEqual(0);
            expect(share).toBeLessThanOrEqual(1);
          }
          expect(Math.abs(sum(ground, x, y, radius) - 1)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  it('agree with counting 40,000 places on messy sites', () => {
    for (const seed of [11, 12, 13, 14]) {
      const ground = planeGround(messySite(seed));
      const [x, y, radius] = [5, -7, 45];
      const counted = new Map<string, number>();
      const across = 226;
      let all = 0;
      for (let i = 0; i < across; i++) {
        for (let j = 0; j < across; j++) {
          const [dx, dy] = [((2 * i + 1) / across - 1) * radius, ((2 * j + 1) / across - 1) * radius];
          if (dx * dx + dy * dy > radius * radius) continue;
          const kind = ground.coverAt(at(x + dx, y + dy)) ?? 'unmapped';
          counted.set(kind, (counted.get(kind) ?? 0) + 1);
          all++;
        }
      }
      for (const [kind, share] of Object.entries(ground.shares(at(x, y), radius))) {
        expect(Math.abs(share - (counted.get(kind) ?? 0) / all), `${kind}, site ${seed}`).toBeLessThan(3e-3);
      }
    }
  });

  it('are whole where nothing is drawn or one area covers all', () => {
    expect(planeGround([]).shares(at(3, 4), 40).unmapped).toBe(1);
    const ground = planeGround([{ kind: 'meadow', rings: [rectangle(-500, -500, 500, 500)] }]);
    expect(ground.shares(at(3, 4), 40).meadow).toBe(1);
  });

  it('change only by what a new area covers', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = seededRandom(seed);
      const before = messySite(seed);
      const barn = star(random, 10, 5, 3, 9, 7);
      const [old, now] = [
        planeGround(before),
        planeGround([...before, { kind: 'building', rings: [barn], properties: { height: 50 } }]),
      ];
      const alone = planeGround([{ kind: 'building', rings: [barn] }]);
      const [p, radius] = [at(20 * (random() - 0.5), 20 * (random() - 0.5)), 50];
      const [a, b] = [old.shares(p, radius), now.shares(p, radius)];
      const covered = alone.shares(p, radius).building;
      let lost = 0;
      for (const kind of [...coverKinds, 'unmapped'] as const) {
        if (kind === 'building') continue;
        expect(b[kind]).toBeLessThan(a[kind] + 1e-9);
        lost += a[kind] - b[kind];
      }
      expect(b.building - a.building).toBeCloseTo(lost, 9);
      expect(lost).toBeLessThan(covered + 1e-9);
      const far = at(-300, -300);
      expect(now.shares(far, 60)).toEqual(old.shares(far, 60));
    }
  });

  it('do not notice a corner in the middle of a side, or an area drawn as two', () => {
    const whole = rectangle(-30, -20, 40, 25);
    const withCorners: Pair[] = [
      [-30, -20],
      [5, -20],
      [40, -20],
      [40, 25],
      [39, 25],
      [-30, 25],
      [-30, 1],
    ];
    const meadow: Shape = { kind: 'meadow', rings: [rectangle(-60, -60, 60, 60)] };
    const sites: Shape[][] = [
      [meadow, { kind: 'woods', rings: [whole] }],
      [meadow, { kind: 'woods', rings: [withCorners] }],
      [
        meadow,
        { kind: 'woods', rings: [rectangle(-30, -20, 3, 25)] },
        { kind: 'woods', rings: [rectangle(3, -20, 40, 25)] },
      ],
      [meadow, { kind: 'woods', parts: [[rectangle(-30, -20, 3, 25)], [rectangle(3, -20, 40, 25)]] }],
      [meadow, { kind: 'woods', parts: [[rectangle(-30, -20, 13, 25)], [rectangle(3, -20, 40, 25)]] }],
      [meadow, { kind: 'woods', rings: [[...whole].reverse()] }],
    ];
    const grounds = sites.map((site) => planeGround(site));
    for (const [x, y] of [
      [0, 0],
      [3, 0],
      [41, 3],
      [-45, -33],
      [3, 25],
    ] as const) {
      const [first, ...rest] = grounds.map((ground) => ({
        woods: ground.shares(at(x, y), 37).woods,
        edge: ground.nearest(at(x, y), 'woods-edge')!.distance,
        sight: ground.meanSight(at(x, y), 1.5, 150),
      }));
      for (const other of rest) {
        expect(other.woods).toBeCloseTo(first!.woods, 8);
        expect(other.edge).toBeCloseTo(first!.edge, 7);
        if (Math.abs(first!.edge) > 1e-6) expect(other.sight).toBeCloseTo(first!.sight, 6);
      }
    }
  });

  it('refuse a circle without a size', () => {
    const ground = planeGround([]);
    expect(() => ground.shares(at(0, 0), 0)).toThrow('radius');
    expect(() => ground.shares(at(0, 0), Number.NaN)).toThrow('radius');
  });
});
