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
  let x0 = Infinity;
  let y0 = Infinity;
  let x1 = -Infinity;
  let y1 = -Infinity;
  let length = 0;
  for (let i = 0; i < ends.length; i += 4) {
    const ax = ends[i]!;
    const ay = ends[i + 1]!;
    const bx = ends[i + 2]!;
    const by = ends[i + 3]!;
    x0 = Math.min(x0, ax, bx);
    x1 = Math.max(x1, ax, bx);
    y0 = Math.min(y0, ay, by);
    y1 = Math.max(y1, ay, by);
    length += Math.abs(bx - ax) + Math.abs(by - ay);
  }
  const [width, height] = [x1 - x0, y1 - y0];
  const room = (ends.length >> 2) + 200;
  const cell = Math.max(
    Math.sqrt((width * height * 5) / room),
    length / room,
    Math.max(width, height) / Math.min(room, 4000),
    0.01,
  );
  return { x: x0, y: y0, cell, columns: Math.floor(width / cell) + 1, rows: Math.floor(height / cell) + 1 };
}

const clamp = (value: number, count: number): number => (value < 0 ? 0 : value >= count ? count - 1 : value);

/** How many parts each piece is cut into. */
function partsOf(ends: Float64Array, cell: number): Int32Array {
  const parts = new Int32Array(ends.length >> 2);
  for (let i = 0; i < parts.length; i++) {
    const dx = ends[4 * i + 2]! - ends[4 * i]!;
    const dy = ends[4 * i + 3]! - ends[4 * i + 1]!;
    parts[i] = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / (cell / 2)));
  }
  return parts;
}

/** All parts one after the other, in the order of their pieces. */
function cut(ends: Float64Array, parts: Int32Array): { ends: Float64Array; piece: Int32Array } {
  const total = parts.reduce((sum, count) => sum + count, 0);
  const all = new Float64Array(4 * total);
  const piece = new Int32Array(total);
  let k = 0;
  for (let i = 0; i < parts.length; i++) {
    const ax = ends[4 * i]!;
    const ay = ends[4 * i + 1]!;
    const bx = ends[4 * i + 2]!;
    const by = ends[4 * i + 3]!;
    const count = parts[i]!;
    for (let part = 0; part < count; part++, k++) {
      piece[k] = i;
      all[4 * k] = part === 0 ? ax : all[4 * k - 2]!;
      all[4 * k + 1] = part === 0 ? ay : all[4 * k - 1]!;
      all[4 * k + 2] = part + 1 === count ? bx : ax + ((bx - ax) * (part + 1)) / count;
      all[4 * k + 3] = part + 1 === count ? by : ay + ((by - ay) * (part + 1)) / count;
    }
  }
  return { ends: all, piece };
}

/** King's-move distance to the nearest cell with anything in it, by two passes over the cells. */
function gaps(start: Int32Array, columns: number, rows: number): Uint16Array {
  // A margin of one cell all around spares the border cases.
  const wide = columns + 2;
  const far = 60000;
  const gap = new Uint16Array(wide * (rows + 2)).fill(far);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const c = row * columns + column;
      const g = (row + 1) * wide + column + 1;
      if (start[c]! < start[c + 1]!) gap[g] = 0;
      else gap[g] = 1 + Math.min(gap[g - 1]!, gap[g - wide - 1]!, gap[g - wide]!, gap[g - wide + 1]!);
      if (gap[g]! > far) gap[g] = far;
    }
  }
  const inner = new Uint16Array(columns * rows);
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const g = (row + 1) * wide + column + 1;
      const near = 1 + Math.min(gap[g + 1]!, gap[g + wide - 1]!, gap[g + wide]!, gap[g + wide + 1]!);
      if (near < gap[g]!) gap[g] = near;
      inner[row * columns + column] = gap[g]!;
    }
  }
  return inner;
}

/** Sorts pieces (ax, ay, bx, by each; a single place has a = b) into a grid; null when there are none. */
export function makeGrid(ends: Float64Array): Grid | null {
  if (ends.length === 0) return null;
  const { x, y, cell, columns, rows } = frameOf(ends);
  const parts = cut(ends, partsOf(ends, cell));
  const total = parts.piece.length;
  const home = new Int32Array(total);
  const start = new Int32Array(columns * rows + 1);
  for (let k = 0; k < total; k++) {
    const column = Math.floor(((parts.ends[4 * k]! + parts.ends[4 * k + 2]!) / 2 - x) / cell);
    const row = Math.floor(((parts.ends[4 * k + 1]! + parts.ends[4 * k + 3]!) / 2 - y) / cell);
    home[k] = clamp(row, rows) * columns + clamp(column, columns);
    start[home[k]! + 1]!++;
  }
  for (let c = 0; c < columns * rows; c++) start[c + 1]! += start[c]!;
  const next = start.slice(0, columns * rows);
  const sorted = new Float64Array(4 * total);
  const piece = new Int32Array(total);
  for (let k = 0; k < total; k++) {
    const to = next[home[k]!]!++;
    piece[to] = parts.piece[k]!;
    for (let m = 0; m < 4; m++) sorted[4 * to + m] = parts.ends[4 * k + m]!;
  }
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
  const west = Math.max(0, column - ring);
  const east = Math.min(columns - 1, column + ring);
  const south = Math.max(0, row - ring);
  const north = Math.min(rows - 1, row + ring);
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
