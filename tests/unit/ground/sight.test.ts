import { describe, expect, it } from 'vitest';
import { bearing, distance } from '../../../src/geometry/point.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { Ground } from '../../../src/ground/types.ts';
import { at, type Pair, planeGround, rectangle, type Shape, star } from './plane-site.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

interface Wall {
  readonly a: Pair;
  readonly b: Pair;
  readonly height: number;
}

/** Brute force: tangent of what stands highest toward an azimuth. Walls from both sides, round crowns by their chord. */
function steepest(
  walls: readonly Wall[],
  crowns: readonly { c: Pair; r: number; height: number }[],
  p: Pair,
  eye: number,
  azimuth: number,
): number {
  const [dx, dy] = [Math.sin(radians(azimuth)), Math.cos(radians(azimuth))];
  let most = 0;
  for (const { a, b, height } of walls) {
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const across = dx * ey - dy * ex;
    const t = ((a[0] - p[0]) * ey - (a[1] - p[1]) * ex) / across;
    const share = ((a[0] - p[0]) * dy - (a[1] - p[1]) * dx) / across;
    if (t > 0 && share >= 0 && share <= 1) most = Math.max(most, (height - eye) / t);
  }
  for (const { c, r, height } of crowns) {
    const [cx, cy] = [c[0] - p[0], c[1] - p[1]];
    const [along, off] = [cx * dx + cy * dy, cx * dy - cy * dx];
    if (along > 0 && Math.abs(off) < r) most = Math.max(most, (height - eye) / (along - Math.sqrt(r * r - off * off)));
  }
  return most;
}

const sidesOf = (ring: readonly Pair[], height: number): Wall[] =>
  ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, height }));

/** Separate stars of different heights, and trees, all apart from each other so that brute force needs no overlap rule. */
function scene(seed: number) {
  const random = seededRandom(seed);
  const shapes: Shape[] = [];
  const walls: Wall[] = [];
  const crowns: { c: Pair; r: number; height: number }[] = [];
  for (let i = -3; i <= 3; i++) {
    for (let j = -3; j <= 3; j++) {
      if (random() < 0.4 || (i === 0 && j === 0)) continue;
      const height = Math.round(1 + 24 * random());
      const c: Pair = [60 * i + 8 * random(), 60 * j + 8 * random()];
      if (random() < 0.3) {
        const crown = 2 + 10 * random();
        shapes.push({ kind: 'tree', at: c, properties: { height, crownRadius: crown } });
        crowns.push({ c, r: crown, height });
      } else {
        const ring = star(random, c[0], c[1], 6, 22, 4 + Math.floor(9 * random()));
        shapes.push({ kind: random() < 0.5 ? 'woods' : 'building', rings: [ring], properties: { height } });
        walls.push(...sidesOf(ring, height));
      }
    }
  }
  return { shapes, walls, crowns, ground: planeGround(shapes) };
}

const azimuths = Float64Array.from({ length: 240 }, (_, i) => (i * 137.508) % 360);

describe('the horizon', () => {
  it('is what brute force finds on each azimuth, at several eyes', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { walls, crowns, ground } = scene(seed);
      const random = seededRandom(50 + seed);
      const p: Pair = [20 * (random() - 0.5), 20 * (random() - 0.5)];
      for (const eye of [0, 1.5, 4]) {
        const found = ground.horizon(at(...p), eye, azimuths);
        azimuths.forEach((azimuth, i) => {
          const expected = (Math.atan(steepest(walls, crowns, p, eye, azimuth)) * 180) / Math.PI;
          expect(Math.abs(found[i]! - expected), `seed ${seed}, ${azimuth}°`).toBeLessThan(1e-5);
        });
      }
    }
  });

  it('says the same as sight where one height stands', () => {
    const random = seededRandom(3);
    const rings = Array.from({ length: 12 }, (_, i) =>
      star(random, 50 * Math.cos(i) * (1 + i / 4), 50 * Math.sin(i) * (1 + i / 4), 5, 25, 11),
    );
    const ground = planeGround(
      rings.map((ring): Shape => ({ kind: 'woods', rings: [ring], properties: { height: 11.5 } })),
    );
    const sight = ground.sight(at(0, 0), 1.5, 1e4);
    const horizon = ground.horizon(
      at(0, 0),
      1.5,
      Float64Array.from({ length: 360 }, (_, i) => i),
    );
    horizon.forEach((altitude, i) => {
      if (altitude > 0) expect(sight[i]).toBeCloseTo(10 / Math.tan(radians(altitude)), 6);
      else expect(sight[i]).toBe(1e4);
    });
  });
});

describe('the sun', () => {
  it('is hidden exactly where it stands below the horizon on its own azimuth', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const { ground } = scene(seed);
      const random = seededRandom(seed);
      const azimuth = Float64Array.from({ length: 620 }, (_, i) => 120 + (i * 190) / 620 + 0.1 * random());
      const tangent = azimuth.map(() => Math.tan(radians(-3 + 45 * random())));
      const shaded = ground.shaded(at(3, 4), 1.5, { azimuth, tangent });
      const horizon = ground.horizon(at(3, 4), 1.5, azimuth);
      shaded.forEach((hidden, i) => {
        const above = tangent[i]! > 0 && tangent[i]! > Math.tan(radians(horizon[i]!));
        expect(hidden, `${azimuth[i]}°`).toBe(above ? 0 : 1);
      });
      // The same rays again, and others in between: nothing is left over from before.
      ground.shaded(at(-9, 2), 1.5, { azimuth, tangent });
      expect(ground.shaded(at(3, 4), 1.5, { azimuth, tangent })).toEqual(shaded);
    }
  });

  it('below the horizon is no sun, with nothing drawn too', () => {
    const rays = { azimuth: Float64Array.of(100, 180, 260), tangent: Float64Array.of(-0.1, 0.5, 0) };
    expect(Array.from(planeGround([]).shaded(at(0, 0), 1.5, rays))).toEqual([1, 0, 1]);
  });

  it('behind a wood 1.9 km off and low is hidden', () => {
    const ground = planeGround([
      { kind: 'woods', rings: [rectangle(-50, -2100, 50, -1900)], properties: { height: 41.5 } },
    ]);
    const altitude = Math.atan(40 / 1900);
    const rays = (more: number) => ({
      azimuth: Float64Array.of(180),
      tangent: Float64Array.of(Math.tan(altitude + more)),
    });
    expect(ground.shaded(at(0, 0), 1.5, rays(-1e-6))[0]).toBe(1);
    expect(ground.shaded(at(0, 0), 1.5, rays(1e-6))[0]).toBe(0);
  });
});

describe('free sight', () => {
  it('has a mean that is the mean of its rays', () => {
    const { ground } = scene(4);
    const sight = ground.sight(at(1, 2), 1.5, 150);
    expect(ground.meanSight(at(1, 2), 1.5, 150)).toBeCloseTo(sight.reduce((a, b) => a + b, 0) / 360, 9);
  });

  it('goes over what is not taller than the eye and stops at what is', () => {
    const brush: Shape = { kind: 'brush', rings: [rectangle(10, -900, 20, 900)], properties: { height: 2 } };
    const ground = planeGround([brush]);
    expect(ground.sight(at(0, 0), 2, 150)[90]).toBe(150);
    expect(ground.sight(at(0, 0), 1.99, 150)[90]).toBeCloseTo(10, 6);
    expect(ground.sight(at(15, 0), 2, 150)[90]).toBe(150);
  });

  it('sees tall grass only when it has a height', () => {
    const crop = (properties: Record<string, unknown>): Shape => ({
      kind: 'crop',
      rings: [rectangle(10, -900, 20, 900)],
      properties,
    });
    expect(planeGround([crop({})]).sight(at(0, 0), 1.5, 150)[90]).toBe(150);
    expect(planeGround([crop({ height: 2.8 })]).sight(at(0, 0), 1.5, 150)[90]).toBeCloseTo(10, 6);
  });

  it('is 0 into the wood and free away from it when the post stands exactly on the edge', () => {
    const ground = planeGround([{ kind: 'woods', rings: [rectangle(-50, 0, 50, 80)] }]);
    const onEdge = ground.sight(at(0, -1e-9), 1.5, 150);
    expect(onEdge[0]).toBeLessThan(1e-4);
    expect(onEdge[45]).toBeLessThan(1e-4);
    const off = ground.sight(at(0, -0.01), 1.5, 150);
    expect(off[0]).toBeCloseTo(0.01, 6);
    expect(off[180]).toBe(150);
    expect(off[92]).toBe(150);
  });

  it('ends at the middle of a building standing in a wood only when the wood is lower than the eye', () => {
    const shapes: Shape[] = [
      { kind: 'woods', rings: [rectangle(20, -100, 80, 100)], properties: { height: 5 } },
      { kind: 'building', rings: [rectangle(40, -10, 60, 10)], properties: { height: 12 } },
    ];
    const ground = planeGround(shapes);
    expect(ground.sight(at(0, 0), 1.5, 150)[90]).toBeCloseTo(20, 6);
    expect(ground.sight(at(0, 0), 6, 150)[90]).toBeCloseTo(40, 6);
    const tangent = Math.tan(radians(ground.horizon(at(0, 0), 1.5, Float64Array.of(90))[0]!));
    expect(tangent).toBeCloseTo(Math.max(3.5 / 20, 10.5 / 40), 6);
  });

  it('reaches as far as it is asked to, and the horizon as far as anything is drawn', () => {
    const ground = planeGround([{ kind: 'woods', rings: [rectangle(3000, -900, 3100, 900)] }]);
    expect(ground.sight(at(0, 0), 1.5, 5000)[90]).toBeCloseTo(3000, 3);
    const altitude = (Math.atan(16.5 / 3000) * 180) / Math.PI;
    expect(ground.horizon(at(0, 0), 1.5, Float64Array.of(90, 180))[0]).toBeCloseTo(altitude, 6);
    expect(ground.horizon(at(0, 0), 1.5, Float64Array.of(90, 180))[1]).toBe(0);
  });

  it('refuses a reach that is none', () => {
    expect(() => planeGround([]).sight(at(0, 0), 1.5, 0)).toThrow('reach');
  });
});

describe('turning, mirroring and shifting a site', () => {
  const { shapes } = scene(9);
  const meadow: Shape = { kind: 'meadow', rings: [rectangle(-150, -120, 140, 160)] };
  const hedge: Shape = {
    kind: 'hedge',
    line: [
      [-90, -30],
      [-20, -45],
      [35, -28],
    ],
    properties: { height: 3 },
  };
  const all = [meadow, hedge, ...shapes];
  const moved = (move: (pair: Pair) => Pair): Ground =>
    planeGround(
      all.map((shape) => ({
        ...shape,
        rings: shape.rings?.map((ring) => ring.map(move)),
        line: shape.line?.map(move),
        at: shape.at && move(shape.at),
      })),
    );
  const before = planeGround(all);
  const turned = (degrees: number) => {
    const [sin, cos] = [Math.sin(radians(degrees)), Math.cos(radians(degrees))];
    // Clockwise, as bearings run.
    return ([x, y]: Pair): Pair => [x * cos + y * sin, y * cos - x * sin];
  };
  const cases: readonly [string, (pair: Pair) => Pair, (azimuth: number) => number][] = [
    ['turned by 90°', turned(90), (azimuth) => (azimuth + 90) % 360],
    ['turned by 33°', turned(33), (azimuth) => (azimuth + 33) % 360],
    ['mirrored east to west', ([x, y]) => [-x, y], (azimuth) => (360 - azimuth) % 360],
    ['shifted by 700 m', ([x, y]) => [x + 500, y - 490], (azimuth) => azimuth],
  ];
  it.each(cases)('%s measures the same', (_, move, compass) => {
    const after = moved(move);
    for (const pair of [
      [0, 0],
      [12, -9],
      [-31, 44],
      [70, 20],
    ] as Pair[]) {
      const [p, q] = [at(...pair), at(...move(pair))];
      const [a, b] = [before.shares(p, 40), after.shares(q, 40)];
      for (const kind of Object.keys(a) as (keyof typeof a)[]) expect(b[kind]).toBeCloseTo(a[kind], 8);
      for (const target of ['woods-edge', 'brush', 'building', 'jump', 'perch', 'tall'] as const) {
        const [f, g] = [before.nearest(p, target), after.nearest(q, target)];
        expect(g === null).toBe(f === null);
        if (!f || !g) continue;
        expect(g.distance).toBeCloseTo(f.distance, 6);
        expect(g.feature).toBe(f.feature);
        const way = (found: typeof f, from: typeof p) => bearing(from, found.at);
        if (Math.abs(f.distance) > 0.01 && distance(f.at, p) > 0.01) {
          const apart = Math.abs(way(g, q) - compass(way(f, p))) % 360;
          expect(Math.min(apart, 360 - apart)).toBeLessThan(1e-3);
        }
      }
      const [sight, again] = [before.sight(p, 1.5, 150), after.sight(q, 1.5, 150)];
      let differ = 0;
      sight.forEach((free, azimuth) => {
        if (Math.abs(again[compass(azimuth)]! - free) > 1e-4) differ++;
      });
      // A ray that only just grazes a corner may fall on the other side of it.
      expect(differ).toBeLessThanOrEqual(1);
    }
  });
});

describe('the level of an eye', () => {
  it('is the lowest that sees the same: another eye of the level sees it too', () => {
    const { ground } = scene(11);
    for (const eye of [0.5, 1.9, 8, 40]) {
      const level = ground.eyeLevel(eye);
      expect(level).toBeLessThanOrEqual(eye);
      for (const p of [at(0, 0), at(31, -17), at(-64, 58)])
        expect(ground.sight(p, level, 150)).toEqual(ground.sight(p, eye, 150));
    }
  });
});

describe('being under something', () => {
  it('is where sight is zero all round: in areas, hedges and crowns taller than the eye', () => {
    const random = seededRandom(17);
    const { shapes } = scene(12);
    const hedge: Shape = {
      kind: 'hedge',
      line: [
        [-90, -30],
        [-20, -45],
        [35, -28],
      ],
      properties: { height: 3 },
    };
    const ground = planeGround([...shapes, hedge]);
    const found = { under: 0, free: 0 };
    for (let k = 0; k < 400; k++) {
      // Half of the places close along the hedge.
      const p = k % 2 ? at(400 * random() - 200, 400 * random() - 200) : at(-90 + 70 * random(), -40 + 6 * random());
      for (const eye of [1.5, 2.9, 3.1, 9]) {
        const zero = ground.sight(p, eye, 150).every((free) => free === 0);
        expect(ground.under(p, eye)).toBe(zero);
        found[zero ? 'under' : 'free']++;
      }
    }
    expect(Math.min(found.under, found.free)).toBeGreaterThan(50);
  });
});
