/** Who lies near whom: where the search of a round begins and what it tries. */
import type { CostMatrix } from './matrix.ts';

/** Nearest first, walking on to the nearest place not yet visited. */
export function nearestNeighbour(matrix: CostMatrix, first = 0): number[] {
  const { size, cost } = matrix;
  const left = new Set(Array.from({ length: size }, (_, k) => k));
  const order = [first];
  left.delete(first);
  while (left.size > 0) {
    const here = order[order.length - 1];
    let next = -1;
    for (const k of left) if (next < 0 || cost[here * size + k] < cost[here * size + next]) next = k;
    order.push(next);
    left.delete(next);
  }
  return order;
}

/** The `keep` nearest others of each place, nearest first: those of place c from c × keep. */
export function neighbourLists({ size, cost }: CostMatrix, keep: number): Int32Array {
  const near = new Int32Array(size * keep);
  for (let c = 0; c < size; c++) {
    const others = Int32Array.from({ length: size - 1 }, (_, k) => (k < c ? k : k + 1));
    others.sort((a, b) => cost[c * size + a] - cost[c * size + b] || a - b);
    near.set(others.subarray(0, keep), c * keep);
  }
  return near;
}
