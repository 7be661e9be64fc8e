/** Edges in square cells: which of them a straight walk meets, and where. */
import type { Point } from '../geometry/point.ts';

/** Edges are cut so that none is longer than this many cells. */
const longest = 4;
const mostCells = 1 << 20;

export class EdgeGrid {
  readonly count: number;
  private readonly ends: Float64Array;
  private readonly minX: number;
  private readonly minY: number;
  private readonly cell: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly starts: Int32Array;
  private readonly members: Int32Array;
  private readonly seen: Uint32Array;
  private stamp = 0;
  /** West and east end of a walk within a row. */
  private readonly span = new Float64Array(2);

  /** Paths of x, y alternating; rings unless `open`. */
  constructor(paths: readonly Float64Array[], cell: number, open = false) {
    const ends = piecesOf(paths, cell * longest, open);
    this.ends = ends;
    this.count = ends.length / 4;
    let [minX, minY, maxX, maxY] = this.count > 0 ? [Infinity, Infinity, -Infinity, -Infinity] : [0, 0, 0, 0];
    for (let k = 0; k < ends.length; k += 2) {
      minX = Math.min(minX, ends[k]);
      maxX = Math.max(maxX, ends[k]);
      minY = Math.min(minY, ends[k + 1]);
      maxY = Math.max(maxY, ends[k + 1]);
    }
    let size = cell;
    while (((maxX - minX) / size + 1) * ((maxY - minY) / size + 1) > mostCells) size *= 1.5;
    this.cell = size;
    this.minX = minX;
    this.minY = minY;
    this.columns = Math.floor((maxX - minX) / size) + 1;
    this.rows = Math.floor((maxY - minY) / size) + 1;
    this.starts = new Int32Array(this.columns * this.rows + 1);
    this.forEachCell((c) => this.starts[c + 1]++);
    for (let c = 0; c < this.columns * this.rows; c++) this.starts[c + 1] += this.starts[c];
    const next = this.starts.slice();
    this.members = new Int32Array(this.starts[this.columns * this.rows]);
    this.forEachCell((c, e) => {
      this.members[next[c]++] = e;
    });
    this.seen = new Uint32Array(this.count);
  }

  /** Every cell that the box of an edge meets. */
  private forEachCell(visit: (cell: number, edge: number) => void): void {
    const { ends } = this;
    for (let e = 0; e < this.count; e++) {
      const [ax, ay, bx, by] = ends.subarray(4 * e, 4 * e + 4);
      const toRow = this.row(Math.max(ay, by));
      const toColumn = this.column(Math.max(ax, bx));
      for (let r = this.row(Math.min(ay, by)); r <= toRow; r++) {
        for (let c = this.column(Math.min(ax, bx)); c <= toColumn; c++) visit(r * this.columns + c, e);
      }
    }
  }

  private column(x: number): number {
    return Math.max(0, Math.min(this.columns - 1, Math.floor((x - this.minX) / this.cell)));
  }

  private row(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.minY) / this.cell)));
  }

  /** Whether any edge's box comes into the square of half-width `reach` around x, y. */
  near(x: number, y: number, reach: number): boolean {
    if (this.count === 0) return false;
    const width = this.columns * this.cell;
    const height = this.rows * this.cell;
    if (
      x + reach < this.minX ||
      y + reach < this.minY ||
      x - reach > this.minX + width ||
      y - reach > this.minY + height
    )
      return false;
    for (let r = this.row(y - reach); r <= this.row(y + reach); r++) {
      const from = this.starts[r * this.columns + this.column(x - reach)];
      if (this.starts[r * this.columns + this.column(x + reach) + 1] > from) return true;
    }
    return false;
  }

  /** Shares of the way from a to b at which an edge is met; for an edge along the way, both its ends. */
  meetings(ax: number, ay: number, bx: number, by: number, into: number[]): void {
    if (this.count === 0) return;
    this.stamp++;
    const toRow = this.row(Math.max(ay, by));
    for (let r = this.row(Math.min(ay, by)); r <= toRow; r++) {
      // The stretch of the walk inside this row of cells, a little widened for rounding.
      const { span } = this;
      stretch(ax, ay, bx, by, this.minY + r * this.cell, this.cell, r === 0, r === this.rows - 1, span);
      const margin = this.cell * 1e-6;
      const from = this.starts[r * this.columns + this.column(span[0] - margin)];
      const to = this.starts[r * this.columns + this.column(span[1] + margin) + 1];
      for (let k = from; k < to; k++) {
        const e = this.members[k];
        if (this.seen[e] === this.stamp) continue;
        this.seen[e] = this.stamp;
        meet(this.ends, 4 * e, ax, ay, bx, by, into);
      }
    }
  }

  /** Corners inside the triangle, its rim counted in. */
  cornersIn(a: Point, b: Point, c: Point): Point[] {
    const found: Point[] = [];
    if (this.count === 0) return found;
    const turn = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    if (Math.abs(turn) < 1e-12) return found;
    const [q, r] = turn > 0 ? [b, c] : [c, b];
    this.stamp++;
    const toRow = this.row(Math.max(a.y, b.y, c.y));
    const columns = [this.column(Math.min(a.x, b.x, c.x)), this.column(Math.max(a.x, b.x, c.x))];
    for (let row = this.row(Math.min(a.y, b.y, c.y)); row <= toRow; row++) {
      const to = this.starts[row * this.columns + columns[1] + 1];
      for (let k = this.starts[row * this.columns + columns[0]]; k < to; k++) {
        const e = this.members[k];
        if (this.seen[e] === this.stamp) continue;
        this.seen[e] = this.stamp;
        for (let end = 0; end < 4; end += 2) {
          const p = { x: this.ends[4 * e + end], y: this.ends[4 * e + end + 1] };
          if (leftOf(a, q, p) && leftOf(q, r, p) && leftOf(r, a, p)) found.push(p);
        }
      }
    }
    return found;
  }
}

function leftOf(a: Point, b: Point, p: Point): boolean {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) >= -1e-9;
}

/** Writes the west and east end of the part of a–b in the row of cells that begins at `low`; rows at the rim reach out forever. */
function stretch(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  low: number,
  height: number,
  first: boolean,
  last: boolean,
  into: Float64Array,
): void {
  let s = 0;
  let t = 1;
  const rise = by - ay;
  if (Math.abs(rise) > 1e-12) {
    const margin = height * 1e-6;
    const atLow = first ? (rise > 0 ? -Infinity : Infinity) : (low - margin - ay) / rise;
    const atHigh = last ? (rise > 0 ? Infinity : -Infinity) : (low + height + margin - ay) / rise;
    s = Math.max(0, Math.min(atLow, atHigh));
    t = Math.min(1, Math.max(atLow, atHigh));
  }
  const x0 = ax + s * (bx - ax);
  const x1 = ax + t * (bx - ax);
  into[0] = Math.min(x0, x1);
  into[1] = Math.max(x0, x1);
}

function meet(ends: Float64Array, e: number, ax: number, ay: number, bx: number, by: number, into: number[]): void {
  const dx = bx - ax;
  const dy = by - ay;
  const px = ends[e] - ax;
  const py = ends[e + 1] - ay;
  const ex = ends[e + 2] - ends[e];
  const ey = ends[e + 3] - ends[e + 1];
  const cross = dx * ey - dy * ex;
  const length = dx * dx + dy * dy;
  if (length === 0) return;
  if (Math.abs(cross) <= 1e-12 * Math.sqrt(length * (ex * ex + ey * ey))) {
    // Side by side: on the same line both ends count.
    if (Math.abs(dx * py - dy * px) > 1e-7 * Math.sqrt(length)) return;
    for (const t of [(px * dx + py * dy) / length, ((px + ex) * dx + (py + ey) * dy) / length]) {
      if (t > 0 && t < 1) into.push(t);
    }
    return;
  }
  const t = (px * ey - py * ex) / cross;
  const u = (px * dy - py * dx) / cross;
  if (t > 0 && t < 1 && u >= -1e-9 && u <= 1 + 1e-9) into.push(t);
}

function piecesOf(paths: readonly Float64Array[], most: number, open: boolean): Float64Array {
  const ends: number[] = [];
  for (const path of paths) {
    const n = path.length;
    for (let i = 0; i + (open ? 2 : 0) < n; i += 2) {
      const j = (i + 2) % n;
      const parts = Math.max(
        1,
        Math.min(10_000, Math.ceil(Math.hypot(path[j] - path[i], path[j + 1] - path[i + 1]) / most)),
      );
      for (let k = 0; k < parts; k++) {
        const at = (share: number, d: number) =>
          share === 1 ? path[j + d] : path[i + d] + share * (path[j + d] - path[i + d]);
        ends.push(at(k / parts, 0), at(k / parts, 1), at((k + 1) / parts, 0), at((k + 1) / parts, 1));
      }
    }
  }
  return Float64Array.from(ends);
}
