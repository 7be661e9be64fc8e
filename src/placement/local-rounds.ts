/** How long and in which windows stronger rows are sought: small windows first, larger ones as the small give out. Told by work and gain, not by the clock. */
import type { ConflictGraph } from './conflict-graph.ts';
import type { Field } from './field.ts';
import { localCuts, RowMaker, type WeightedRow } from './local-cuts.ts';

/** Units in the first windows and in the last; how many more when a size gives out. */
const firstSize = 25;
const lastSize = 60;
const growth = 5;
/** Shares of the gap: a round that gains less asks for larger windows; several in a row at the largest end it. */
const littleGain = 0.03;
const hardlyGain = 0.005;
const hardlyRounds = 3;
/** Pivots in windows for each second allowed: meant to be half of what this takes (90,000 a second on a slow core), so that it ends at the same place anywhere. */
const pivotsPerSecond = 40_000;

export interface RoundsState {
  /** Share of each node in the relaxation's answer, and its reduced cost. */
  readonly share: Float64Array;
  readonly reducedCost: Float64Array;
  /** The relaxation's bound, and how far the layout at hand is below it. */
  readonly bound: number;
  readonly gap: number;
}

export class LocalRounds {
  begun = false;
  private size = firstSize;
  private last = Infinity;
  private idle = 0;
  private readonly maker = new RowMaker();
  private readonly field: Field;
  private readonly pivots: number;

  /** `seconds`: allowed for the whole proof. */
  constructor(field: Field, seconds: number) {
    this.field = field;
    this.pivots = seconds * pivotsPerSecond;
  }

  /** Rows for the next relaxation; none when it is time to stop. */
  next(graph: ConflictGraph, state: RoundsState, shouldStop: () => boolean): WeightedRow[] {
    const { share, reducedCost, bound, gap } = state;
    const gain = this.last - bound;
    if (this.begun && gain < littleGain * gap) this.size = Math.min(lastSize, this.size + growth);
    this.idle = gain < hardlyGain * gap ? this.idle + 1 : 0;
    this.begun = true;
    this.last = bound;
    if (this.idle >= hardlyRounds) return [];
    for (;;) {
      const done = () => shouldStop() || this.maker.pivots > this.pivots;
      const rows = done() ? [] : localCuts(this.field, graph, share, reducedCost, this.maker, this.size, done);
      if (rows.length > 0 || done() || this.size >= lastSize) return rows;
      this.size = Math.min(lastSize, this.size + growth);
    }
  }
}
