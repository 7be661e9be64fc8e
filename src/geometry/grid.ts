/**
 * Straight pieces sorted into square cells for searching. Pieces longer than half a cell are cut, and each part lives in the one cell
 * its middle falls in, so no part is met twice and none reaches farther than `reach` from its middle. Cells run row by row and
 * their parts lie side by side in memory: a run of cells in a row is one run of parts.
 */
export interface Grid {
  /** South-west corner and side of the cells, metres. */
  readonly x: number;
  readonly y: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Parts of cell c (row × columns + column) are start[c] … start[c + 1] − 1. */
  readonly start: Int32Array;
  /** ax, ay, bx, by of part k at 4k … 4k + 3. */
  readonly ends: Float64Array;
  /** Which of the given pieces a part belongs to. */
  readonly piece: Int32Array;
  /** Farthest any place of a part lies from its middle, metres. */
  readonly reach: number;
  /** Cells (king's moves) to the nearest cell that is not empty. */
  readonly gap: Uint16Array;
}

interface Frame {
  x: number;
  y: number;
  cell: number;
  columns: number;
  rows: number;
}

/** About five pieces to a cell, but never so small that cutting multiplies the pieces. */
function frameOf(ends: Float64Array): Frame {
  const count = ends.length >> 2;
  let [x0, y0, x1, y1, length] = [Infinity, Infinity, -Infinity, -Infinity, 0];
  for (let i = 0; i < ends.length; i += 4) {
    const [ax, ay, bx, by] = [ends[i]!, ends[i + 1]!, ends[i + 2]!, ends[i + 3]!];
    x0 = Math.min(x0, ax, bx);
    x1 = Math.max(x1, ax, bx);
    y0 = Math.min(y0, ay, by);
    y1 = Math.max(y1, ay, by);
    length += Math.abs(bx - ax) + Math.abs(by - ay);
  }
  const [width, height] = [x1 - x0, y1 - y0];
  const room = count + 200;
  const cell = Math.max(
    Math.sqrt((width * height * 5) / room),
    (2 * length) / (2 * room),
    Math.max(width, height) / Math.min(room, 4000),
    0.01,
  );
  return { x: x0, y: y0, cell, columns: Math.floor(width / cell) + 1, rows: Math.floor(height / cell) + 1 };
}

const clamp = (value: number, count: number): number => (value < 0 ? 0 : value >= count ? count - 1 : value);

/** How many parts a piece is cut into. */
function partsOf(ends: Float64Array, i: number, cell: number): number {
  const length = Math.hypot(ends[i + 2]! - ends[i]!, ends[i + 3]! - ends[i + 1]!);
  return Math.max(1, Math.ceil(length / (cell / 2)));
}

/** King's-move distance to the nearest cell with anything in it, by two passes over the cells. */
function gaps(start: Int32Array, columns: number, rows: number): Uint16Array {
  const far = 65535;
  const gap = new Uint16Array(columns * rows);
  const at = (row: number, column: number): number =>
    row < 0 || column < 0 || row >= rows || column >= columns ? far : gap[row * columns + column]!;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const c = row * columns + column;
      if (start[c]! < start[c + 1]!) continue;
      const near = Math.min(at(row - 1, column - 1), at(row - 1, column), at(row - 1, column + 1), at(row, column - 1));
      gap[c] = Math.min(far, near + 1);
    }
  }
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const near = Math.min(at(row + 1, column - 1), at(row + 1, column), at(row + 1, column + 1), at(row, column + 1));
      const c = row * columns + column;
      if (near + 1 < gap[c]!) gap[c] = near + 1;
    }
  }
  return gap;
}

/** Sorts pieces (ax, ay, bx, by each; a single place has a = b) into a grid; null when there are none. */
export function makeGrid(ends: Float64Array): Grid | null {
  const count = ends.length >> 2;
  if (count === 0) return null;
  const { x, y, cell, columns, rows } = frameOf(ends);
  const start = new Int32Array(columns * rows + 1);
  const cellOf = (px: number, py: number): number =>
    clamp(Math.floor((py - y) / cell), rows) * columns + clamp(Math.floor((px - x) / cell), columns);
  const eachPart = (visit: (piece: number, ax: number, ay: number, bx: number, by: number) => void): void => {
    for (let i = 0; i < count; i++) {
      const [ax, ay, bx, by] = [ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!];
      const parts = partsOf(ends, 4 * i, cell);
      let [px, py] = [ax, ay];
      for (let part = 1; part <= parts; part++) {
        const [qx, qy] = part === parts ? [bx, by] : [ax + ((bx - ax) * part) / parts, ay + ((by - ay) * part) / parts];
        visit(i, px, py, qx, qy);
        [px, py] = [qx, qy];
      }
    }
  };
  eachPart((_, ax, ay, bx, by) => {
    start[cellOf((ax + bx) / 2, (ay + by) / 2) + 1]!++;
  });
  for (let c = 0; c < columns * rows; c++) start[c + 1]! += start[c]!;
  const total = start[columns * rows]!;
  const next = start.slice(0, columns * rows);
  const sorted = new Float64Array(4 * total);
  const piece = new Int32Array(total);
  eachPart((i, ax, ay, bx, by) => {
    const k = next[cellOf((ax + bx) / 2, (ay + by) / 2)]!++;
    piece[k] = i;
    sorted[4 * k] = ax;
    sorted[4 * k + 1] = ay;
    sorted[4 * k + 2] = bx;
    sorted[4 * k + 3] = by;
  });
  return { x, y, cell, columns, rows, start, ends: sorted, piece, reach: cell / 4, gap: gaps(start, columns, rows) };
}

/** Column of the cell nearest to `px`. */
export function columnAt(grid: Grid, px: number): number {
  return clamp(Math.floor((px - grid.x) / grid.cell), grid.columns);
}

/** Row of the cell nearest to `py`. */
export function rowAt(grid: Grid, py: number): number {
  return clamp(Math.floor((py - grid.y) / grid.cell), grid.rows);
}

/** Farthest ring of cells around (column, row) that still holds cells. */
export function lastRing(grid: Grid, column: number, row: number): number {
  return Math.max(column, grid.columns - 1 - column, row, grid.rows - 1 - row);
}

/**
 * Least distance in metres from (px, py) to any part whose cell lies on ring `ring` or farther around (column, row), which must be the
 * cell nearest to the point.
 */
export function ringDistance(grid: Grid, px: number, py: number, column: number, row: number, ring: number): number {
  if (ring === 0) return 0;
  const { x, y, cell, columns, rows } = grid;
  const qx = px < x ? x : Math.min(px, x + columns * cell);
  const qy = py < y ? y : Math.min(py, y + rows * cell);
  const west = qx - (x + (column - ring + 1) * cell);
  const east = x + (column + ring) * cell - qx;
  const south = qy - (y + (row - ring + 1) * cell);
  const north = y + (row + ring) * cell - qy;
  const near = Math.min(west, east, south, north) - grid.reach;
  return Math.max(near, 0);
}

/** Cells of a ring that hold anything: writes their numbers to `out` and returns how many. `out` needs 8 × ring + 1 places. */
export function ringCells(grid: Grid, column: number, row: number, ring: number, out: Int32Array): number {
  const { columns, rows, start } = grid;
  const [west, east] = [Math.max(0, column - ring), Math.min(columns - 1, column + ring)];
  const [south, north] = [Math.max(0, row - ring), Math.min(rows - 1, row + ring)];
  let count = 0;
  for (let r = south; r <= north; r++) {
    const edge = r === row - ring || r === row + ring;
    const step = edge || ring === 0 ? 1 : 2 * ring;
    for (let c = edge ? west : column - ring; c <= east; c += step) {
      if (c < west) continue;
      const cell = r * columns + c;
      if (start[cell]! < start[cell + 1]!) out[count++] = cell;
    }
  }
  return count;
}
