/** Sets of units of which at most one can be chosen: the rows of the exact model. One row a clique bounds far better than one a conflict. */
import type { ConflictGraph } from './conflict-graph.ts';
import { adjacent, conflictGraph, nodesOf } from './conflict-graph.ts';
import type { Field } from './field.ts';

/** Units of a clique, rising. */
export type Clique = readonly number[];

/** Shifts of the cells as shares of their side. */
const shifts = [
  [0, 0],
  [0.5, 0],
  [0, 0.5],
  [0.5, 0.5],
] as const;

/**
 * Units by square cells of side spacing / √2: no two in one cell are a spacing apart. Four grids half a cell apart, for each bird
 * and, where the birds mind each other, for all of them together; and one clique for each post that several birds could take.
 */
export function cellCliques(field: Field, units: Int32Array): Clique[] {
  const found: Clique[] = [];
  const all = Array.from({ length: field.birds }, (_, b) => b);
  for (const birds of field.birds > 1 ? [...all.map((b) => [b]), all] : [all]) {
    let least = Infinity;
    for (const a of birds) for (const b of birds) least = Math.min(least, field.apart[a * field.birds + b]);
    // Cells much smaller than a walk hold nothing worth a row.
    const side = Math.sqrt(least / 2);
    if (side < 3) continue;
    const members = units.filter((u) => birds.includes(field.bird[u]));
    for (const [dx, dy] of shifts) found.push(...cellsOf(field, members, side, dx * side, dy * side));
  }
  return [...found, ...sharedPosts(field, units)];
}

function cellsOf(field: Field, units: Int32Array, side: number, dx: number, dy: number): Clique[] {
  const cells = new Map<number, number[]>();
  for (const u of units) {
    const column = Math.floor((field.x[u] - field.grid.minX + dx) / side);
    const key = Math.floor((field.y[u] - field.grid.minY + dy) / side) * 1e7 + column;
    const cell = cells.get(key);
    if (cell) cell.push(u);
    else cells.set(key, [u]);
  }
  return [...cells.values()].filter((cell) => cell.length > 1);
}

function sharedPosts(field: Field, units: Int32Array): Clique[] {
  const users = new Map<number, number[]>();
  const add = (post: number, u: number) => {
    const list = users.get(post);
    if (list) list.push(u);
    else users.set(post, [u]);
  };
  for (const u of units) {
    add(field.post[u], u);
    if (field.post2[u] >= 0) add(field.post2[u], u);
  }
  return [...users.values()].filter((list) => list.length > 1);
}

/** Cliques that hold every conflict of the graph not yet held by one of `known` (cliques of the graph's own nodes), grown nearest to the conflict first. */
export function coverCliques(field: Field, graph: ConflictGraph, known: readonly (readonly number[])[]): number[][] {
  const { size, words, bits } = graph;
  const open = bits.slice();
  const close = (clique: readonly number[]) => {
    for (const a of clique) {
      for (const b of clique) open[a * words + (b >> 5)] &= ~(1 << (b & 31));
    }
  };
  for (const clique of known) close(clique);
  const found: number[][] = [];
  for (let a = 0; a < size; a++) {
    for (let w = a >> 5; w < words; w++) {
      while (open[a * words + w] !== 0) {
        const rest = open[a * words + w];
        const b = (w << 5) + 31 - Math.clz32(rest & -rest);
        const clique = grow(graph, [a, b], (k) => awayFrom(field, graph, a, b, k));
        close(clique);
        found.push(clique);
      }
    }
  }
  return found;
}

/** Squared metres of a unit's first post from the middle of two others'. */
function awayFrom(field: Field, graph: ConflictGraph, a: number, b: number, k: number): number {
  const [u, v, w] = [graph.units[a], graph.units[b], graph.units[k]];
  return (field.x[w] - (field.x[u] + field.x[v]) / 2) ** 2 + (field.y[w] - (field.y[u] + field.y[v]) / 2) ** 2;
}

/** The clique with everything added that conflicts with all of it, least `order` first. Nodes, rising. */
export function grow(graph: ConflictGraph, clique: readonly number[], order: (node: number) => number): number[] {
  const { words, bits } = graph;
  const common = bits.slice(clique[0] * words, (clique[0] + 1) * words);
  const keep = (node: number) => {
    for (let w = 0; w < words; w++) common[w] &= bits[node * words + w];
  };
  for (const node of clique.slice(1)) keep(node);
  const ranked = nodesOf(common)
    .map((node) => ({ node, rank: order(node) }))
    .sort((p, q) => p.rank - q.rank || p.node - q.node);
  const grown = [...clique];
  for (const { node } of ranked) {
    if ((common[node >> 5] & (1 << (node & 31))) === 0) continue;
    grown.push(node);
    keep(node);
  }
  return grown.sort((p, q) => p - q);
}

/** Cliques whose shares of a fractional answer (by node of the graph) add to more than 1, heaviest first, none twice. */
export function violatedCliques(graph: ConflictGraph, share: Float64Array, most: number): number[][] {
  const order = Array.from({ length: graph.size }, (_, k) => k).sort((p, q) => share[q] - share[p] || p - q);
  const rank = new Int32Array(graph.size);
  order.forEach((k, at) => {
    rank[k] = at;
  });
  const found = new Map<string, { clique: number[]; sum: number }>();
  for (const a of order) {
    for (const b of order) {
      if (rank[b] <= rank[a] || !adjacent(graph, a, b)) continue;
      const clique = grow(graph, [a, b], (k) => rank[k]);
      const sum = clique.reduce((all, k) => all + share[k], 0);
      if (sum > 1.001) found.set(clique.join(), { clique, sum });
    }
  }
  return [...found.values()]
    .sort((p, q) => q.sum - p.sum)
    .slice(0, most)
    .map((f) => f.clique);
}

/**
 * Violated cliques of the fractional answer `x` (by node of the graph), at most `most`, each grown over every unit still in question. Nodes
 * of the graph.
 */
export function cliqueCuts(field: Field, graph: ConflictGraph, x: Float64Array, most: number): number[][] {
  const support = [...x.keys()].filter((k) => x[k] > 1e-5);
  const small = conflictGraph(
    field,
    Int32Array.from(support, (k) => graph.units[k]),
  );
  const share = Float64Array.from(support, (k) => x[k]);
  return violatedCliques(small, share, most).map((clique) =>
    grow(
      graph,
      clique.map((k) => support[k]),
      (k) => -field.weight[graph.units[k]],
    ),
  );
}
