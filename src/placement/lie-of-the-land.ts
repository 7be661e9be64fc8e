/** The score over the whole site: a coarse picture at once, made finer pass by pass. */
import type { Point } from '../geometry/point.ts';

export interface LandScores {
  /** South-west corner of the first cell; cells run east, then north. */
  readonly origin: Point;
  /** Side of a cell in metres. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** 0–100 by cell, row by row from the south; NaN where no box may stand. */
  readonly values: Float32Array;
  /** Side of the squares of cells that have one value so far: 8, 4, 2, then 1 when finished; 0 before the first pass is done. */
  readonly coarse: number;
}

/** Passes from coarse to fine. */
const passes = [8, 4, 2, 1] as const;

/**
 * Yields after each pass; the array is the same one, filled in further. `score` gives 0–100, or null where no box may stand.
 * With `rest` it also yields after so many places, so that whoever runs it can listen in between: `coarse` is then the side of
 * the pass before, 0 before the first is done.
 */
export function* lieOfTheLand(
  bounds: { readonly min: Point; readonly max: Point },
  score: (p: Point) => number | null,
  mostCells = 20_000,
  rest = Infinity,
): Generator<LandScores, void, void> {
  const width = Math.max(1e-3, bounds.max.x - bounds.min.x);
  const height = Math.max(1e-3, bounds.max.y - bounds.min.y);
  const cell = Math.max(1, Math.sqrt((width * height) / mostCells), Math.max(width, height) / mostCells);
  const columns = Math.max(1, Math.ceil(width / cell));
  const rows = Math.max(1, Math.ceil(height / cell));
  const values = new Float32Array(columns * rows).fill(Number.NaN);
  let coarse = 0;
  let asked = 0;
  for (const side of passes) {
    for (let r = 0; r < rows; r += side) {
      for (let c = 0; c < columns; c += side) {
        const known = side < passes[0] && r % (2 * side) === 0 && c % (2 * side) === 0;
        const at = { x: bounds.min.x + (c + 0.5) * cell, y: bounds.min.y + (r + 0.5) * cell };
        const value = known ? values[r * columns + c] : (score(at) ?? Number.NaN);
        fill(values, columns, rows, r, c, side, value);
        asked += known ? 0 : 1;
        if (!known && asked % rest === 0) yield { origin: bounds.min, cell, columns, rows, values, coarse };
      }
    }
    coarse = side;
    yield { origin: bounds.min, cell, columns, rows, values, coarse };
  }
}

function fill(
  values: Float32Array,
  columns: number,
  rows: number,
  row: number,
  column: number,
  side: number,
  value: number,
): void {
  for (let r = row; r < Math.min(rows, row + side); r++) {
    values.fill(value, r * columns + column, r * columns + Math.min(columns, column + side));
  }
}
