/** A lower bound on any round without a solver: 1-trees with prices on the places (Held & Karp 1970, Operations Research 18). */
import type { CostMatrix } from './matrix.ts';

export interface TreeBound {
  /** No closed round costs less. */
  readonly bound: number;
  /** Price of each place at that bound. */
  readonly price: Float64Array;
}

interface OneTree {
  readonly cost: number;
  readonly degree: Int32Array;
  /** Tree neighbour nearer the root (place 1); −1 for the root and for place 0. */
  readonly parent: Int32Array;
  /** Places in the order they joined the tree. */
  readonly joined: Int32Array;
  /** The two places joined to place 0. */
  readonly ends: readonly [number, number];
}

/** Prices raised and lowered until the tree is nearly a round. `upper` is the cost of a round at hand; three places or more. */
export function treeBound(matrix: CostMatrix, upper: number, steps = 600): TreeBound {
  const { size } = matrix;
  const price = new Float64Array(size);
  let best = -Infinity;
  let bestPrice = price.slice();
  let last = new Int32Array(size);
  let reach = 1.2;
  let since = 0;
  for (let step = 0; step < steps; step++) {
    const tree = oneTree(matrix, price);
    const bound = tree.cost - 2 * price.reduce((sum, p) => sum + p, 0);
    if (bound > best) {
      best = bound;
      bestPrice = price.slice();
      since = 0;
    } else if (++since > 12) {
      reach *= 0.7;
      since = 0;
      price.set(bestPrice);
      if (reach < 1e-4) break;
    }
    const off = Int32Array.from(tree.degree, (d) => d - 2);
    const length = off.reduce((sum, o) => sum + o * o, 0);
    if (length === 0 || best >= upper - 1e-9 * upper) break;
    const move = (reach * Math.max(upper - bound, upper * 1e-6)) / length;
    for (let k = 0; k < size; k++) price[k] += move * (0.7 * off[k] + 0.3 * last[k]);
    last = off;
  }
  return { bound: best, price: bestPrice };
}

/** Cheapest tree over all places but the first, and two legs to the first, under the prices (Prim 1957). */
function oneTree({ size, cost }: CostMatrix, price: Float64Array): OneTree {
  const degree = new Int32Array(size);
  const parent = new Int32Array(size).fill(-1);
  const joined = new Int32Array(size - 1);
  const near = new Float64Array(size).fill(Infinity);
  const done = new Uint8Array(size);
  let total = 0;
  let here = 1;
  done[1] = 1;
  joined[0] = 1;
  for (let count = 1; count < size - 1; count++) {
    let next = -1;
    for (let k = 1; k < size; k++) {
      if (done[k]) continue;
      const leg = cost[here * size + k] + price[here] + price[k];
      if (leg < near[k]) {
        near[k] = leg;
        parent[k] = here;
      }
      if (next < 0 || near[k] < near[next]) next = k;
    }
    done[next] = 1;
    joined[count] = next;
    degree[next]++;
    degree[parent[next]]++;
    total += near[next];
    here = next;
  }
  const ends = twoNearest(size, cost, price);
  for (const k of ends) {
    total += cost[k] + price[0] + price[k];
    degree[k]++;
  }
  degree[0] = 2;
  return { cost: total, degree, parent, joined, ends };
}

function twoNearest(size: number, cost: Float64Array, price: Float64Array): [number, number] {
  let [first, second] = [-1, -1];
  const leg = (k: number) => cost[k] + price[k];
  for (let k = 1; k < size; k++) {
    if (first < 0 || leg(k) < leg(first)) [first, second] = [k, first];
    else if (second < 0 || leg(k) < leg(second)) second = k;
  }
  return [first, second];
}

/** Legs that may be part of a round no dearer than `upper`: every other leg would lift the bound above it. */
export function possibleLegs(matrix: CostMatrix, { bound, price }: TreeBound, upper: number): [number, number][] {
  const { size, cost } = matrix;
  const tree = oneTree(matrix, price);
  const leg = (a: number, b: number) => cost[a * size + b] + price[a] + price[b];
  // Dearest leg of the tree on the way between two places; the tree is grown place by place, so earlier rows are ready.
  const dearest = new Float64Array(size * size);
  for (let m = 1; m < size - 1; m++) {
    const k = tree.joined[m];
    const p = tree.parent[k];
    const own = leg(k, p);
    for (let e = 0; e < m; e++) {
      const other = tree.joined[e];
      const most = other === p ? own : Math.max(own, dearest[p * size + other]);
      dearest[k * size + other] = dearest[other * size + k] = most;
    }
  }
  const toFirst = leg(0, tree.ends[1]);
  const room = upper - bound + 1e-9 * Math.abs(upper) + 1e-12;
  const legs: [number, number][] = [];
  for (let a = 0; a < size; a++) {
    for (let b = a + 1; b < size; b++) {
      const more = leg(a, b) - (a === 0 ? toFirst : dearest[a * size + b]);
      if (more <= room) legs.push([a, b]);
    }
  }
  return legs;
}
