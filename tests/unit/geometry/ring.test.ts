import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { ringArea, ringContains, segmentsMeet, selfCrossing } from '../../../src/geometry/ring.ts';

const ring = (...pairs: [number, number][]): Point[] => pairs.map(([x, y]) => ({ x, y }));
const square = ring([0, 0], [10, 0], [10, 10], [0, 10]);

describe('area of a ring', () => {
  it('is positive counter-clockwise, the same with the closing point, and keeps far from the origin', () => {
    expect(ringArea(square)).toBe(100);
    expect(ringArea([...square].reverse())).toBe(-100);
    expect(ringArea([...square, square[0]!])).toBe(100);
    expect(ringArea(square.map(({ x, y }) => ({ x: x + 5e5, y: y + 4e6 })))).toBe(100);
    expect(ringArea(ring([0, 0], [1, 1]))).toBe(0);
    expect(ringArea([])).toBe(0);
  });
});

describe('inside a ring', () => {
  it('follows the even–odd rule', () => {
    expect(ringContains(square, { x: 5, y: 5 })).toBe(true);
    expect(ringContains(square, { x: 15, y: 5 })).toBe(false);
    expect(ringContains(square, { x: -1, y: 10 })).toBe(false);
    expect(ringContains([], { x: 0, y: 0 })).toBe(false);
  });
  it('is on one side only of a shared border', () => {
    const east = ring([10, 0], [20, 0], [20, 10], [10, 10]);
    for (let y = 0.5; y < 10; y++) {
      const owners = [square, east].filter((r) => ringContains(r, { x: 10 + (y % 2 ? 1e-9 : -1e-9), y }));
      expect(owners).toHaveLength(1);
    }
  });
});

describe('where a ring crosses itself', () => {
  it('is nowhere on simple rings, closed or not, with repeats, either way round', () => {
    for (const simple of [square, [...square, square[0]!], [...square].reverse(), [square[0]!, ...square]]) {
      expect(selfCrossing(simple)).toBeNull();
    }
    expect(selfCrossing(ring([0, 0], [1, 0]))).toBeNull();
    expect(selfCrossing([])).toBeNull();
    // Points in the middle of sides.
    expect(selfCrossing(ring([0, 0], [5, 0], [10, 0], [10, 10], [0, 10], [0, 5]))).toBeNull();
  });
  it('is at the waist of a bow-tie, with both edges', () => {
    expect(selfCrossing(ring([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({ at: { x: 5, y: 5 }, i: 0, j: 2 });
  });
  it('is where it touches itself, and where it runs back over itself', () => {
    expect(selfCrossing(ring([0, 0], [10, 0], [5, 5], [10, 10], [0, 10], [5, 5]))?.at).toEqual({ x: 5, y: 5 });
    expect(selfCrossing(ring([0, 0], [10, 0], [10, 10], [10, 4], [12, 3], [12, 12], [0, 12]))?.at.x).toBe(10);
    expect(selfCrossing(ring([0, 0], [10, 0], [5, 0]))).not.toBeNull();
  });
  it('names the first of repeated points as where an edge starts', () => {
    const crossing = selfCrossing(ring([0, 0], [0, 0], [10, 10], [10, 0], [10, 0], [0, 10]));
    expect(crossing).toEqual({ at: { x: 5, y: 5 }, i: 0, j: 3 });
  });
  it('is found exactly when comparing every pair of edges finds one', () => {
    const corner = fc.record({ x: fc.integer({ min: 0, max: 12 }), y: fc.integer({ min: 0, max: 12 }) });
    fc.assert(
      fc.property(
        fc.uniqueArray(corner, { minLength: 3, maxLength: 9, selector: ({ x, y }) => 100 * x + y }),
        (points) => {
          const n = points.length;
          let meets = false;
          for (let i = 0; i < n; i++) {
            for (let j = i + 1; j < n; j++) {
              const [a, b, c, d] = [points[i]!, points[(i + 1) % n]!, points[j]!, points[(j + 1) % n]!];
              const adjacent = b === c || d === a;
              // Neighbors always meet in their common corner: they run back when the far end of one lies on the other.
              const [far, near] = b === c ? [d, a] : [c, b];
              if (!adjacent) meets ||= segmentsMeet(a, b, c, d) !== null;
              else meets ||= segmentsMeet(a, b, far, far) !== null || segmentsMeet(c, d, near, near) !== null;
            }
          }
          expect(selfCrossing(points) !== null).toBe(meets);
        },
      ),
      { numRuns: 2000, seed: 3 },
    );
  });
  it('is found in a ring of 20,000 points without waiting', () => {
    const random = seededRandom(1);
    const points = Array.from({ length: 20_000 }, (_, i): Point => {
      const [angle, radius] = [(2 * Math.PI * i) / 20_000, 800 + 30 * random()];
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    });
    expect(selfCrossing(points)).toBeNull();
    const [a, b] = [points[15_000]!, points[15_002]!];
    points[15_000] = b;
    points[15_002] = a;
    const crossing = selfCrossing(points)!;
    expect(crossing.i).toBeGreaterThan(14_990);
    expect(crossing.j).toBeLessThan(15_010);
  });
  it('knows a graze of one part in 10¹⁵ from a crossing', () => {
    const tip = (y: number) => ring([0, 0], [30, 0], [30, 10], [15, y], [0, 10]);
    expect(selfCrossing(tip(1e-15))).toBeNull();
    expect(selfCrossing(tip(0))).not.toBeNull();
    expect(selfCrossing(tip(-1e-15))).not.toBeNull();
  });
});
