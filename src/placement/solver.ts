/** The one place that knows HiGHS, a linear and mixed-integer solver compiled to WebAssembly (MIT). Its loader is passed in: page, worker and command line each find the file their own way. */
import type { Highs, Model, ModelData } from 'highs';
import type {
  LinearModel,
  LinearRows,
  LinearSolver,
  LoadSolver,
  OpenModel,
  SolveAnswer,
  SolveEnd,
  SolveOptions,
} from '../geometry/linear-model.ts';

/** The loader the rooms ask for, from the package's own; loaded once, at the first call. `now`: a clock in seconds. */
export function solverLoader(load: () => Promise<Highs>, now?: () => number): LoadSolver {
  let solver: Promise<LinearSolver> | null = null;
  return () => {
    solver ??= load().then((highs) => linearSolver(highs, now));
    // A failed load may be tried again.
    solver.catch(() => {
      solver = null;
    });
    return solver;
  };
}

/** HiGHS behind the plain interface. */
export function linearSolver(highs: Highs, now?: () => number): LinearSolver {
  return {
    now,
    name: `HiGHS ${highs.version.string}`,
    withModel: (model, work) =>
      highs.withModel(dataOf(highs, model), (native) => work(new OpenHighs(highs, native, model.cost.length))),
  };
}

function dataOf(highs: Highs, model: LinearModel): ModelData {
  const { rows } = model;
  return {
    numCols: model.cost.length,
    numRows: rows.lower.length,
    sense: model.maximize ? highs.constants.objectiveSense.maximize : highs.constants.objectiveSense.minimize,
    colCost: model.cost,
    colLower: model.columnLower,
    colUpper: model.columnUpper,
    rowLower: rows.lower,
    rowUpper: rows.upper,
    matrix: {
      format: 'csr',
      numRows: rows.lower.length,
      numCols: model.cost.length,
      starts: rows.starts,
      indices: rows.columns,
      values: rows.values,
    },
  };
}

class OpenHighs implements OpenModel {
  private readonly highs: Highs;
  private readonly model: Model;
  private readonly columns: number;
  private whole = false;

  constructor(highs: Highs, model: Model, columns: number) {
    this.highs = highs;
    this.model = model;
    this.columns = columns;
    model.options.set({ output_flag: false, random_seed: 0 });
  }

  addRows(rows: LinearRows): void {
    this.model.addRows({
      lower: rows.lower,
      upper: rows.upper,
      matrix: {
        format: 'csr',
        numRows: rows.lower.length,
        numCols: this.columns,
        starts: rows.starts,
        indices: rows.columns,
        values: rows.values,
      },
    });
  }

  setColumnUpper(columns: Int32Array, upper: Float64Array): void {
    this.model.changeColsBounds({ kind: 'set', indices: columns }, new Float64Array(columns.length), upper);
  }

  solve(options: SolveOptions = {}): SolveAnswer {
    const { model } = this;
    this.prepare(options);
    let ended: SolveEnd | null = null;
    const types = this.highs.constants.callbackType;
    const look = (event: { interrupt(): void }, steps: number) => {
      if (options.shouldStop?.()) ended = 'stopped';
      else if (steps > (options.steps ?? Infinity)) ended = 'steps';
      if (ended) event.interrupt();
      return undefined;
    };
    const before = model.getRunTime();
    const { modelStatus } = model.run({
      [types.simplexInterrupt]: (event) =>
        options.whole ? undefined : look(event, event.data.simplex_iteration_count ?? 0),
      [types.mipInterrupt]: (event) => look(event, Number(event.data.mip_total_lp_iterations ?? 0)),
    });
    return this.answer(options, ended ?? this.endOf(modelStatus), model.getRunTime() - before);
  }

  private prepare(options: SolveOptions): void {
    const { model } = this;
    const whole = options.whole ?? false;
    if (whole !== this.whole) {
      const { integer, continuous } = this.highs.constants.variableType;
      const all = Int32Array.from({ length: this.columns }, (_, k) => k);
      model.changeColsIntegrality(
        { kind: 'set', indices: all },
        new Int32Array(this.columns).fill(whole ? integer : continuous),
      );
      this.whole = whole;
    }
    model.zeroAllClocks();
    model.options.set({ time_limit: options.seconds ?? 1e9, mip_rel_gap: options.gap ?? 0, mip_abs_gap: 1e-6 });
    if (options.start) model.setSolution({ colValue: options.start });
  }

  private endOf(status: number): SolveEnd {
    const known = this.highs.constants.modelStatus;
    if (status === known.optimal) return 'optimal';
    if (status === known.infeasible) return 'infeasible';
    return status === known.timeLimit ? 'clock' : 'failed';
  }

  private answer(options: SolveOptions, end: SolveEnd, seconds: number): SolveAnswer {
    const { model } = this;
    const feasible = model.info.get('primal_solution_status') === 2;
    const solution = feasible || !options.whole ? model.getSolution() : null;
    const done = end === 'optimal';
    const bound = options.whole ? Number(model.info.get('mip_dual_bound')) : done ? model.getObjectiveValue() : null;
    return {
      end,
      value: feasible ? model.getObjectiveValue() : null,
      x: feasible ? solution!.colValue : null,
      bound: bound !== null && Number.isFinite(bound) && Math.abs(bound) < 1e20 ? bound : null,
      reducedCost: !options.whole && done ? solution!.colDual : null,
      seconds,
    };
  }
}
