/** Which of many straight edges may touch each other: a grid search that names each pair once. */

/** Edges laid end to end: ax, ay, bx, by of edge i stand at 4i … 4i + 3. Metres. */
export type Edges = Float64Array;

interface Cells {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly columns: number;
  readonly rows: number;
}

/** Cells about as large as the edges are long and as their spacing asks: never more than a few per edge. */
function cellsFor(edges: Edges, count: number, slack: number): Cells {
  let [x0, y0, x1, y1, length] = [Infinity, Infinity, -Infinity, -Infinity, 0];
  for (let i = 0; i < 4 * count; i += 4) {
    const ax = edges[i]!;
    const ay = edges[i + 1]!;
    const bx = edges[i + 2]!;
    const by = edges[i + 3]!;
    x0 = Math.min(x0, ax, bx);
    x1 = Math.max(x1, ax, bx);
    y0 = Math.min(y0, ay, by);
    y1 = Math.max(y1, ay, by);
    length += Math.abs(bx - ax) + Math.abs(by - ay);
  }
  const [width, height] = [x1 - x0 + 2 * slack, y1 - y0 + 2 * slack];
  const size = Math.max(
    Math.sqrt((width * height) / count),
    length / (2 * count),
    Math.max(width, height) / count,
    1e-6,
  );
  const [columns, rows] = [Math.floor(width / size) + 1, Math.floor(height / size) + 1];
  return { x: x0 - slack, y: y0 - slack, size, columns, rows };
}

const clampIndex = (value: number, count: number): number => (value < 0 ? 0 : value >= count ? count - 1 : value);

/** The cells each edge (widened by `slack`) runs through: edge i's are `list[first[i]] … list[first[i + 1] - 1]`. */
function cellsOfEdges(
  edges: Edges,
  count: number,
  slack: number,
  cells: Cells,
): { first: Int32Array; list: Int32Array } {
  const first = new Int32Array(count + 1);
  let list = new Int32Array(4 * count + 16);
  let used = 0;
  for (let i = 0; i < count; i++) {
    const ax = edges[4 * i]!;
    const ay = edges[4 * i + 1]!;
    const bx = edges[4 * i + 2]!;
    const by = edges[4 * i + 3]!;
    const slope = by === ay ? 0 : (bx - ax) / (by - ay);
    const low = Math.min(ay, by);
    const high = Math.max(ay, by);
    const west = Math.min(ax, bx);
    const east = Math.max(ax, bx);
    const row0 = clampIndex(Math.floor((low - slack - cells.y) / cells.size), cells.rows);
    const row1 = clampIndex(Math.floor((high + slack - cells.y) / cells.size), cells.rows);
    for (let row = row0; row <= row1; row++) {
      let from = west;
      let to = east;
      if (row0 !== row1 && by !== ay) {
        const bottom = Math.max(low, cells.y + row * cells.size - slack);
        const top = Math.min(high, cells.y + (row + 1) * cells.size + slack);
        const xb = ax + (bottom - ay) * slope;
        const xt = ax + (top - ay) * slope;
        from = Math.max(west, Math.min(xb, xt));
        to = Math.min(east, Math.max(xb, xt));
      }
      const column0 = clampIndex(Math.floor((from - 2 * slack - cells.x) / cells.size), cells.columns);
      const column1 = clampIndex(Math.floor((to + 2 * slack - cells.x) / cells.size), cells.columns);
      if (used + column1 - column0 + 1 > list.length) {
        const grown = new Int32Array(2 * (list.length + column1 - column0 + 1));
        grown.set(list);
        list = grown;
      }
      for (let column = column0; column <= column1; column++) list[used++] = row * cells.columns + column;
    }
    first[i + 1] = used;
  }
  return { first, list };
}

/** Members sorted by cell, in rising order within a cell. */
function edgesOfCells(
  first: Int32Array,
  list: Int32Array,
  cellCount: number,
): { start: Int32Array; member: Int32Array } {
  const count = first.length - 1;
  const used = first[count]!;
  const start = new Int32Array(cellCount + 1);
  for (let k = 0; k < used; k++) start[list[k]! + 1]!++;
  for (let c = 0; c < cellCount; c++) start[c + 1]! += start[c]!;
  const next = start.slice(0, cellCount);
  const member = new Int32Array(used);
  for (let i = 0; i < count; i++) for (let k = first[i]!; k < first[i + 1]!; k++) member[next[list[k]!]!++] = i;
  return { start, member };
}

/** Do the boxes around two edges come within `slack` of each other? `i` and `j` are places in the array (4 × the edge). */
function boxesMeet(e: Edges, i: number, j: number, slack: number): boolean {
  return (
    Math.max(e[i]!, e[i + 2]!) + slack >= Math.min(e[j]!, e[j + 2]!) &&
    Math.max(e[j]!, e[j + 2]!) + slack >= Math.min(e[i]!, e[i + 2]!) &&
    Math.max(e[i + 1]!, e[i + 3]!) + slack >= Math.min(e[j + 1]!, e[j + 3]!) &&
    Math.max(e[j + 1]!, e[j + 3]!) + slack >= Math.min(e[i + 1]!, e[i + 3]!)
  );
}

/**
 * Calls `visit(i, j)`, i < j, once for every pair of edges whose boxes come within `slack` metres of each other and that share a
 * cell. Stops early when `visit` returns true. Edges must be finite.
 */
export function forEachEdgePair(edges: Edges, slack: number, visit: (i: number, j: number) => boolean): void {
  const count = edges.length >> 2;
  if (count < 2) return;
  const cells = cellsFor(edges, count, slack);
  const { first, list } = cellsOfEdges(edges, count, slack, cells);
  const { start, member } = edgesOfCells(first, list, cells.columns * cells.rows);
  const seen = new Int32Array(count).fill(-1);
  for (let i = 0; i < count; i++) {
    for (let k = first[i]!; k < first[i + 1]!; k++) {
      const cell = list[k]!;
      for (let m = start[cell + 1]! - 1; m >= start[cell]!; m--) {
        const j = member[m]!;
        if (j <= i) break;
        if (seen[j] === i) continue;
        seen[j] = i;
        if (boxesMeet(edges, 4 * i, 4 * j, slack) && visit(i, j)) return;
      }
    }
  }
}
