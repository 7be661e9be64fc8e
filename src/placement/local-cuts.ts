/**
 * Rows stronger than cliques, found where the fractional answer stands: for each window of neighboring units in question, the row that
 * cuts it off deepest, then carried over to the units around the window (lifting). Such rows hold for every layout, because no
 * set of units without conflicts outweighs their limit: that is searched exactly.
 */
import type { ConflictGraph } from './conflict-graph.ts';
import { adjacent } from './conflict-graph.ts';
import type { Field } from './field.ts';
import { searchBudget, WindowFacet } from './window-facet.ts';

/** `values` · x of `units` is at most `limit`. */
export interface WeightedRow {
  readonly units: readonly number[];
  readonly values: readonly number[];
  readonly limit: number;
}

/** Shares this near 0 or 1 are whole. */
const whole = 1e-4;
/** Windows are centered on units at least this share of the reach apart. */
const centersApart = 0.33;
/** Rows that cut less deep are not worth their place. */
const leastDepth = 0.003;
/** Room left in every row for the rounding of sums. */
const rounding = 1e-7;

/**
 * Rows that the fractional answer `share` (by node of the graph) breaks, from windows of `size` units; `reducedCost` by node tells which units
 * to carry a row to first. `done` is asked before each window.
 */
export function localCuts(
  field: Field,
  graph: ConflictGraph,
  share: Float64Array,
  reducedCost: Float64Array,
  maker: RowMaker,
  size: number,
  done: () => boolean,
): WeightedRow[] {
  const open = [...share.keys()].filter((k) => share[k] > whole && share[k] < 1 - whole);
  const metres = (p: number, q: number) => {
    const [u, v] = [graph.units[p], graph.units[q]];
    return Math.hypot(field.x[u] - field.x[v], field.y[u] - field.y[v]);
  };
  const centers: number[] = [];
  for (const k of [...open].sort((p, q) => unsure(share[q]) - unsure(share[p]) || p - q)) {
    if (centers.every((c) => metres(c, k) > centersApart * field.reach)) centers.push(k);
  }
  maker.look(graph, share, reducedCost);
  const seen = new Set<string>();
  const rows: WeightedRow[] = [];
  for (const center of centers) {
    if (done()) break;
    const far = new Map(open.map((k) => [k, metres(center, k)]));
    const nearest = [...open].sort((p, q) => far.get(p)! - far.get(q)! || p - q).slice(0, size);
    const window = nearest.sort((p, q) => p - q);
    if (seen.has(window.join())) continue;
    seen.add(window.join());
    const row = maker.row(window);
    if (row) rows.push(row);
  }
  return rows;
}

const unsure = (share: number) => share * (1 - share);

/** Makes rows, and counts what that takes. One for a whole proof. */
export class RowMaker {
  private readonly facet = new WindowFacet();
  private graph!: ConflictGraph;
  private share!: Float64Array;
  private reducedCost!: Float64Array;
  private weight = new Float64Array(0);

  /** Pivots made so far. */
  get pivots(): number {
    return this.facet.pivots;
  }

  look(graph: ConflictGraph, share: Float64Array, reducedCost: Float64Array): void {
    this.graph = graph;
    this.share = share;
    this.reducedCost = reducedCost;
    this.weight = new Float64Array(graph.size);
  }

  row(window: readonly number[]): WeightedRow | null {
    const { graph, share, facet, weight } = this;
    const n = window.length;
    const words = (n + 31) >> 5;
    const bits = new Int32Array(n * words);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        if (adjacent(graph, window[i], window[j])) bits[i * words + (j >> 5)] |= 1 << (j & 31);
      }
    }
    const prices = facet.find(
      bits,
      words,
      Float64Array.from(window, (k) => share[k]),
      leastDepth,
    );
    if (!prices) return null;
    weight.fill(0);
    window.forEach((k, i) => {
      weight[k] = prices[i];
    });
    const used = window.filter((k) => weight[k] > 0);
    // The prices are a solve's; what they add to at most is searched anew, so that the row holds however they were found.
    const limit = this.heaviest(used);
    if (limit === null) return null;
    const tight = facet.sets.map((set) => set.map((i) => window[i]));
    const carried = this.lift(window, used, tight, limit).sort((p, q) => p - q);
    return {
      units: carried.map((k) => graph.units[k]),
      values: carried.map((k) => weight[k]),
      limit: limit + rounding,
    };
  }

  private heaviest(nodes: readonly number[]): number | null {
    const { heaviest } = this.facet;
    const top = heaviest.solve(this.graph.bits, this.graph.words, nodes, this.weight, 0, searchBudget);
    return heaviest.complete ? top : null;
  }

  /**
   * Gives every unit outside the window, one after the other, the most it can carry: the limit less what may stand beside it.
   * Adds them to `used`. `tight`: sets known to reach the limit; one that stands free of a unit's conflicts leaves it nothing.
   */
  private lift(window: readonly number[], used: number[], tight: (readonly number[])[], limit: number): number[] {
    const { graph, share, reducedCost, weight } = this;
    const inside = new Set(window);
    const around: number[] = [];
    for (let k = 0; k < graph.size; k++) {
      if (inside.has(k)) continue;
      let conflicts = 0;
      for (let i = 0; i < used.length && conflicts < 2; i++) if (adjacent(graph, used[i], k)) conflicts++;
      if (conflicts === 2) around.push(k);
    }
    around.sort((p, q) => share[q] - share[p] || reducedCost[q] - reducedCost[p] || p - q);
    for (const k of around) {
      if (tight.some((set) => set.every((v) => !adjacent(graph, v, k)))) continue;
      const beside = this.heaviest(used.filter((v) => !adjacent(graph, v, k)));
      if (beside === null) continue;
      const value = limit - beside;
      const found = this.facet.heaviest.found;
      if (value > 1e-6) {
        weight[k] = value;
        used.push(k);
        tight.push([...found, k]);
      } else tight.push(found);
    }
    return used;
  }
}
