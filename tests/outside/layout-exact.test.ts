/** Layouts against proven optima, textbook independence numbers, packing bounds, and the plain model solved without our rows. */
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../../src/geometry/linear-model.ts';
import { onesRows, stackRows } from '../../src/geometry/linear-model.ts';
import { seededRandom } from '../../src/geometry/random.ts';
import { exactLayout } from '../../src/placement/exact.ts';
import { fieldOf } from '../../src/placement/field.ts';
import { greedyLayout } from '../../src/placement/greedy.ts';
import type { LayoutProblem } from '../../src/placement/layout.ts';
import { searchLayout } from '../../src/placement/local-search.ts';
import { linearSolver } from '../../src/placement/solver.ts';
import { hundredPosts } from './layout-hundred.ts';
import { fourHundredPosts, thousandPosts } from './layout-points.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = linearSolver(await loadHighs());
});

function problemOf(
  points: readonly (readonly [number, number, number])[],
  most: number,
  spacing: number,
): LayoutProblem {
  return {
    units: points.map(([x, y, weight], post) => ({ post, at: { x, y }, bird: 0, weight })),
    wanted: [most],
    spacing: [[spacing]],
  };
}

function best(problem: LayoutProblem) {
  const field = fieldOf(problem);
  const start = searchLayout(field, { seed: 1, moves: 60_000 });
  return { start, answer: exactLayout(field, start, solver, { seconds: 60 }) };
}

describe('proven optima', () => {
  it('forty of a hundred posts, 91 m apart: 28 fit and add to 1274.918', () => {
    const problem = problemOf(hundredPosts, 40, 91);
    const { answer } = best(problem);
    expect(answer.end).toBe('proven');
    expect(answer.layout.value).toBeCloseTo(1274.918, 6);
    expect(answer.layout.chosen).toHaveLength(28);
    expect(greedyLayout(fieldOf(problem)).value).toBeCloseTo(1153.268, 6);
  });

  it.each([
    ['twenty-five of 400', fourHundredPosts, 400, 25, 1702.988, 1641.086],
    ['forty of 1,024', thousandPosts, 1024, 40, 3126.918, 3086.166],
  ] as const)('%s posts, 91 m apart', (_, points, count, most, optimum, greedy) => {
    expect(points).toHaveLength(count);
    const problem = problemOf(points, most, 91);
    const { answer } = best(problem);
    expect(answer.end).toBe('proven');
    expect(answer.layout.value).toBeCloseTo(optimum, 6);
    expect(answer.layout.chosen).toHaveLength(most);
    expect(greedyLayout(fieldOf(problem)).value).toBeCloseTo(greedy, 6);
  });
});

describe('textbook independence numbers', () => {
  /** King's moves on an n × n board: a square and its eight neighbours conflict. Independence number ⌈n/2⌉² (Watkins, Across the Board, 2004). */
  it.each([
    [5, 9],
    [8, 16],
    [11, 36],
  ])('kings on a board of %s: %s', (n, alpha) => {
    const points = Array.from({ length: n * n }, (_, k): [number, number, number] => [
      10 * (k % n),
      10 * Math.floor(k / n),
      1,
    ]);
    const { answer } = best(problemOf(points, n * n, 15));
    expect(answer.end).toBe('proven');
    expect(answer.layout.value).toBe(alpha);
  });

  /** A cycle of n holds ⌊n/2⌋ and a path ⌈n/2⌉ (any graph theory text). */
  it.each([
    [5, 2],
    [7, 3],
    [12, 6],
    [31, 15],
  ])('a ring of %s: %s', (n, alpha) => {
    const radius = 10 / (2 * Math.sin(Math.PI / n));
    const points = Array.from({ length: n }, (_, k): [number, number, number] => {
      const turn = (2 * Math.PI * k) / n;
      return [radius * Math.cos(turn), radius * Math.sin(turn), 1];
    });
    expect(best(problemOf(points, n, 11)).answer).toMatchObject({ end: 'proven', layout: { value: alpha } });
  });

  it.each([
    [6, 3],
    [17, 9],
  ])('a row of %s: %s', (n, alpha) => {
    const points = Array.from({ length: n }, (_, k): [number, number, number] => [10 * k, 0, 1]);
    expect(best(problemOf(points, n, 11)).answer).toMatchObject({ end: 'proven', layout: { value: alpha } });
  });
});

describe('packing', () => {
  const yards100 = 91.44;

  // SOURCE: handbook §3: a hexagonal grid of 100 yd needs 1.79 acres a box (√3/2 · 91.44² m² over 4046.8564224 m² an acre).
  it('a hexagonal grid of exactly 100 yards keeps every post, at 1.79 acres each', () => {
    const points: [number, number, number][] = [];
    for (let row = 0; row < 6; row++) {
      for (let column = 0; column < 6; column++) {
        points.push([(column + (row % 2) / 2) * yards100, row * yards100 * Math.sqrt(0.75), 50]);
      }
    }
    expect(best(problemOf(points, 36, yards100)).answer.layout.chosen).toHaveLength(36);
    expect((yards100 ** 2 * Math.sqrt(0.75)) / 4046.8564224).toBeCloseTo(1.79, 2);
  });

  // SOURCE: N. Oler, "An inequality in the geometry of numbers", Acta Mathematica 105 (1961): points at least d apart in a convex
  // region of area A and perimeter P number at most 2A/(√3·d²) + P/(2d) + 1.
  it.each([
    [230, 200, 20],
    [300, 180, 20],
  ])('%s × %s m holds no more than Oler allows, and the count is proven', (width, height, step) => {
    const points: [number, number, number][] = [];
    for (let x = 0; x <= width; x += step) for (let y = 0; y <= height; y += step) points.push([x, y, 1]);
    const { answer } = best(problemOf(points, 1000, yards100));
    const oler = (2 * width * height) / (Math.sqrt(3) * yards100 ** 2) + (width + height) / yards100 + 1;
    expect(answer.end).toBe('proven');
    expect(answer.layout.chosen.length).toBeLessThanOrEqual(Math.floor(oler));
    // Far from empty: square rows fit on the drawn grid of steps of 20 m.
    expect(answer.layout.chosen.length).toBeGreaterThanOrEqual(
      (1 + Math.floor(width / 100)) * (1 + Math.floor(height / 100)),
    );
  });
});

describe('the plain model, one row a conflict and none of our cuts, agrees', () => {
  it.each([1, 2, 3, 4, 5, 6])('two birds, pairs and shared posts, seed %s', (seed) => {
    const random = seededRandom(seed);
    const units = Array.from({ length: 70 }, (_, k) => {
      const at = { x: 300 * random(), y: 300 * random() };
      const bird = k % 2;
      const pair = k % 3 === 0;
      return {
        post: k % 2 === 1 && k % 10 === 1 ? k - 1 : k,
        at,
        bird,
        weight: 1 + 99 * random(),
        ...(pair ? { partner: { post: 1000 + k, at: { x: at.x + 6, y: at.y } } } : {}),
      };
    });
    const problem: LayoutProblem = {
      units,
      wanted: [6, 4],
      spacing: [
        [70, 25],
        [25, 40],
      ],
    };
    const { start, answer } = best(problem);
    expect(answer.end).toBe('proven');
    expect(answer.layout.value).toBeCloseTo(plainOptimum(problem), 6);
    expect(start.value).toBeGreaterThan(0.97 * answer.layout.value);
  });

  function plainOptimum({ units, wanted, spacing }: LayoutProblem): number {
    const conflicts: number[][] = [];
    const posts = (u: LayoutProblem['units'][number]) => (u.partner ? [u, u.partner] : [u]);
    units.forEach((a, i) => {
      units.slice(i + 1).forEach((b, k) => {
        const needed = Math.max(1.524, spacing[a.bird][b.bird]);
        const clash = posts(a).some((p) =>
          posts(b).some((q) => p.post === q.post || Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) < needed),
        );
        if (clash) conflicts.push([i, i + 1 + k]);
      });
    });
    const byBird = wanted.map((most, bird) =>
      onesRows([units.flatMap((u, k) => (u.bird === bird ? [k] : []))], 0, most),
    );
    const model = {
      maximize: true,
      cost: Float64Array.from(units, (u) => u.weight),
      columnLower: new Float64Array(units.length),
      columnUpper: new Float64Array(units.length).fill(1),
      rows: stackRows(onesRows(conflicts, -Infinity, 1), ...byBird),
    };
    const answer = solver.withModel(model, (open) => open.solve({ whole: true }));
    expect(answer.end).toBe('optimal');
    return answer.value!;
  }
});
