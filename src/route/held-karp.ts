/** The shortest round through a few places, proven by trying every subset once (Held & Karp 1962, J. SIAM 10). */
import type { CostMatrix } from './matrix.ts';

/** Largest number of places (the first included) the tables are kept for: 13 places fill them in a few milliseconds. */
export const mostExactPlaces = 13;

/** The cheapest closed order of all places, beginning at place 0. Time grows as 2ⁿ·n². */
export function heldKarp(matrix: CostMatrix): number[] {
  const { size, cost } = matrix;
  if (size <= 3) return Array.from({ length: size }, (_, k) => k);
  const others = size - 1;
  const subsets = 1 << others;
  // best[set * others + last]: cheapest way from place 0 through `set`, ending at place last + 1.
  const best = new Float64Array(subsets * others).fill(Infinity);
  const before = new Int8Array(subsets * others).fill(-1);
  for (let last = 0; last < others; last++) best[(1 << last) * others + last] = cost[last + 1];
  for (let set = 1; set < subsets; set++) {
    for (let last = 0; last < others; last++) {
      const here = best[set * others + last];
      if (here === Infinity) continue;
      for (let next = 0; next < others; next++) {
        if (set & (1 << next)) continue;
        const slot = (set | (1 << next)) * others + next;
        const there = here + cost[(last + 1) * size + next + 1];
        if (there < best[slot]) {
          best[slot] = there;
          before[slot] = last;
        }
      }
    }
  }
  return readBack(size, cost, best, before);
}

function readBack(size: number, cost: Float64Array, best: Float64Array, before: Int8Array): number[] {
  const others = size - 1;
  let set = (1 << others) - 1;
  let last = 0;
  for (let k = 1; k < others; k++) {
    if (best[set * others + k] + cost[k + 1] < best[set * others + last] + cost[last + 1]) last = k;
  }
  const order: number[] = [];
  while (last >= 0) {
    order.push(last + 1);
    const earlier = before[set * others + last];
    set &= ~(1 << last);
    last = earlier;
  }
  return [0, ...order.reverse()];
}
