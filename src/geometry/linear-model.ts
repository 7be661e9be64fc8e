/** Linear and whole-number programs as data, and what a solver of them must do. The solver itself is passed in by app and command line. */

/** Rows in compressed form: row r holds `columns[starts[r]]` up to `columns[starts[r + 1]]`. */
export interface LinearRows {
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/** Maximize or minimize `cost · x` with `columnLower ≤ x ≤ columnUpper` and each row between its bounds. */
export interface LinearModel {
  readonly maximize: boolean;
  readonly cost: Float64Array;
  readonly columnLower: Float64Array;
  readonly columnUpper: Float64Array;
  readonly rows: LinearRows;
}

export interface SolveOptions {
  /** All columns whole numbers. */
  readonly whole?: boolean;
  /** A feasible answer to begin from (whole-number solves). */
  readonly start?: Float64Array;
  /** Seconds before the solver's own clock ends the solve. */
  readonly seconds?: number;
  /** Simplex steps before the solve is ended: the same on every machine, unlike seconds. Looked at between nodes (whole-number solves). */
  readonly steps?: number;
  /** Relative gap at which a whole-number solve may stop; 0 unless given. */
  readonly gap?: number;
  readonly shouldStop?: () => boolean;
}

/** Why a solve ended. `bound` and `x` may still be useful after a limit. */
export type SolveEnd = 'optimal' | 'infeasible' | 'steps' | 'clock' | 'stopped' | 'failed';

export interface SolveAnswer {
  readonly end: SolveEnd;
  /** Value of `x`; null when there is no answer. */
  readonly value: number | null;
  readonly x: Float64Array | null;
  /** Proven limit on the value; null when nothing is proven. */
  readonly bound: number | null;
  /** Reduced cost of each column and price of each row (continuous solves that end optimal). */
  readonly reducedCost: Float64Array | null;
  readonly seconds: number;
}

/** A model kept in the solver, so that rows can be added and the next solve starts from the last. */
export interface OpenModel {
  addRows(rows: LinearRows): void;
  /** New upper bounds of columns, such as 0 to leave one out. */
  setColumnUpper(columns: Int32Array, upper: Float64Array): void;
  solve(options?: SolveOptions): SolveAnswer;
}

export interface LinearSolver {
  readonly name: string;
  /** Seconds of a running clock, where there is one: for time limits over many solves and the work between them. */
  readonly now?: () => number;
  /** Opens `model`, hands it to `work` and frees it afterwards. */
  withModel<T>(model: LinearModel, work: (open: OpenModel) => T): T;
}

/** How a solver is loaded when it is first needed; rejects when it cannot be. */
export type LoadSolver = () => Promise<LinearSolver>;

/** Rows from lists of columns that all carry `value` 1, between the same two bounds. */
export function onesRows(lists: readonly (readonly number[])[], lower: number, upper: number): LinearRows {
  const starts = new Int32Array(lists.length + 1);
  lists.forEach((list, r) => {
    starts[r + 1] = starts[r] + list.length;
  });
  const columns = new Int32Array(starts[lists.length]);
  lists.forEach((list, r) => {
    columns.set(list, starts[r]);
  });
  return {
    starts,
    columns,
    values: new Float64Array(columns.length).fill(1),
    lower: new Float64Array(lists.length).fill(lower),
    upper: new Float64Array(lists.length).fill(upper),
  };
}

/** One set of rows after the other. */
export function stackRows(...sets: readonly LinearRows[]): LinearRows {
  const entries = sets.reduce((sum, rows) => sum + rows.columns.length, 0);
  const count = sets.reduce((sum, rows) => sum + rows.lower.length, 0);
  const starts = new Int32Array(count + 1);
  const columns = new Int32Array(entries);
  const values = new Float64Array(entries);
  const lower = new Float64Array(count);
  const upper = new Float64Array(count);
  let row = 0;
  let entry = 0;
  for (const rows of sets) {
    columns.set(rows.columns, entry);
    values.set(rows.values, entry);
    lower.set(rows.lower, row);
    upper.set(rows.upper, row);
    for (let r = 0; r < rows.lower.length; r++) starts[row + r + 1] = entry + rows.starts[r + 1];
    entry += rows.columns.length;
    row += rows.lower.length;
  }
  return { starts, columns, values, lower, upper };
}
