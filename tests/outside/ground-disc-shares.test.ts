/**
 * Shares of a true circle against closed forms. SOURCE: circular segment r² acos(d/r) − d √(r² − d²), sector r² θ/2 and what follows from
 * them, circle around the origin, r = 60 m. The figures were computed from the formulas beside them with Python's math library.
 */
import { describe, expect, it } from 'vitest';
import { at, type Pair, planeGround } from '../unit/ground/plane-site.ts';

const far = 5000;
const halfPlane = (d: number): Pair[][] => [
  [
    [d, -far],
    [far, -far],
    [far, far],
    [d, far],
  ],
];
const square = (half: number): Pair[] => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];
const hexagon = (radius: number): Pair[] =>
  [0, 60, 120, 180, 240, 300].map((a) => [
    radius * Math.cos((a * Math.PI) / 180),
    radius * Math.sin((a * Math.PI) / 180),
  ]);

/** name, rings, area in m², formula */
const cases: readonly [string, Pair[][], number, string][] = [
  ['half-plane x>=0', halfPlane(0), 5654.8667764616275, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=10', halfPlane(10), 4460.4457129607845, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=30', halfPlane(30), 2211.0654574957625, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=45', halfPlane(45), 815.9611571596979, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=59.9', halfPlane(59.9), 0.4617647281096424, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=-20', halfPlane(-20), 8009.650500394943, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=60', halfPlane(60), 0, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['half-plane x>=75', halfPlane(75), 0, 'r^2 acos(d/r) - d sqrt(r^2-d^2)'],
  ['square inside', [square(20)], 1600, 'side^2'],
  ['square containing the disc', [square(200)], 11309.733552923255, 'pi r^2'],
  [
    'inscribed square',
    [
      [
        [60, 0],
        [0, 60],
        [-60, 0],
        [0, -60],
      ],
    ],
    7200,
    '2 r^2',
  ],
  ['square half-side 50 (corners cut)', [square(50)], 9509.111307851084, 'pi r^2 - 4 segment(50)'],
  [
    'strip |y|<=15',
    [
      [
        [-5000, -15],
        [5000, -15],
        [5000, 15],
        [-5000, 15],
      ],
    ],
    3562.140342816302,
    'pi r^2 - 2 segment(15)',
  ],
  [
    'corner x>=10,y>=20',
    [
      [
        [10, 20],
        [5000, 20],
        [5000, 5000],
        [10, 5000],
      ],
    ],
    1252.8309945137344,
    'integral of the quarter',
  ],
  [
    'quarter plane',
    [
      [
        [0, 0],
        [5000, 0],
        [5000, 5000],
        [0, 5000],
      ],
    ],
    2827.4333882308138,
    'pi r^2/4',
  ],
  [
    'wedge of 37 deg from the centre',
    [
      [
        [0, 0],
        [5000, 0],
        [3993.177550236464, 3009.0751157602413],
      ],
    ],
    1162.3892818282234,
    'r^2 theta/2',
  ],
  [
    'square with a square hole (half sides 50, 20)',
    [square(50), square(20).reverse()],
    7909.111307851084,
    'pi r^2 - 4 segment(50) - 40^2',
  ],
  ['disc wholly in a hole', [square(300), square(100).reverse()], 0, '0'],
  [
    'disjoint',
    [
      [
        [100, 100],
        [200, 100],
        [200, 200],
        [100, 200],
      ],
    ],
    0,
    '0',
  ],
  ['tangent half-plane', halfPlane(60), 0, '0'],
  ['circumscribed hexagon (all sides tangent)', [hexagon(60 / Math.cos(Math.PI / 6))], 11309.733552923255, 'pi r^2'],
  ['hexagon circumradius 65', [hexagon(65)], 10689.744962709776, 'pi r^2 - 6 segment(65 cos 30)'],
];

/** Placing the shapes on the earth and back costs up to 2e-9 m, times the circle's girth. */
const tolerance = 1e-5;

describe('shares of a true circle against closed forms', () => {
  for (const [name, rings, area, formula] of cases) {
    it(`${name}: ${formula}`, () => {
      const shares = planeGround([{ kind: 'woods', rings }]).shares(at(0, 0), 60);
      expect(Math.abs(shares.woods * Math.PI * 3600 - area)).toBeLessThan(tolerance);
      expect(shares.woods + shares.unmapped).toBeCloseTo(1, 12);
    });
    it(`${name}, wound the other way and with the kinds around it drawn too`, () => {
      const turned = rings.map((ring) => [...ring].reverse());
      const ground = planeGround([
        { kind: 'meadow', rings: [square(9000)] },
        { kind: 'woods', rings: turned },
      ]);
      const shares = ground.shares(at(0, 0), 60);
      expect(Math.abs(shares.woods * Math.PI * 3600 - area)).toBeLessThan(tolerance);
      expect(shares.woods + shares.meadow).toBeCloseTo(1, 12);
      expect(shares.unmapped).toBe(0);
    });
  }
});
