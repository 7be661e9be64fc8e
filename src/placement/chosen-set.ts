/** The chosen units of a search: who is in, how many of each bird, and who stands in the way of a newcomer. */
import type { Field } from './field.ts';
import { conflict } from './field.ts';
import type { Rivals } from './rivals.ts';

/** Cells of chosen units: a unit looks only into the nine cells around its own. Mutable, owned by one search. */
export class ChosenSet {
  readonly inside: Uint8Array;
  readonly perBird: number[][];
  value = 0;
  /** Weight of the chosen units in conflict with each unit, kept as units come and go: what a newcomer costs, but for rounding. */
  readonly burden: Float64Array;
  /** How many chosen units are in conflict with each unit. */
  readonly crowd: Int32Array;
  /** Filled by `blockers`: units that must leave for the newcomer. */
  readonly blockers: Int32Array;
  blockerCount = 0;
  private readonly field: Field;
  private readonly rivals: Rivals;
  private readonly columns: number;
  private readonly home: Int32Array;
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly place: Int32Array;

  constructor(field: Field, rivals: Rivals, start: Iterable<number>) {
    this.field = field;
    this.rivals = rivals;
    this.burden = new Float64Array(field.count);
    this.crowd = new Int32Array(field.count);
    const { grid, reach } = field;
    const cell = Math.max(reach, grid.cell);
    const width = grid.columns * grid.cell;
    const height = grid.rows * grid.cell;
    // One empty column and row around, so that the nine cells always exist.
    this.columns = Math.floor(width / cell) + 4;
    const rows = Math.floor(height / cell) + 4;
    this.home = new Int32Array(field.count);
    for (let u = 0; u < field.count; u++) {
      const column = Math.floor((field.x[u] - grid.minX) / cell) + 1;
      this.home[u] = (Math.floor((field.y[u] - grid.minY) / cell) + 1) * this.columns + column;
    }
    this.head = new Int32Array(this.columns * rows).fill(-1);
    this.next = new Int32Array(field.count).fill(-1);
    this.place = new Int32Array(field.count);
    this.inside = new Uint8Array(field.count);
    this.blockers = new Int32Array(field.count + 1);
    this.perBird = Array.from({ length: field.birds }, () => []);
    for (const u of start) this.add(u);
  }

  add(u: number): void {
    const { bird, weight } = this.field;
    this.inside[u] = 1;
    this.next[u] = this.head[this.home[u]];
    this.head[this.home[u]] = u;
    this.place[u] = this.perBird[bird[u]].length;
    this.perBird[bird[u]].push(u);
    this.value += weight[u];
    this.tellRivals(u, weight[u], 1);
  }

  private tellRivals(u: number, weight: number, more: number): void {
    const { burden, crowd } = this;
    const rivals = this.rivals.of(u);
    for (let k = 0; k < rivals.length; k++) {
      burden[rivals[k]] += weight;
      crowd[rivals[k]] += more;
    }
  }

  remove(u: number): void {
    const { bird, weight } = this.field;
    this.inside[u] = 0;
    let at = this.head[this.home[u]];
    if (at === u) this.head[this.home[u]] = this.next[u];
    else {
      while (this.next[at] !== u) at = this.next[at];
      this.next[at] = this.next[u];
    }
    const peers = this.perBird[bird[u]];
    const last = peers.pop()!;
    if (last !== u) {
      peers[this.place[u]] = last;
      this.place[last] = this.place[u];
    }
    this.value -= weight[u];
    this.tellRivals(u, -weight[u], -1);
  }

  /** Weight of the chosen units in conflict with `u`, which are left in `blockers`; Infinity as soon as it passes `limit` or one is fixed. */
  findBlockers(u: number, limit: number): number {
    const { field, head, next, blockers, columns } = this;
    let loss = 0;
    this.blockerCount = 0;
    if (this.crowd[u] === 0) return 0;
    const middle = this.home[u];
    for (let row = middle - columns; row <= middle + columns; row += columns) {
      for (let c = row - 1; c <= row + 1; c++) {
        for (let v = head[c]; v >= 0; v = next[v]) {
          if (!conflict(field, u, v)) continue;
          loss += field.weight[v];
          if (loss > limit || field.problem.units[v].fixed) return Infinity;
          blockers[this.blockerCount++] = v;
        }
      }
    }
    return loss;
  }

  /** Indexes of the chosen units. */
  list(): number[] {
    return this.perBird.flat();
  }
}
