/**
 * Cuts a fractional answer off inside one window of few nodes: weights under which no set without conflicts weighs more than 1, yet the
 * answer weighs as much over 1 as can be. Found by writing the answer as a mixture of such sets with the least total (column generation,
 * the primal simplex with an explicit inverse): the prices of the best mixture are the weights, and describe a face of all such sets
 * ("local cuts", Applegate, Bixby, Chvátal & Cook 2001).
 */
import { HeaviestSet } from './heaviest-set.ts';

/** Branchings a search for a heavy set may take before the window is given up. */
export const searchBudget = 20_000;
/** Pivots a window may take, per node. */
const pivotsPerNode = 40;
const tiny = 1e-9;
/** A set must weigh this much more than 1 to enter the mixture. */
const entering = 1e-6;
/** Shares are lifted by up to this much, each differently, so that pivots do not tie. */
const nudge = 1e-7;
/** Ratios nearer than this tie. */
const same = 1e-12;

export class WindowFacet {
  readonly heaviest = new HeaviestSet();
  /** Sets of the best mixture (they weigh 1), by window node. */
  sets: (readonly number[])[] = [];
  /** Pivots made so far, in all windows. */
  pivots = 0;
  private inverse = new Float64Array(0);

  /**
   * Weights of the n nodes, or null when the answer `share` weighs no more than 1 + `least` under any. `bits`: conflicts within the
   * window, `words` 32-bit words a node.
   */
  find(bits: Int32Array, words: number, share: Float64Array, least: number): Float64Array | null {
    const n = share.length;
    const mix = this.begin(share);
    const order = Array.from({ length: n }, (_, i) => i).sort((p, q) => share[q] - share[p] || p - q);
    const known: (readonly number[])[] = order.map((i) => fullest([i], bits, words, order));
    for (let pivot = 0; pivot < pivotsPerNode * n; pivot++) {
      this.pivots++;
      if (mix.total <= 1 + least) return null;
      const spare = lightest(mix.price);
      if (spare >= 0) {
        this.enter(mix, null, spare, mix.price[spare]);
        continue;
      }
      let set: readonly number[] | null = heavierThanOne(known, mix.price);
      if (!set) {
        const used = order.filter((i) => mix.price[i] > tiny);
        const top = this.heaviest.solve(bits, words, used, mix.price, 0, searchBudget);
        if (!this.heaviest.complete) return null;
        if (top <= 1 + entering) {
          this.sets = mix.basis.filter((s) => s !== null);
          return mix.price.map((p) => (p < 1e-7 ? 0 : p));
        }
        set = fullest(this.heaviest.found, bits, words, order);
        known.push(set);
      }
      if (!this.enter(mix, set, -1, 1 - weigh(set, mix.price))) return null;
    }
    return null;
  }

  /** Each node by itself: a mixture that any answer has. */
  private begin(share: Float64Array): Mixture {
    const n = share.length;
    if (this.inverse.length < n * n) this.inverse = new Float64Array(n * n);
    this.inverse.fill(0, 0, n * n);
    for (let i = 0; i < n; i++) this.inverse[i * n + i] = 1;
    const part = share.map((s, i) => s + (nudge * ((i * 7919) % 101)) / 101);
    return {
      part,
      price: new Float64Array(n).fill(1),
      basis: Array.from({ length: n }, (_, i) => [i]),
      step: new Float64Array(n),
      total: part.reduce((sum, p) => sum + p, 0),
    };
  }

  /** Brings a set, or leave to cover node `spare` more than asked, into the mixture; false when nothing would have to leave. */
  private enter(mix: Mixture, set: readonly number[] | null, spare: number, reduced: number): boolean {
    const { part, price, step } = mix;
    const inverse = this.inverse;
    const n = part.length;
    let out = -1;
    let length = Infinity;
    for (let i = 0; i < n; i++) {
      step[i] = set ? set.reduce((sum, j) => sum + inverse[i * n + j], 0) : -inverse[i * n + spare];
      if (step[i] <= tiny) continue;
      const ratio = part[i] / step[i];
      if (ratio > length + same || (ratio > length - same && step[i] <= step[out])) continue;
      length = Math.min(length, ratio);
      out = i;
    }
    if (out < 0) return false;
    for (let j = 0; j < n; j++) inverse[out * n + j] /= step[out];
    for (let i = 0; i < n; i++) {
      const factor = step[i];
      if (i === out || factor === 0) continue;
      for (let j = 0; j < n; j++) inverse[i * n + j] -= factor * inverse[out * n + j];
      part[i] -= factor * length;
    }
    part[out] = length;
    for (let j = 0; j < n; j++) price[j] += reduced * inverse[out * n + j];
    mix.total += reduced * length;
    mix.basis[out] = set;
    return true;
  }
}

interface Mixture {
  /** How much of each set of the basis. */
  readonly part: Float64Array;
  readonly price: Float64Array;
  /** null: leave to cover a node more than asked. */
  readonly basis: (readonly number[] | null)[];
  readonly step: Float64Array;
  total: number;
}

/** The node with the lowest price below zero, or −1. */
function lightest(price: Float64Array): number {
  let found = -1;
  let least = -tiny;
  for (let i = 0; i < price.length; i++) {
    if (price[i] >= least) continue;
    least = price[i];
    found = i;
  }
  return found;
}

function heavierThanOne(sets: readonly (readonly number[])[], price: Float64Array): readonly number[] | null {
  let top = 1 + entering;
  let found: readonly number[] | null = null;
  for (const set of sets) {
    const sum = weigh(set, price);
    if (sum <= top) continue;
    top = sum;
    found = set;
  }
  return found;
}

function weigh(set: readonly number[], price: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < set.length; k++) sum += price[set[k]];
  return sum;
}

/** The set with all that fits beside it, in `order`. */
function fullest(set: readonly number[], bits: Int32Array, words: number, order: readonly number[]): readonly number[] {
  const full = [...set];
  for (const j of order) {
    if (full.every((i) => i !== j && (bits[i * words + (j >> 5)] & (1 << (j & 31))) === 0)) full.push(j);
  }
  return full;
}
