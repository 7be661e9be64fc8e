/** Exact sets, rows stronger than cliques, and patches: each against an independent way to the same answer. */
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../../../src/geometry/linear-model.ts';
import { onesRows, stackRows } from '../../../src/geometry/linear-model.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { conflictGraph } from '../../../src/placement/conflict-graph.ts';
import { exactLayout } from '../../../src/placement/exact.ts';
import { type Field, fieldOf, layoutIn } from '../../../src/placement/field.ts';
import { greedyLayout } from '../../../src/placement/greedy.ts';
import { HeaviestSet } from '../../../src/placement/heaviest-set.ts';
import type { LayoutProblem } from '../../../src/placement/layout.ts';
import { localCuts, RowMaker } from '../../../src/placement/local-cuts.ts';
import { searchLayout } from '../../../src/placement/local-search.ts';
import { mergeLayouts, patchLayout } from '../../../src/placement/patches.ts';
import { Rivals } from '../../../src/placement/rivals.ts';
import { linearSolver } from '../../../src/placement/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = linearSolver(await loadHighs());
});

/** Posts of two birds in a square, a third of them pairs. */
function crowded(count: number, side: number, seed: number, wanted: number[]): LayoutProblem {
  const random = seededRandom(seed);
  const units = Array.from({ length: count }, (_, post) => {
    const at = { x: side * random(), y: side * random() };
    const partner = random() < 0.3 ? { post: count + post, at: { x: at.x + 6, y: at.y } } : undefined;
    return { post, at, bird: post % wanted.length, weight: 1 + 99 * random(), partner };
  });
  const spacing = wanted.map((_, a) => wanted.map((__, b) => (a === b ? 91 : 40)));
  return { units, wanted, spacing };
}

/** Conflicts told anew from the rules, pair by pair. */
function clashes({ units, spacing }: LayoutProblem): [number, number][] {
  const posts = (u: LayoutProblem['units'][number]) => (u.partner ? [u, u.partner] : [u]);
  return units.flatMap((a, i) =>
    units.flatMap((b, k): [number, number][] => {
      const near = posts(a).some((p) =>
        posts(b).some((q) => Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) < spacing[a.bird][b.bird]),
      );
      return k > i && near ? [[i, k]] : [];
    }),
  );
}

/** What units without conflicts add to at most under `cost`, by the plain model. */
function most(problem: LayoutProblem, cost: Float64Array): number {
  const model = {
    maximize: true,
    cost,
    columnLower: new Float64Array(cost.length),
    columnUpper: new Float64Array(cost.length).fill(1),
    rows: onesRows(clashes(problem), -Infinity, 1),
  };
  return solver.withModel(model, (open) => open.solve({ whole: true })).value!;
}

/** The linear relaxation with one row a conflict: full of halves. */
function relaxation(problem: LayoutProblem) {
  const count = problem.units.length;
  const model = {
    maximize: true,
    cost: Float64Array.from(problem.units, (u) => u.weight),
    columnLower: new Float64Array(count),
    columnUpper: new Float64Array(count).fill(1),
    rows: stackRows(onesRows(clashes(problem), -Infinity, 1)),
  };
  return solver.withModel(model, (open) => open.solve());
}

const keepsRules = (problem: LayoutProblem, chosen: readonly number[]) =>
  clashes(problem).every(([a, b]) => !(chosen.includes(a) && chosen.includes(b))) &&
  problem.wanted.every((sites, b) => chosen.filter((u) => problem.units[u].bird === b).length <= sites);

describe('the heaviest set', () => {
  it.each([1, 2, 3, 4, 5])('weighs what the plain model says, seed %s', (seed) => {
    const problem = crowded(90, 330, seed, [99, 99]);
    const field = fieldOf(problem);
    const graph = conflictGraph(field, Int32Array.from(problem.units.keys()));
    const tool = new HeaviestSet();
    const weight = field.weight;
    const all = [...problem.units.keys()];
    const top = tool.solve(graph.bits, graph.words, all, weight, 0, Infinity);
    expect(tool.complete).toBe(true);
    expect(top).toBeCloseTo(most(problem, weight), 6);
    expect(keepsRules(problem, tool.found)).toBe(true);
    expect(tool.found.reduce((sum, u) => sum + weight[u], 0)).toBeCloseTo(top, 9);
    expect(tool.solve(graph.bits, graph.words, all, weight, top, Infinity)).toBe(top);
    expect(tool.found).toEqual([]);
  });

  it('says when it gave up, and finds nothing among nothing', () => {
    const problem = crowded(90, 330, 1, [99]);
    const field = fieldOf(problem);
    const graph = conflictGraph(field, Int32Array.from(problem.units.keys()));
    const tool = new HeaviestSet();
    tool.solve(graph.bits, graph.words, [...problem.units.keys()], field.weight, 0, 3);
    expect(tool.complete).toBe(false);
    expect(tool.solve(graph.bits, graph.words, [], field.weight, 0, 3)).toBe(0);
    expect(tool.complete).toBe(true);
  });
});

describe('rows stronger than cliques', () => {
  it.each([
    [1, 15],
    [2, 15],
    [3, 30],
    [4, 30],
  ])('cut the relaxation off and no layout, seed %s, windows of %s', (seed, size) => {
    const problem = crowded(110, 330, seed, [99, 99]);
    const field = fieldOf(problem);
    const graph = conflictGraph(field, Int32Array.from(problem.units.keys()));
    const { x, reducedCost } = relaxation(problem);
    const rows = localCuts(field, graph, x!, reducedCost!, new RowMaker(), size, () => false);
    expect(rows.length).toBeGreaterThan(0);
    for (const { units, values, limit } of rows) {
      expect(units.reduce((sum, u, i) => sum + values[i] * x![u], 0)).toBeGreaterThan(limit + 0.002);
      const cost = new Float64Array(field.count);
      units.forEach((u, i) => {
        cost[u] = values[i];
      });
      expect(most(problem, cost)).toBeLessThanOrEqual(limit);
      expect(most(problem, cost)).toBeGreaterThan(limit - 1e-5);
    }
  });

  it('end when told to', () => {
    const problem = crowded(110, 330, 1, [99]);
    const field = fieldOf(problem);
    const graph = conflictGraph(field, Int32Array.from(problem.units.keys()));
    const { x, reducedCost } = relaxation(problem);
    expect(localCuts(field, graph, x!, reducedCost!, new RowMaker(), 15, () => true)).toEqual([]);
  });

  it('prove a site where spacing binds that cliques alone leave open', () => {
    const problem = crowded(320, 420, 9, [40]);
    const field = fieldOf(problem);
    const start = searchLayout(field, { seed: 1, moves: 200_000, patch: 7 });
    const answer = exactLayout(field, start, solver, { seconds: 60 });
    expect(answer.end).toBe('proven');
    expect(keepsRules(problem, answer.layout.chosen)).toBe(true);
    expect(answer.layout.value).toBeCloseTo(most(problem, field.weight), 6);
  });
});

describe('patches and merging', () => {
  const value = (field: Field, chosen: readonly number[]) => layoutIn(field, chosen).value;

  it.each([1, 2, 3, 4])('never make a layout worse nor break a rule, seed %s', (seed) => {
    const problem = crowded(300, 450, seed, seed % 2 ? [40] : [12, 9]);
    const field = fieldOf(problem);
    const greedy = greedyLayout(field);
    const patched = patchLayout(field, new Rivals(field), greedy, { seed, sites: 7 });
    expect(patched.value).toBeGreaterThanOrEqual(greedy.value);
    expect(patched.value).toBeCloseTo(value(field, patched.chosen), 9);
    expect(keepsRules(problem, patched.chosen)).toBe(true);
    expect(patchLayout(field, new Rivals(field), greedy, { seed, sites: 7 })).toEqual(patched);
    const other = searchLayout(field, { seed, moves: 20_000 });
    const merged = mergeLayouts(field, greedy, other);
    expect(merged.value).toBeGreaterThanOrEqual(Math.max(greedy.value, other.value));
    expect(keepsRules(problem, merged.chosen)).toBe(true);
    expect(merged.chosen.every((u) => greedy.chosen.includes(u) || other.chosen.includes(u))).toBe(true);
  });

  it('put the better halves of two layouts together, and leave standing sites alone', () => {
    const at = (x: number) => ({ x, y: 0 });
    const units = [
      { post: 0, at: at(0), bird: 0, weight: 10 },
      { post: 1, at: at(30), bird: 0, weight: 20 },
      { post: 2, at: at(500), bird: 0, weight: 20 },
      { post: 3, at: at(530), bird: 0, weight: 10 },
      { post: 4, at: at(900), bird: 0, weight: 1, fixed: true },
    ];
    const field = fieldOf({ units, wanted: [5], spacing: [[91]] });
    const merged = mergeLayouts(field, layoutIn(field, [0, 2, 4]), layoutIn(field, [1, 3, 4]));
    expect(merged).toEqual({ chosen: [1, 2, 4], value: 41 });
  });
});
