/** What a tour is made over: symmetric costs between numbered places. */

/** `cost[a * size + b]` = `cost[b * size + a]` ≥ 0 (minutes, metres); the diagonal is 0. */
export interface CostMatrix {
  readonly size: number;
  readonly cost: Float64Array;
}

/** Fills a matrix from a function, asked once for each pair a < b. */
export function matrixOf(size: number, between: (a: number, b: number) => number): CostMatrix {
  const cost = new Float64Array(size * size);
  for (let a = 0; a < size; a++) {
    for (let b = a + 1; b < size; b++) cost[a * size + b] = cost[b * size + a] = between(a, b);
  }
  return { size, cost };
}

/** Cost of going round `order` and back to its first place. */
export function roundCost(matrix: CostMatrix, order: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < order.length; k++) {
    sum += matrix.cost[order[k] * matrix.size + order[(k + 1) % order.length]];
  }
  return order.length < 2 ? 0 : sum;
}
