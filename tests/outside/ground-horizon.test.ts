/** Sight, horizon and sun against plane trigonometry. SOURCE: the formula beside each figure; post at the origin, azimuth from north. */
import { describe, expect, it } from 'vitest';
import type { Ground } from '../../src/ground/types.ts';
import { at, type Pair, planeGround, rectangle } from '../unit/ground/plane-site.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;
const origin = at(0, 0);

/** Reach given up, and distance on each azimuth read back from the horizon of a wall of known height. */
const altitudes = (ground: Ground, eye: number, ...azimuths: number[]): number[] =>
  Array.from(ground.horizon(origin, eye, Float64Array.from(azimuths)));

const near = (measured: readonly number[], expected: readonly number[], tolerance: number): void => {
  measured.forEach((value, i) => {
    expect(Math.abs(value - expected[i]!), `${i}: ${value} for ${expected[i]}`).toBeLessThan(tolerance);
  });
};

describe('a long straight wall 40 m east', () => {
  const ground = planeGround([{ kind: 'woods', rings: [rectangle(40, -10000, 60, 10000)] }]);

  it('is 40 / cos(azimuth − 90°) away', () => {
    const sight = ground.sight(origin, 1.5, 300);
    near(
      [sight[90]!, sight[60]!, sight[120]!, sight[10]!],
      [40, 46.18802153517006, 46.18802153517006, 230.35081932574525],
      2e-6,
    );
    expect([sight[0], sight[270], sight[180]]).toEqual([300, 300, 300]);
  });

  it('stands atan((18 − 1.5) / distance) high', () => {
    near(altitudes(ground, 1.5, 90, 60), [22.416147479343643, 19.65853044314181], 1e-6);
  });

  it('hides the sun below that and not above', () => {
    const azimuth = Float64Array.from([60, 89.9, 90, 200]);
    const tangent = Float64Array.from([19.6585, 22.4163, 22.4161, 5].map((altitude) => Math.tan(radians(altitude))));
    expect(Array.from(ground.shaded(origin, 1.5, { azimuth, tangent }))).toEqual([1, 0, 1, 0]);
  });
});

describe('a building 20 m × 20 m centred 100 m south, 6 m high', () => {
  const ground = planeGround([{ kind: 'building', rings: [rectangle(-10, -110, 10, -90)] }]);
  const corner = degrees(Math.atan2(10, 90));

  it('is 90 m away, 90.5539 m at its corner, and 12.680° wide', () => {
    const sight = ground.sight(origin, 1.5, 300);
    near([sight[180]!], [90], 1e-6);
    expect(sight[190]).toBe(300);
    expect(sight[0]).toBe(300);
    expect(2 * corner).toBeCloseTo(12.680383491819818, 10);
    const edge = [180 + corner - 1e-7, 180 + corner + 1e-7, 180 - corner + 1e-7, 180 - corner - 1e-7];
    const [inWest, outWest, inEast, outEast] = altitudes(ground, 1.5, ...edge);
    near([inWest!, inEast!], Array(2).fill(degrees(Math.atan(4.5 / 90.55385138137417))), 1e-6);
    expect([outWest, outEast]).toEqual([0, 0]);
  });

  it('stands 2.8624052° high', () => {
    near(altitudes(ground, 1.5, 180), [2.8624052261117474], 1e-7);
  });
});

describe('a clearing: a 360-sided hole of 80 m in a large wood', () => {
  const hole = Array.from({ length: 360 }, (_, i): Pair => {
    const angle = radians(i + 0.5);
    return [80 * Math.sin(angle), 80 * Math.cos(angle)];
  });
  const ground = planeGround([{ kind: 'woods', rings: [rectangle(-500, -500, 500, 500), hole] }]);

  it('is 80 cos 0.5° wide at the middle of every side', () => {
    near(Array.from(ground.sight(origin, 1.5, 300)), Array(360).fill(79.9969538451337), 1e-6);
  });

  it('lets no ray slip through its 360 corners', () => {
    const corners = Array.from({ length: 360 }, (_, i) => i + 0.5);
    near(altitudes(ground, 1.5, ...corners), Array(360).fill(degrees(Math.atan(16.5 / 80))), 1e-6);
    near(altitudes(ground, 1.5, 10), [11.654272206378035], 1e-6);
  });
});

describe('a post inside something taller than the eye', () => {
  const ground = planeGround([{ kind: 'woods', rings: [rectangle(-50, -50, 50, 50)] }]);
  const rays = { azimuth: Float64Array.of(180, 200), tangent: Float64Array.of(5, 0.5) };

  it('sees nothing and has no sun', () => {
    expect(ground.meanSight(origin, 1.5, 150)).toBe(0);
    expect(Array.from(ground.sight(origin, 1.5, 150))).toEqual(Array(360).fill(0));
    expect(Array.from(ground.shaded(origin, 1.5, rays))).toEqual([1, 1]);
    expect(altitudes(ground, 1.5, 0, 123)).toEqual([90, 90]);
  });

  it('but looks over what is lower than the eye', () => {
    expect(ground.meanSight(origin, 18.5, 150)).toBe(150);
    expect(altitudes(ground, 18.5, 0, 90)).toEqual([0, 0]);
  });
});

describe('a tree: crown of 4 m radius, 12 m high, 20 m north-east', () => {
  const [x, y] = [20 * Math.sin(radians(45)), 20 * Math.cos(radians(45))];
  const ground = planeGround([{ kind: 'tree', at: [x, y], properties: { height: 12, crownRadius: 4 } }]);
  const half = degrees(Math.asin(4 / 20));

  it('is met at 20 cos α − √(16 − 400 sin² α)', () => {
    for (const off of [0, 3, -7.5, 11]) {
      const entry = 20 * Math.cos(radians(off)) - Math.sqrt(16 - 400 * Math.sin(radians(off)) ** 2);
      near(altitudes(ground, 2, 45 + off), [degrees(Math.atan(10 / entry))], 1e-6);
    }
    near([ground.sight(origin, 1.5, 150)[45]!], [16], 1e-6);
  });

  it('is 2 asin(4 / 20) wide', () => {
    const grazing = degrees(Math.atan(10 / Math.sqrt(400 - 16)));
    const [inside, outside] = altitudes(ground, 2, 45 + half - 1e-7, 45 + half + 1e-7);
    near([inside!], [grazing], 1e-3);
    expect(outside).toBe(0);
  });

  it('shades everything under it', () => {
    const under = at(x + 3.9, y);
    expect(ground.meanSight(under, 1.5, 150)).toBe(0);
    expect(Array.from(ground.horizon(under, 1.5, Float64Array.of(0, 200)))).toEqual([90, 90]);
    expect(ground.meanSight(at(x + 4.1, y), 1.5, 150)).toBeGreaterThan(0);
  });
});

describe('a hedge 3 m high and 4 m wide, 30 m north, running east and west', () => {
  const ground = planeGround([
    {
      kind: 'hedge',
      line: [
        [-500, 30],
        [500, 30],
      ],
      properties: { height: 3, width: 4 },
    },
  ]);

  it('is met at its side, 28 / cos(azimuth)', () => {
    const sight = ground.sight(origin, 1.5, 150);
    near([sight[0]!, sight[60]!, sight[300]!], [28, 56, 56], 1e-6);
    expect(sight[180]).toBe(150);
    near(altitudes(ground, 1.5, 0, 60), [degrees(Math.atan(1.5 / 28)), degrees(Math.atan(1.5 / 56))], 1e-6);
  });

  it('hides everything from within', () => {
    expect(ground.meanSight(at(0, 28.1), 1.5, 150)).toBe(0);
    expect(ground.meanSight(at(0, 27.9), 1.5, 150)).toBeGreaterThan(50);
  });
});
