/** A layout problem laid out in flat arrays with a grid over it, so that a conflict costs a few nanoseconds to find. */
import type { Layout, LayoutProblem } from './layout.ts';
import { metresBetween, spacingSlack } from './layout.ts';

export interface Field {
  readonly problem: LayoutProblem;
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Position of the second post; the same as the first where there is none. */
  readonly x2: Float64Array;
  readonly y2: Float64Array;
  readonly post: Int32Array;
  /** −1 where the unit is a single post. */
  readonly post2: Int32Array;
  readonly bird: Int32Array;
  /** What each unit is worth; below zero it is never chosen. */
  readonly weight: Float64Array;
  readonly birds: number;
  /** Squared metres two birds must be apart, by bird × birds + bird. */
  readonly apart: Float64Array;
  /** No two units whose first posts are farther apart than this conflict. */
  readonly reach: number;
  readonly grid: Grid;
}

/** Units by cell of their first post: those of cell c are `members[starts[c]]` up to `members[starts[c + 1]]`. */
export interface Grid {
  readonly cell: number;
  readonly minX: number;
  readonly minY: number;
  readonly columns: number;
  readonly rows: number;
  readonly starts: Int32Array;
  readonly members: Int32Array;
  /** Cell of each unit. */
  readonly home: Int32Array;
}

/** Most cells a grid may have; a site of a few far-apart posts gets larger cells instead. */
const mostCells = 1 << 18;

/** Units sorted into square cells of about `wanted` metres. */
export function gridOf(x: Float64Array, y: Float64Array, wanted: number): Grid {
  const n = x.length;
  let [minX, minY, maxX, maxY] = n ? [Infinity, Infinity, -Infinity, -Infinity] : [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    minX = Math.min(minX, x[i]);
    maxX = Math.max(maxX, x[i]);
    minY = Math.min(minY, y[i]);
    maxY = Math.max(maxY, y[i]);
  }
  const fits = (cell: number) => (Math.floor((maxX - minX) / cell) + 1) * (Math.floor((maxY - minY) / cell) + 1);
  let cell = Math.max(wanted, 1e-3);
  while (fits(cell) > mostCells) cell *= 1.5;
  const columns = Math.floor((maxX - minX) / cell) + 1;
  const rows = Math.floor((maxY - minY) / cell) + 1;
  const home = new Int32Array(n);
  const starts = new Int32Array(columns * rows + 1);
  for (let i = 0; i < n; i++) {
    home[i] = Math.floor((y[i] - minY) / cell) * columns + Math.floor((x[i] - minX) / cell);
    starts[home[i] + 1]++;
  }
  for (let c = 0; c < columns * rows; c++) starts[c + 1] += starts[c];
  const next = starts.slice();
  const members = new Int32Array(n);
  for (let i = 0; i < n; i++) members[next[home[i]]++] = i;
  return { cell, minX, minY, columns, rows, starts, members, home };
}

/** The problem made ready; built once, then only read. */
export function fieldOf(problem: LayoutProblem): Field {
  const { units } = problem;
  const count = units.length;
  const birds = problem.wanted.length;
  const x = Float64Array.from(units, (u) => u.at.x);
  const y = Float64Array.from(units, (u) => u.at.y);
  const x2 = Float64Array.from(units, (u) => u.partner?.at.x ?? u.at.x);
  const y2 = Float64Array.from(units, (u) => u.partner?.at.y ?? u.at.y);
  const apart = new Float64Array(birds * birds);
  const used = new Set(units.map((u) => u.bird));
  let widest = 0;
  for (let a = 0; a < birds; a++) {
    for (let b = 0; b < birds; b++) {
      const metres = metresBetween(problem, a, b);
      apart[a * birds + b] = (metres - spacingSlack) ** 2;
      if (used.has(a) && used.has(b)) widest = Math.max(widest, metres);
    }
  }
  let pair = 0;
  for (let i = 0; i < count; i++) pair = Math.max(pair, Math.hypot(x2[i] - x[i], y2[i] - y[i]));
  const reach = widest + 2 * pair;
  return {
    problem,
    count,
    x,
    y,
    x2,
    y2,
    post: Int32Array.from(units, (u) => u.post),
    post2: Int32Array.from(units, (u) => u.partner?.post ?? -1),
    bird: Int32Array.from(units, (u) => u.bird),
    weight: Float64Array.from(units, (u) => u.weight),
    birds,
    apart,
    reach,
    grid: gridOf(x, y, Math.max(reach / 2, 1)),
  };
}

/** A layout from unit indexes in any order, worth what the field says. */
export function layoutIn({ weight }: Field, chosen: Iterable<number>): Layout {
  const sorted = [...chosen].sort((a, b) => a - b);
  return { chosen: sorted, value: sorted.reduce((sum, u) => sum + weight[u], 0) };
}

/** Whether two different units may not both be chosen. */
export function conflict(field: Field, u: number, v: number): boolean {
  const { x, y, x2, y2, post, post2 } = field;
  const limit = field.apart[field.bird[u] * field.birds + field.bird[v]];
  const dx = x[u] - x[v];
  const dy = y[u] - y[v];
  if (dx * dx + dy * dy < limit || post[u] === post[v]) return true;
  if (post2[u] < 0 && post2[v] < 0) return false;
  if (post[u] === post2[v] || post2[u] === post[v] || (post2[u] >= 0 && post2[u] === post2[v])) return true;
  return (
    (x2[u] - x[v]) ** 2 + (y2[u] - y[v]) ** 2 < limit ||
    (x[u] - x2[v]) ** 2 + (y[u] - y2[v]) ** 2 < limit ||
    (x2[u] - x2[v]) ** 2 + (y2[u] - y2[v]) ** 2 < limit
  );
}

/** Every unit in conflict with `u`, rising. */
export function conflictsOf(field: Field, u: number): number[] {
  const { grid } = field;
  const found: number[] = [];
  const span = Math.ceil(field.reach / grid.cell);
  const row = Math.floor(grid.home[u] / grid.columns);
  const column = grid.home[u] % grid.columns;
  for (let r = Math.max(0, row - span); r <= Math.min(grid.rows - 1, row + span); r++) {
    const from = grid.starts[r * grid.columns + Math.max(0, column - span)];
    const to = grid.starts[r * grid.columns + Math.min(grid.columns - 1, column + span) + 1];
    for (let k = from; k < to; k++) {
      const v = grid.members[k];
      if (v !== u && conflict(field, u, v)) found.push(v);
    }
  }
  return found.sort((a, b) => a - b);
}
