/** A set of areas that answers quickly whether a point lies inside any of them. */

/** Rows an area's edges are sorted into, at most. */
const mostRows = 512;

interface Area {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
  readonly rows: number;
  /** Edges by row: `edges[starts[r]]` up to `edges[starts[r + 1]]`, each four numbers of `ends`. */
  readonly starts: Int32Array;
  readonly edges: Int32Array;
  readonly ends: Float64Array;
}

export class Region {
  private readonly areas: Area[];
  private readonly cell: number;
  private readonly minX: number;
  private readonly minY: number;
  private readonly columns: number;
  private readonly rowCount: number;
  /** Areas whose box meets a cell. */
  private readonly cells: number[][];

  /** Each area is a list of rings, x and y alternating, without the closing point; holes count by the even–odd rule. */
  constructor(areas: readonly (readonly Float64Array[])[]) {
    this.areas = areas.map(areaOf).filter((area) => area.ends.length > 0);
    const side = Math.max(1, Math.ceil(Math.sqrt(this.areas.length)));
    const least = (of: (area: Area) => number) => this.areas.reduce((low, area) => Math.min(low, of(area)), Infinity);
    const none = this.areas.length === 0;
    this.minX = none ? 0 : least((a) => a.minX);
    this.minY = none ? 0 : least((a) => a.minY);
    const width = none ? 0 : -least((a) => -a.maxX) - this.minX;
    const height = none ? 0 : -least((a) => -a.maxY) - this.minY;
    this.cell = Math.max(width, height, 1e-9) / side;
    this.columns = Math.floor(width / this.cell) + 1;
    this.rowCount = Math.floor(height / this.cell) + 1;
    this.cells = Array.from({ length: this.columns * this.rowCount }, () => []);
    this.areas.forEach((area, k) => {
      for (let r = this.row(area.minY); r <= this.row(area.maxY); r++) {
        for (let c = this.column(area.minX); c <= this.column(area.maxX); c++) this.cells[r * this.columns + c].push(k);
      }
    });
  }

  private column(x: number): number {
    return Math.floor((x - this.minX) / this.cell);
  }

  private row(y: number): number {
    return Math.floor((y - this.minY) / this.cell);
  }

  contains(x: number, y: number): boolean {
    if (this.areas.length === 0) return false;
    const c = this.column(x);
    const r = this.row(y);
    if (!(c >= 0 && r >= 0 && c < this.columns && r < this.rowCount)) return false;
    return this.cells[r * this.columns + c].some((k) => areaContains(this.areas[k], x, y));
  }
}

function areaContains(area: Area, x: number, y: number): boolean {
  if (x < area.minX || x > area.maxX || y < area.minY || y > area.maxY) return false;
  const row = rowOf(area, y);
  let inside = false;
  for (let k = area.starts[row]; k < area.starts[row + 1]; k++) {
    const e = area.edges[k] * 4;
    const ay = area.ends[e + 1];
    const by = area.ends[e + 3];
    if (ay > y === by > y) continue;
    const ax = area.ends[e];
    if (x < ax + ((y - ay) / (by - ay)) * (area.ends[e + 2] - ax)) inside = !inside;
  }
  return inside;
}

function rowOf(area: Pick<Area, 'minY' | 'maxY' | 'rows'>, y: number): number {
  const share = (y - area.minY) / (area.maxY - area.minY || 1);
  return Math.max(0, Math.min(area.rows - 1, Math.floor(share * area.rows)));
}

function areaOf(rings: readonly Float64Array[]): Area {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const ends = new Float64Array(count * 4);
  let box = { minX: Infinity, maxX: -Infinity, minY: Infinity, maxY: -Infinity };
  let e = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      ends.set([ring[i], ring[i + 1], ring[j], ring[j + 1]], 4 * e++);
      box = {
        minX: Math.min(box.minX, ring[i]),
        maxX: Math.max(box.maxX, ring[i]),
        minY: Math.min(box.minY, ring[i + 1]),
        maxY: Math.max(box.maxY, ring[i + 1]),
      };
    }
  }
  const shape = { ...box, rows: Math.max(1, Math.min(mostRows, count >> 2)) };
  const span = (k: number) => {
    const [p, q] = [rowOf(shape, ends[4 * k + 1]), rowOf(shape, ends[4 * k + 3])];
    return p <= q ? [p, q] : [q, p];
  };
  const starts = new Int32Array(shape.rows + 1);
  for (let k = 0; k < count; k++) for (let [r, to] = span(k); r <= to; r++) starts[r + 1]++;
  for (let r = 0; r < shape.rows; r++) starts[r + 1] += starts[r];
  const next = starts.slice();
  const edges = new Int32Array(starts[shape.rows]);
  for (let k = 0; k < count; k++) for (let [r, to] = span(k); r <= to; r++) edges[next[r]++] = k;
  return { ...shape, starts, edges, ends };
}
