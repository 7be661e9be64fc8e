/** Points that lie closer together than a tolerance become one: the first met keeps its coordinates. */
export class VertexTable {
  /** Coordinates of vertex i in metres; the arrays are longer than `count`. */
  x: Float64Array;
  y: Float64Array;
  count = 0;
  private readonly tolerance: number;
  private readonly cell: number;
  private slots: Int32Array;
  private next: Int32Array;

  constructor(tolerance: number, expected: number) {
    this.tolerance = tolerance;
    this.cell = 8 * tolerance;
    const room = Math.max(16, expected);
    this.x = new Float64Array(room);
    this.y = new Float64Array(room);
    this.next = new Int32Array(room);
    this.slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * room))).fill(-1);
  }

  /** Number of the vertex at (x, y), which is a new one unless one lies within the tolerance. */
  add(x: number, y: number): number {
    const { cell, tolerance } = this;
    const column0 = Math.floor((x - tolerance) / cell);
    const column1 = Math.floor((x + tolerance) / cell);
    const row0 = Math.floor((y - tolerance) / cell);
    const row1 = Math.floor((y + tolerance) / cell);
    for (let column = column0; column <= column1; column++) {
      for (let row = row0; row <= row1; row++) {
        const found = this.find(this.slot(column, row), x, y);
        if (found >= 0) return found;
      }
    }
    return this.append(x, y);
  }

  private slot(column: number, row: number): number {
    const mixed = Math.imul(column, 73856093) ^ Math.imul(row, 19349663);
    return (mixed ^ (mixed >>> 15)) & (this.slots.length - 1);
  }

  private find(slot: number, x: number, y: number): number {
    const square = this.tolerance * this.tolerance;
    for (let v = this.slots[slot]!; v >= 0; v = this.next[v]!) {
      const dx = this.x[v]! - x;
      const dy = this.y[v]! - y;
      if (dx * dx + dy * dy <= square) return v;
    }
    return -1;
  }

  private append(x: number, y: number): number {
    if (this.count === this.x.length) this.grow();
    const vertex = this.count++;
    this.x[vertex] = x;
    this.y[vertex] = y;
    this.link(vertex);
    return vertex;
  }

  private link(vertex: number): void {
    const slot = this.slot(Math.floor(this.x[vertex]! / this.cell), Math.floor(this.y[vertex]! / this.cell));
    this.next[vertex] = this.slots[slot]!;
    this.slots[slot] = vertex;
  }

  private grow(): void {
    const room = 2 * this.x.length;
    const widen = (from: Float64Array): Float64Array => {
      const to = new Float64Array(room);
      to.set(from);
      return to;
    };
    this.x = widen(this.x);
    this.y = widen(this.y);
    this.next = new Int32Array(room);
    this.slots = new Int32Array(2 * this.slots.length).fill(-1);
    for (let v = 0; v < this.count; v++) this.link(v);
  }
}
