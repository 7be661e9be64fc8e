/** Black-and-white grids: opening and closing, and which cells lie inside an outline. */

/** A grid of 0 and 1, row by row. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly cells: Uint8Array;
}

/** Holes and gaps up to about twice `reach` cells wide are filled (dilation, then erosion). */
export function closed(mask: Mask, reach: number): Mask {
  // With empty ground around it, so that what grows to the edge is taken back there too.
  const wide = framed(mask, 2 * reach);
  return framed(grown(grown(wide, reach, 1), reach, 0), -2 * reach);
}

/** The mask with `cells` empty cells more on each side, or fewer. */
function framed(mask: Mask, cells: number): Mask {
  if (cells === 0) return mask;
  const width = mask.width + 2 * cells;
  const height = mask.height + 2 * cells;
  const out = new Uint8Array(width * height);
  for (let row = Math.max(0, -cells); row < mask.height + Math.min(0, cells); row++) {
    const from = row * mask.width + Math.max(0, -cells);
    const line = mask.cells.subarray(from, from + Math.min(width, mask.width));
    out.set(line, (row + cells) * width + Math.max(0, cells));
  }
  return { width, height, cells: out };
}

/** Specks and spurs up to about twice `reach` cells wide are taken away (erosion, then dilation). */
export function opened(mask: Mask, reach: number): Mask {
  return grown(grown(mask, reach, 0), reach, 1);
}

/** Spreads `value` by `reach` cells along rows, then along columns (a square). Outside the grid counts as the other value. */
function grown(mask: Mask, reach: number, value: 0 | 1): Mask {
  if (reach < 1) return mask;
  const { width, height } = mask;
  const rows = spread(mask.cells, width, height, 1, width, reach, value);
  return { width, height, cells: spread(rows, height, width, width, 1, reach, value) };
}

/** One direction: `length` cells a line `step` apart, `lines` lines `lineStep` apart. */
function spread(
  cells: Uint8Array,
  length: number,
  lines: number,
  step: number,
  lineStep: number,
  reach: number,
  value: 0 | 1,
): Uint8Array {
  const out = new Uint8Array(cells.length).fill(1 - value);
  for (let line = 0; line < lines; line++) {
    let last = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < length + reach; i++) {
      if (i < length && cells[line * lineStep + i * step] === value) last = i;
      const at = i - reach;
      if (at >= 0 && last >= at - reach) out[line * lineStep + at * step] = value;
    }
  }
  return out;
}

/** Visits every cell whose middle lies inside rings given in cells (even-odd rule), row by row. */
export function eachCellInside(
  rings: readonly (readonly (readonly number[])[])[],
  size: { readonly width: number; readonly height: number },
  visit: (index: number) => void,
): void {
  const rows = new Map<number, number[]>();
  for (const ring of rings) for (let i = 1; i < ring.length; i++) crossRows(ring[i - 1]!, ring[i]!, size.height, rows);
  for (const [row, crossings] of rows) {
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const from = Math.max(0, Math.ceil(crossings[i]! - 0.5));
      const to = Math.min(size.width - 1, Math.ceil(crossings[i + 1]! - 0.5) - 1);
      for (let column = from; column <= to; column++) visit(row * size.width + column);
    }
  }
}

function crossRows(a: readonly number[], b: readonly number[], height: number, rows: Map<number, number[]>): void {
  const [low, high] = a[1]! < b[1]! ? [a, b] : [b, a];
  for (let row = Math.max(0, Math.ceil(low[1]! - 0.5)); row < height && row + 0.5 < high[1]!; row++) {
    const x = low[0]! + ((row + 0.5 - low[1]!) * (high[0]! - low[0]!)) / (high[1]! - low[1]!);
    const list = rows.get(row);
    if (list) list.push(x);
    else rows.set(row, [x]);
  }
}
