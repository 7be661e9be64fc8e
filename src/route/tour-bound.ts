/** How near the shortest a round is: the subtour bound (Dantzig, Fulkerson & Johnson 1954), and the shortest itself where that is quick. */
import type { LinearModel, LinearSolver, OpenModel } from '../geometry/linear-model.ts';
import { onesRows } from '../geometry/linear-model.ts';
import { weakSets } from './cuts.ts';
import type { CostMatrix } from './matrix.ts';
import { roundCost } from './matrix.ts';
import { possibleLegs, treeBound } from './one-tree.ts';

export interface BoundedTour {
  /** The round given, or a shorter one found on the way; begins at place 0. */
  readonly order: readonly number[];
  readonly cost: number;
  /** No closed round costs less; equal to `cost` when proven. */
  readonly bound: number;
}

export interface BoundOptions {
  /** Without one the tree bound stands alone: typically within 1 %. */
  readonly solver?: LinearSolver | null;
  readonly seconds?: number;
  /** Simplex steps of each whole-number solve. */
  readonly steps?: number;
  readonly shouldStop?: () => boolean;
}

const nearly = 1e-9;
const mostRounds = 60;

/** Bounds the closed round `order` over all places of the matrix. */
export function boundTour(matrix: CostMatrix, order: readonly number[], options: BoundOptions = {}): BoundedTour {
  const cost = roundCost(matrix, order);
  if (matrix.size < 4 || cost === 0) return { order, cost, bound: cost };
  const tree = treeBound(matrix, cost);
  const bound = Math.min(cost, tree.bound - nearly * cost);
  if (!options.solver || bound >= cost * (1 - nearly * 10)) return { order, cost, bound };
  const legs = possibleLegs(matrix, tree, cost);
  return new SubtourProof(matrix, order, bound, withTour(matrix, legs, order), options).run(options.solver);
}

/** The round's own legs always belong. */
function withTour(matrix: CostMatrix, legs: [number, number][], order: readonly number[]): [number, number][] {
  const known = new Set(legs.map(([a, b]) => a * matrix.size + b));
  const missing = order.flatMap((a, k): [number, number][] => {
    const b = order[(k + 1) % order.length];
    const leg: [number, number] = a < b ? [a, b] : [b, a];
    return known.has(leg[0] * matrix.size + leg[1]) ? [] : [leg];
  });
  return [...legs, ...missing];
}

class SubtourProof {
  private readonly matrix: CostMatrix;
  private order: readonly number[];
  private cost: number;
  private bound: number;
  private readonly legs: readonly [number, number][];
  private readonly options: BoundOptions;
  private spent = 0;

  constructor(
    matrix: CostMatrix,
    order: readonly number[],
    bound: number,
    legs: readonly [number, number][],
    options: BoundOptions,
  ) {
    this.matrix = matrix;
    this.order = order;
    this.cost = roundCost(matrix, order);
    this.bound = bound;
    this.legs = legs;
    this.options = options;
  }

  run(solver: LinearSolver): BoundedTour {
    solver.withModel(this.model(), (open) => this.improve(open));
    return { order: this.order, cost: this.cost, bound: Math.min(this.bound, this.cost) };
  }

  private model(): LinearModel {
    const { size, cost } = this.matrix;
    const at: number[][] = Array.from({ length: size }, () => []);
    this.legs.forEach(([a, b], k) => {
      at[a].push(k);
      at[b].push(k);
    });
    return {
      maximize: false,
      cost: Float64Array.from(this.legs, ([a, b]) => cost[a * size + b]),
      columnLower: new Float64Array(this.legs.length),
      columnUpper: new Float64Array(this.legs.length).fill(1),
      rows: onesRows(at, 2, 2),
    };
  }

  /** Cuts on the relaxation until none is left, then whole numbers, then cuts again while the answer falls into pieces. */
  private improve(open: OpenModel): void {
    let whole = false;
    for (let round = 0; round < mostRounds; round++) {
      const left = (this.options.seconds ?? 5) - this.spent;
      if (left <= 0 || this.options.shouldStop?.()) return;
      const { shouldStop, steps } = this.options;
      const answer = open.solve({
        whole,
        seconds: left,
        steps,
        shouldStop,
        start: whole ? this.asColumns() : undefined,
      });
      this.spent += answer.seconds;
      if (answer.end === 'infeasible') {
        // Only legs of rounds no dearer than this one are in the model.
        this.bound = this.cost;
        return;
      }
      if (answer.bound !== null) this.bound = Math.max(this.bound, answer.bound - nearly * this.cost);
      if (answer.end !== 'optimal' || !answer.x || this.bound >= this.cost * (1 - 10 * nearly)) return;
      const x = answer.x;
      const sets = weakSets(
        this.matrix.size,
        this.legs.map(([a, b], k) => ({ a, b, x: x[k] })),
      );
      if (sets.length > 0)
        open.addRows(
          onesRows(
            sets.map((set) => this.legsOut(set)),
            2,
            Infinity,
          ),
        );
      else if (this.takeRound(x) || whole) return;
      else whole = true;
    }
  }

  private legsOut(set: readonly number[]): number[] {
    const inside = new Uint8Array(this.matrix.size);
    for (const k of set) inside[k] = 1;
    return [...this.legs.keys()].filter((k) => inside[this.legs[k][0]] !== inside[this.legs[k][1]]);
  }

  private asColumns(): Float64Array {
    const { size } = this.matrix;
    const used = new Set<number>();
    this.order.forEach((a, k) => {
      const b = this.order[(k + 1) % size];
      used.add(Math.min(a, b) * size + Math.max(a, b));
    });
    return Float64Array.from(this.legs, ([a, b]) => (used.has(a * size + b) ? 1 : 0));
  }

  /** Reads a round out of whole shares; true when they are whole (then it is one round: no set was weak), which proves it. */
  private takeRound(x: Float64Array): boolean {
    if (x.some((share) => share > 1e-6 && share < 1 - 1e-6)) return false;
    const { size } = this.matrix;
    const next: number[][] = Array.from({ length: size }, () => []);
    this.legs.forEach(([a, b], k) => {
      if (x[k] < 0.5) return;
      next[a].push(b);
      next[b].push(a);
    });
    const order = [0];
    for (let before = -1, here = 0; order.length < size; ) {
      const to = next[here][0] === before ? next[here][1] : next[here][0];
      order.push(to);
      [before, here] = [here, to];
    }
    const cost = roundCost(this.matrix, order);
    if (cost < this.cost) {
      this.order = order;
      this.cost = cost;
    }
    this.bound = this.cost;
    return true;
  }
}
