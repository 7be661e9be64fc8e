/** The round itself: the order of stops that costs least, from the start and back, to another end, or with both ends free. */
import { heldKarp, mostExactPlaces } from './held-karp.ts';
import type { CostMatrix } from './matrix.ts';
import { matrixOf, roundCost } from './matrix.ts';
import type { BoundOptions } from './tour-bound.ts';
import { boundTour } from './tour-bound.ts';
import { searchTour } from './tour-search.ts';

/** `closed`: from place 0 and back to it. `to-end`: from place 0 to the last place. `free`: begins and ends at whichever stops are best. */
export type TourShape = 'closed' | 'to-end' | 'free';

export interface Tour {
  /** Places in walking order; for `closed` place 0 stands first only, for `to-end` the last place stands last. */
  readonly order: readonly number[];
  readonly cost: number;
  /** True when every order was weighed (few stops). */
  readonly exact: boolean;
}

/**
 * Kicks that a search of so many places gets. Of 800 searches of 20 to 60 places (even, clustered, bent costs) all found the best round
 * known; with two thirds as many kicks one did not, with a quarter four.
 */
export function kicksFor(places: number): number {
  return Math.min(12_000, places * places);
}

/** Whether every order of so many places is weighed. */
export function exactPlaces(places: number, shape: TourShape): boolean {
  return places + (shape === 'closed' ? 0 : 1) <= mostExactPlaces;
}

/** The best order found; the same seed gives the same order on any machine. */
export function bestTour(matrix: CostMatrix, shape: TourShape, seed: number, kicks?: number): Tour {
  if (shape === 'closed') {
    const order = closedOrder(matrix, seed, kicks);
    return { order, cost: roundCost(matrix, order), exact: exactPlaces(matrix.size, shape) };
  }
  const padded = closeWithDummy(matrix, shape);
  const closed = closedOrder(padded, seed, kicks);
  const order = openAtDummy(closed, matrix.size, shape);
  return { order, cost: pathCost(matrix, order), exact: exactPlaces(matrix.size, shape) };
}

function closedOrder(matrix: CostMatrix, seed: number, kicks = kicksFor(matrix.size)): number[] {
  return matrix.size <= mostExactPlaces ? heldKarp(matrix) : searchTour(matrix, seed, kicks);
}

/**
 * The tour with the least that any tour of its shape can cost: equal to its cost when it is proven the best, in which case a
 * better order found on the way takes its place.
 */
export function boundedTour(
  matrix: CostMatrix,
  tour: Tour,
  shape: TourShape,
  options: BoundOptions,
): { readonly tour: Tour; readonly bound: number } {
  if (tour.exact) return { tour, bound: tour.cost };
  const open = shape !== 'closed';
  const closed = open ? closeWithDummy(matrix, shape) : matrix;
  const found = boundTour(closed, open ? [matrix.size, ...tour.order] : tour.order, options);
  if (found.cost > tour.cost - 1e-9 * tour.cost) return { tour, bound: Math.min(found.bound, tour.cost) };
  const order = open ? openAtDummy(found.order, matrix.size, shape) : found.order;
  return { tour: { order, cost: found.cost, exact: false }, bound: found.bound };
}

/** Cost of walking `order` without coming back. */
export function pathCost(matrix: CostMatrix, order: readonly number[]): number {
  let sum = 0;
  for (let k = 1; k < order.length; k++) sum += matrix.cost[order[k - 1] * matrix.size + order[k]];
  return sum;
}

/** One place more that joins both ends, so that the open walk is a closed one: free to its ends, too dear to anything else. */
export function closeWithDummy(matrix: CostMatrix, shape: TourShape): CostMatrix {
  const { size, cost } = matrix;
  const dear = 4 * cost.reduce((most, c) => Math.max(most, c), 0) + 1;
  return matrixOf(size + 1, (a, b) => {
    if (b < size) return cost[a * size + b];
    return shape === 'free' || a === 0 || a === size - 1 ? 0 : dear;
  });
}

function openAtDummy(closed: readonly number[], dummy: number, shape: TourShape): number[] {
  const at = closed.indexOf(dummy);
  const order = [...closed.slice(at + 1), ...closed.slice(0, at)];
  const turned = shape === 'to-end' ? order[0] !== 0 : order[0] > order[order.length - 1];
  return turned ? order.reverse() : order;
}
