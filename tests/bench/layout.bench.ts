/** Choosing posts: ours beside best-score-first and the plain model (one row a conflict) in the same solver. Seeded; ratios and gaps of this one run. */
import loadHighs from 'highs';
import type { LinearSolver } from '../../src/geometry/linear-model.ts';
import { onesRows, stackRows } from '../../src/geometry/linear-model.ts';
import { seededRandom } from '../../src/geometry/random.ts';
import { goodSearch } from '../../src/placement/choose.ts';
import { exactLayout } from '../../src/placement/exact.ts';
import { conflictsOf, fieldOf } from '../../src/placement/field.ts';
import { greedyLayout } from '../../src/placement/greedy.ts';
import type { Layout, LayoutProblem, Unit } from '../../src/placement/layout.ts';
import { searchLayout } from '../../src/placement/local-search.ts';
import { linearSolver } from '../../src/placement/solver.ts';

/** Posts on a jittered grid, scores of 25 soft hills and a little noise, 1–101. */
function site(side: number, count: number, seed: number): [number, number, number][] {
  const random = seededRandom(seed);
  const rows = Math.round(Math.sqrt(count));
  const hills = Array.from({ length: 25 }, () => [
    random() * side,
    random() * side,
    (0.05 + 0.1 * random()) * side,
    random(),
  ]);
  const points: [number, number, number][] = [];
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < rows; j++) {
      const [x, y] = [((i + random()) * side) / rows, ((j + random()) * side) / rows];
      const hill = hills.reduce(
        (sum, [hx, hy, w, h]) => sum + h * Math.exp(-((x - hx) ** 2 + (y - hy) ** 2) / 2 / w / w),
        0,
      );
      points.push([x, y, hill + 0.25 * random()]);
    }
  }
  const most = Math.max(...points.map((p) => p[2]));
  return points.map(([x, y, s]) => [x, y, 1 + (100 * s) / most]);
}

function singles(points: readonly [number, number, number][], wanted: number): LayoutProblem {
  const units = points.map(([x, y, weight], post): Unit => ({ post, at: { x, y }, bird: 0, weight }));
  return { units, wanted: [wanted], spacing: [[91]] };
}

/** Each post with its best neighbour 5–8 m off. */
function pairs(points: readonly [number, number, number][], wanted: number): LayoutProblem {
  const units = points.flatMap(([x, y, weight], post): Unit[] => {
    let mate = -1;
    points.forEach(([px, py, pw], k) => {
      const metres = Math.hypot(px - x, py - y);
      if (k > post && metres >= 5 && metres <= 8 && (mate < 0 || pw > points[mate][2])) mate = k;
    });
    if (mate < 0) return [];
    const [px, py, pw] = points[mate];
    return [{ post, at: { x, y }, partner: { post: mate, at: { x: px, y: py } }, bird: 0, weight: (weight + pw) / 2 }];
  });
  return { units, wanted: [wanted], spacing: [[91]] };
}

/** The plain model: one row for each conflict, nothing else, started from greedy. */
function plain(problem: LayoutProblem, start: Layout, solver: LinearSolver, seconds: number) {
  const field = fieldOf(problem);
  const rows = problem.units.flatMap((_, u) =>
    conflictsOf(field, u)
      .filter((v) => v > u)
      .map((v) => [u, v]),
  );
  const all = problem.units.map((_, k) => k);
  const model = {
    maximize: true,
    cost: Float64Array.from(problem.units, (u) => u.weight),
    columnLower: new Float64Array(all.length),
    columnUpper: new Float64Array(all.length).fill(1),
    rows: stackRows(onesRows(rows, -Infinity, 1), onesRows([all], 0, problem.wanted[0])),
  };
  const chosen = new Set(start.chosen);
  const first = Float64Array.from(all, (u) => (chosen.has(u) ? 1 : 0));
  const answer = solver.withModel(model, (open) => open.solve({ whole: true, seconds, start: first }));
  return { rows: rows.length, value: answer.value ?? 0, bound: answer.bound, end: answer.end, seconds: answer.seconds };
}

const seconds = (since: number) => ((performance.now() - since) / 1000).toFixed(2);
const share = (part: number, whole: number) => `${((100 * part) / whole).toFixed(2)} %`;

const solver = linearSolver(await loadHighs(), () => performance.now() / 1000);
const all: [name: string, problem: LayoutProblem, limit: number, plainToo: boolean][] = [
  ['plenty: 40 of 100 on 2 km', singles(site(2000, 100, 1), 40), 5, true],
  ['plenty: 40 of 1,000 on 2 km', singles(site(2000, 1000, 1), 40), 5, true],
  ['plenty: 40 of 10,000 on 2 km', singles(site(2000, 10_000, 1), 40), 15, false],
  ['binding: 40 of 1,000 on 900 m', singles(site(900, 1000, 1), 40), 30, true],
  ['binding: 40 of 1,000 on 550 m', singles(site(550, 1000, 1), 40), 30, true],
  ['pairs: 20 of 4,900 candidates on 600 m', pairs(site(600, 4900, 1), 20), 60, false],
];
for (const [name, problem, limit, plainToo] of all) {
  const field = fieldOf(problem);
  const greedy = greedyLayout(field);
  let since = performance.now();
  const good = searchLayout(field, { seed: 1, ...goodSearch(field.count) });
  const goodSeconds = seconds(since);
  since = performance.now();
  const exact = exactLayout(field, good, solver, { seconds: limit });
  const best = exact.layout.value;
  console.log(`${name} (${problem.units.length} units)`);
  console.log(`  best score first   ${share(best - greedy.value, best)} below the best found`);
  console.log(`  on screen          ${share(best - good.value, best)} below, after ${goodSeconds} s`);
  console.log(
    `  with its proof     ${exact.layout.chosen.length} sites, ${exact.end}, gap ${exact.bound === null ? 'none' : share(exact.bound - best, exact.bound)} in ${seconds(since)} s`,
  );
  if (!plainToo) continue;
  const other = plain(problem, greedy, solver, limit);
  const gap = other.bound === null ? 'none' : share(other.bound - other.value, other.bound);
  console.log(
    `  plain model        ${other.rows} rows, ${other.end}, ${share(best - other.value, best)} below, its own gap ${gap}, ${other.seconds.toFixed(2)} s`,
  );
}
console.log(`process memory ${Math.round(process.memoryUsage().rss / 1e6)} MB`);
