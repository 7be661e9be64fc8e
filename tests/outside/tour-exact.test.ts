/** Tours against published optima, brute force and the subtour program. */
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/geometry/random.ts';
import { linearSolver } from '../../src/placement/solver.ts';
import { heldKarp } from '../../src/route/held-karp.ts';
import type { CostMatrix } from '../../src/route/matrix.ts';
import { matrixOf, roundCost } from '../../src/route/matrix.ts';
import { bestTour, kicksFor, pathCost } from '../../src/route/tour.ts';
import { boundTour } from '../../src/route/tour-bound.ts';
import { searchTour } from '../../src/route/tour-search.ts';

// SOURCE: TSPLIB, G. Reinelt, ORSA Journal on Computing 3(4), 1991, 376–384: instances burma14 (optimum 3323) and ulysses16 (optimum 6859).
const burma14 = [
  [16.47, 96.1],
  [16.47, 94.44],
  [20.09, 92.54],
  [22.39, 93.37],
  [25.23, 97.24],
  [22.0, 96.05],
  [20.47, 97.02],
  [17.2, 96.29],
  [16.3, 97.38],
  [14.05, 98.12],
  [16.53, 97.38],
  [21.52, 95.59],
  [19.41, 97.13],
  [20.09, 94.55],
];
const ulysses16 = [
  [38.24, 20.42],
  [39.57, 26.15],
  [40.56, 25.32],
  [36.26, 23.12],
  [33.48, 10.54],
  [37.56, 12.19],
  [38.42, 13.11],
  [37.52, 20.44],
  [41.23, 9.1],
  [41.17, 13.05],
  [36.08, -5.21],
  [38.47, 15.13],
  [38.15, 15.35],
  [37.51, 15.17],
  [35.49, 14.32],
  [39.36, 19.56],
];

/** The collection's GEO distance: degrees.minutes, radius 6378.388 km, rounded down after adding 1 (Reinelt 1991, with its own π). */
function geoMatrix(places: number[][]): CostMatrix {
  const radians = (value: number) => {
    const degrees = Math.trunc(value);
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the collection's own figure; its optima hold for this one.
    return (3.141592 * (degrees + (5 * (value - degrees)) / 3)) / 180;
  };
  return matrixOf(places.length, (a, b) => {
    const [latA, lonA, latB, lonB] = [...places[a], ...places[b]].map(radians);
    const [q1, q2, q3] = [Math.cos(lonA - lonB), Math.cos(latA - latB), Math.cos(latA + latB)];
    return Math.trunc(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
  });
}

function randomMatrix(size: number, seed: number): CostMatrix {
  const random = seededRandom(seed);
  const at = Array.from({ length: size }, () => [random() * 2000, random() * 2000]);
  return matrixOf(size, (a, b) => Math.hypot(at[a][0] - at[b][0], at[a][1] - at[b][1]));
}

/** Every order of the places after the first. */
function bruteForce(matrix: CostMatrix, cost: (order: number[]) => number): number {
  let best = Infinity;
  const visit = (order: number[], left: number[]) => {
    if (left.length === 0) best = Math.min(best, cost(order));
    for (const k of left)
      visit(
        [...order, k],
        left.filter((other) => other !== k),
      );
  };
  visit(
    [0],
    Array.from({ length: matrix.size - 1 }, (_, k) => k + 1),
  );
  return best;
}

describe('published optima', () => {
  it.each([
    ['burma14', burma14, 3323],
    ['ulysses16', ulysses16, 6859],
  ] as const)('%s', async (_, places, optimum) => {
    const matrix = geoMatrix(places as unknown as number[][]);
    const found = searchTour(matrix, 1, kicksFor(matrix.size));
    expect(roundCost(matrix, found)).toBe(optimum);
    const proven = boundTour(matrix, found, { solver: linearSolver(await loadHighs()) });
    expect(proven.bound).toBeGreaterThan(optimum - 0.01);
    expect(proven.bound).toBeLessThanOrEqual(optimum);
  });
});

describe('Held–Karp against brute force', () => {
  it.each([4, 5, 6, 7, 8, 9])('%s places', (size) => {
    for (let seed = 0; seed < 4; seed++) {
      const matrix = randomMatrix(size, 100 * size + seed);
      expect(roundCost(matrix, heldKarp(matrix))).toBeCloseTo(
        bruteForce(matrix, (order) => roundCost(matrix, order)),
        8,
      );
    }
  });

  it('open walks too: to a set end, and with both ends free', () => {
    for (let seed = 0; seed < 4; seed++) {
      const matrix = randomMatrix(7, seed);
      const toEnd = bruteForce(matrix, (order) => (order[order.length - 1] === 6 ? pathCost(matrix, order) : Infinity));
      expect(bestTour(matrix, 'to-end', 1).cost).toBeCloseTo(toEnd, 8);
      const rotated = (order: number[]) =>
        Math.min(...order.map((_, k) => pathCost(matrix, [...order.slice(k), ...order.slice(0, k)])));
      expect(bestTour(matrix, 'free', 1).cost).toBeCloseTo(bruteForce(matrix, rotated), 8);
    }
  });
});

describe('the search against the proof', () => {
  it('finds the shortest round of 40 boxes and a trailhead in 20 parks of 20, proven by the subtour program', async () => {
    const solver = linearSolver(await loadHighs());
    for (let seed = 1; seed <= 20; seed++) {
      const matrix = randomMatrix(41, seed);
      const found = searchTour(matrix, 1, kicksFor(41));
      const cost = roundCost(matrix, found);
      const proven = boundTour(matrix, found, { solver, seconds: 20 });
      expect(proven.bound, `park ${seed} not proven`).toBeGreaterThan(cost * (1 - 1e-7));
      expect(proven.cost).toBeCloseTo(cost, 6);
      const tree = boundTour(matrix, found);
      expect(tree.bound, 'the bound without a solver must not pass the optimum').toBeLessThanOrEqual(cost + 1e-9);
      expect(tree.bound).toBeGreaterThan(cost * 0.97);
    }
  }, 60_000);

  it('agrees with Held–Karp where both can run', () => {
    for (let seed = 0; seed < 30; seed++) {
      const matrix = randomMatrix(8 + (seed % 5), 500 + seed);
      expect(roundCost(matrix, searchTour(matrix, 3, 500))).toBeCloseTo(roundCost(matrix, heldKarp(matrix)), 8);
    }
  });
});
