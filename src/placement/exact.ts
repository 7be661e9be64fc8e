/**
 * The proof: set packing with one row a clique, solved in steps that each only shrink the question. The linear relaxation bounds
 * every layout; units whose price says they cannot be part of a better one are left out; what remains goes to branch and bound.
 */
import type { LinearSolver, OpenModel, SolveAnswer } from '../geometry/linear-model.ts';
import { onesRows } from '../geometry/linear-model.ts';
import type { Clique } from './cliques.ts';
import { cellCliques, cliqueCuts, coverCliques } from './cliques.ts';
import type { ConflictGraph } from './conflict-graph.ts';
import { conflictGraph } from './conflict-graph.ts';
import type { Field } from './field.ts';
import type { Layout } from './layout.ts';
import { layoutOf } from './layout.ts';
import type { WeightedRow } from './local-cuts.ts';
import { LocalRounds } from './local-rounds.ts';
import type { PackingModel } from './packing-model.ts';
import { packingModel, weightedRows } from './packing-model.ts';
import { searchPriced } from './priced-search.ts';
import { roundedLayout } from './rounding.ts';

export interface ExactOptions {
  /** Seconds for everything. */
  readonly seconds: number;
  /** Simplex steps for branch and bound: ends at the same place on every machine. */
  readonly steps?: number;
  readonly shouldStop?: () => boolean;
}

export interface ExactAnswer {
  /** The start, or a better layout found on the way. */
  readonly layout: Layout;
  /** No layout is worth more; null when nothing could be proven. */
  readonly bound: number | null;
  /** `proven`: nothing better exists. `limit`: stopped by the steps allowed. `clock`: by the time. */
  readonly end: 'proven' | 'limit' | 'clock' | 'stopped' | 'failed';
  readonly seconds: number;
}

/** Better by less than this is no better: scores are 0–100. */
const worthwhile = 1e-6;
/** Bounds come out of floating-point solves: never claimed tighter than this share. */
const safety = 1e-9;
const quickToBranch = 300;
/** Shares of the gap tried before the whole of it, and the share of the time left that each may take. */
const windows = [0.3, 0.6];
const windowTime = 0.35;
/** Share of all time that stronger rows leave to branch and bound. */
const branchingTime = 0.15;
const mostCutRounds = 40;
const cutsPerRound = 300;
/** Units that branch and bound is tried on, and that conflicts are kept as bit rows for. */
const mostForBranching = 4500;
const mostForBits = 14_000;

/** Proves `start` best, finds a better layout, or says how far off it can be at most. */
export function exactLayout(field: Field, start: Layout, solver: LinearSolver, options: ExactOptions): ExactAnswer {
  return new Proof(field, start, solver, options).run();
}

class Proof {
  private readonly field: Field;
  private readonly solver: LinearSolver;
  private readonly options: ExactOptions;
  private layout: Layout;
  private readonly standing: number[];
  private readonly caps: number[];
  /** Worth of the standing units: not part of the model. */
  private readonly base: number;
  private alive: Int32Array;
  private cliques: Clique[];
  private rows: WeightedRow[] = [];
  private readonly local: LocalRounds;
  private bound = Infinity;
  /** Reduced cost of each unit alive in the last relaxation, and that relaxation's bound. */
  private price = new Float64Array(0);
  private priced = Infinity;
  private readonly began: number;
  /** Seconds in the solver: what there is to go by without a clock. */
  private solving = 0;

  constructor(field: Field, start: Layout, solver: LinearSolver, options: ExactOptions) {
    this.field = field;
    this.solver = solver;
    this.options = options;
    this.layout = start;
    const { units, wanted } = field.problem;
    this.standing = units.flatMap((unit, u) => (unit.fixed ? [u] : []));
    this.base = this.standing.reduce((sum, u) => sum + units[u].weight, 0);
    this.caps = wanted.map((most, b) => Math.max(0, most - this.standing.filter((u) => units[u].bird === b).length));
    this.alive = Int32Array.from({ length: field.count }, (_, u) => u).filter(
      (u) => !units[u].fixed && this.caps[units[u].bird] > 0,
    );
    this.cliques = cellCliques(field, this.alive);
    this.local = new LocalRounds(field, options.seconds);
    this.began = solver.now?.() ?? 0;
  }

  run(): ExactAnswer {
    if (this.alive.length === 0) return this.result('proven', this.layout.value);
    const relaxed = this.relax();
    if (relaxed !== 'proven' && relaxed !== 'go on') return this.result(relaxed, this.finite());
    if (relaxed === 'proven' || this.alive.length === 0) return this.result('proven', this.layout.value);
    return this.branch();
  }

  private finite(): number | null {
    return Number.isFinite(this.bound) ? Math.max(this.bound, this.layout.value) : null;
  }

  private result(end: ExactAnswer['end'], bound: number | null): ExactAnswer {
    return { layout: this.layout, bound, end, seconds: this.spent() };
  }

  private spent(): number {
    return this.solver.now ? this.solver.now() - this.began : this.solving;
  }

  private left(): number {
    return this.options.seconds - this.spent();
  }

  private model(): PackingModel {
    return packingModel(this.field, this.alive, this.caps, this.cliques, this.rows);
  }

  /** Relaxation, cuts and prices in turn until nothing is gained; the model is laid out anew when many units have left. */
  private relax(): 'go on' | ExactAnswer['end'] {
    for (;;) {
      const before = this.alive.length;
      const { model } = this.model();
      const state = this.solver.withModel(model, (open) => this.cutLoop(open));
      if (state !== 'smaller') return state;
      if (this.alive.length > before * 0.7) return 'go on';
    }
  }

  private cutLoop(open: OpenModel): 'go on' | 'smaller' | ExactAnswer['end'] {
    let graph: ConflictGraph | null = null;
    let last = Infinity;
    for (let round = 0; ; round++) {
      const answer = open.solve({ seconds: Math.max(0.1, this.left()), shouldStop: this.options.shouldStop });
      this.solving += answer.seconds;
      if (answer.end !== 'optimal') return answer.end === 'clock' || answer.end === 'stopped' ? answer.end : 'failed';
      const value = answer.bound! * (1 + safety) + this.base;
      this.bound = Math.min(this.bound, value);
      this.take(roundedLayout(this.field, this.alive, answer.x!, this.standing, this.caps));
      const shrunk = this.shrink(answer);
      if (shrunk) return shrunk;
      if (this.alive.length > mostForBits) return this.settle(answer);
      graph ??= conflictGraph(this.field, this.alive);
      const cuts = cliqueCuts(this.field, graph, answer.x!, cutsPerRound);
      // Small steps at the end cost more time here than stronger rows do.
      const tapers = cuts.length === 0 || (round > 4 && last - value < 2e-5 * value) || round >= mostCutRounds;
      last = value;
      if (tapers && !this.local.begun) {
        this.search(answer);
        const smaller = this.shrink(answer);
        if (smaller) return smaller;
      }
      if (tapers || this.local.begun) {
        const rows = this.stronger(graph, answer, value);
        if (rows.length === 0) return this.settle(answer);
        open.addRows(weightedRows(rows, graph.nodeOf));
        this.rows.push(...rows);
      }
      const { alive } = this;
      if (cuts.length === 0) continue;
      open.addRows(onesRows(cuts, -Infinity, 1));
      this.cliques.push(...cuts.map((cut) => cut.map((k) => alive[k])));
    }
  }

  /** Proven, or so few units left in question that the model is worth laying out anew. */
  private shrink(answer: SolveAnswer): 'smaller' | 'proven' | null {
    if (this.bound < this.layout.value + worthwhile) return 'proven';
    const stays = this.staying(answer);
    if (stays.length >= this.alive.length * 0.6) return null;
    this.alive = stays;
    return 'smaller';
  }

  private stronger(graph: ConflictGraph, answer: SolveAnswer, bound: number): WeightedRow[] {
    const state = { share: answer.x!, reducedCost: answer.reducedCost!, bound, gap: bound - this.layout.value };
    const reserve = this.options.seconds * branchingTime;
    return this.local.next(graph, state, () => (this.options.shouldStop?.() ?? false) || this.left() < reserve);
  }

  /** One more search among the units whose prices speak for them, then only those stay that could still better it. */
  private settle(answer: SolveAnswer): 'go on' | 'proven' {
    // So few are branched on in no time.
    if (this.staying(answer).length > quickToBranch) this.search(answer);
    if (this.bound < this.layout.value + worthwhile) return 'proven';
    this.keep(answer);
    return 'go on';
  }

  private search({ reducedCost }: SolveAnswer): void {
    const { seconds, shouldStop } = this.options;
    const { alive } = this;
    this.take(searchPriced(this.field, this.layout, { alive, reducedCost: reducedCost!, seconds, shouldStop }));
  }

  /** Only those stay that could still better the layout, with what the relaxation says of them. */
  private keep(answer: SolveAnswer): void {
    const price = new Map([...this.alive].map((u, k) => [u, answer.reducedCost![k]]));
    this.alive = this.staying(answer);
    this.price = Float64Array.from(this.alive, (u) => price.get(u)!);
    this.priced = answer.bound! * (1 + safety) + this.base;
  }

  /** Units that could be part of a layout better than the one at hand, by their reduced cost. */
  private staying(answer: SolveAnswer): Int32Array {
    const room = this.layout.value + worthwhile - (answer.bound! + this.base);
    return this.alive.filter((_, k) => answer.reducedCost![k] > room - 1e-6 || answer.x![k] > 1e-6);
  }

  private take(layout: Layout): void {
    if (layout.value > this.layout.value + worthwhile) this.layout = layout;
  }

  /** Branch and bound: first on the units with the best prices, where a better layout is soon found, then on all that are left. */
  private branch(): ExactAnswer {
    for (const share of windows) this.branchWithin(share);
    if (this.bound < this.layout.value + worthwhile) return this.result('proven', this.layout.value);
    if (this.alive.length > mostForBranching) return this.result('limit', this.finite());
    const answer = this.solveWhole(Math.max(0.1, this.left()), this.options.steps);
    if (answer.end === 'optimal' || answer.end === 'infeasible') return this.result('proven', this.layout.value);
    if (answer.bound !== null) this.bound = Math.min(this.bound, answer.bound * (1 + safety) + this.base);
    const end = answer.end === 'steps' ? 'limit' : answer.end;
    return this.result(end, this.finite());
  }

  /**
   * Solves for the units priced within a share of the gap. A layout with any other unit is worth at most the relaxation's bound less that
   * share, so that both together bound every layout.
   */
  private branchWithin(share: number): void {
    const window = share * (this.priced - this.layout.value);
    const all = { alive: this.alive, cliques: this.cliques, price: this.price };
    const near = this.alive.filter((_, k) => this.price[k] > -window);
    const few = near.length < quickToBranch || near.length > mostForBranching || near.length > 0.9 * all.alive.length;
    if (few || this.left() < 1) return;
    const { steps } = this.options;
    this.alive = near;
    const answer = this.solveWhole(this.left() * windowTime, steps === undefined ? undefined : steps * windowTime);
    Object.assign(this, all);
    const done = answer.end === 'optimal' || answer.end === 'infeasible';
    const inside = done
      ? this.layout.value
      : answer.bound === null
        ? Infinity
        : answer.bound * (1 + safety) + this.base;
    this.bound = Math.min(this.bound, Math.max(inside, this.priced - window, this.layout.value));
    const room = this.layout.value + worthwhile - this.priced;
    const stays = [...this.alive.keys()].filter((k) => this.price[k] > room - 1e-6);
    this.price = Float64Array.from(stays, (k) => this.price[k]);
    this.alive = Int32Array.from(stays, (k) => all.alive[k]);
  }

  /** Whole-number solve over the units in question, every conflict held by a row; a better layout is kept. */
  private solveWhole(seconds: number, steps: number | undefined): SolveAnswer {
    const { field } = this;
    const graph = conflictGraph(field, this.alive);
    const { column } = this.model();
    const own = this.cliques.map((clique) => clique.map((u) => column[u]).filter((k) => k >= 0));
    const known = own.filter((clique) => clique.length > 1);
    this.cliques = [...known, ...coverCliques(field, graph, known)].map((clique) => clique.map((k) => this.alive[k]));
    const { model } = this.model();
    const chosen = new Set(this.layout.chosen);
    const start = Float64Array.from(this.alive, (u) => (chosen.has(u) ? 1 : 0));
    const complete = this.layout.chosen.every((u) => column[u] >= 0 || field.problem.units[u].fixed);
    const answer = this.solver.withModel(model, (open) =>
      open.solve({
        whole: true,
        start: complete ? start : undefined,
        seconds,
        steps,
        shouldStop: this.options.shouldStop,
      }),
    );
    this.solving += answer.seconds;
    if (answer.x) this.take(this.chosenOf(answer.x));
    return answer;
  }

  private chosenOf(x: Float64Array): Layout {
    const chosen = [...this.standing, ...[...this.alive].filter((_, k) => x[k] > 0.5)];
    return layoutOf(this.field.problem, chosen);
  }
}
