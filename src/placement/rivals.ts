/** Who conflicts with whom, found when first asked for and then kept: a search asks only about the units it tries. */
import { conflict, type Field, type Grid, gridOf } from './field.ts';

/** Most conflicts kept, 4 bytes each: beyond it they are found anew each time. */
const mostKept = 16_000_000;

/** The units of one bird in a grid, looked up by the units of another. */
interface Peers {
  readonly units: Int32Array;
  readonly grid: Grid;
  /** No two units of the two birds whose first posts are farther apart than this conflict. */
  readonly reach: number;
}

export class Rivals {
  private readonly field: Field;
  private readonly lists: (Int32Array | undefined)[];
  /** By bird × birds + bird: a bird that keeps far from its own kind may stand beside another. */
  private readonly peers: readonly Peers[];
  private kept = 0;
  private readonly room: Int32Array;

  constructor(field: Field) {
    this.field = field;
    this.lists = new Array(field.count);
    this.room = new Int32Array(field.count);
    this.peers = peersOf(field);
  }

  /** Units in conflict with `u`. */
  of(u: number): Int32Array {
    const known = this.lists[u];
    if (known) return known;
    const found = this.find(u);
    if (this.kept + found.length <= mostKept) {
      this.kept += found.length;
      this.lists[u] = found;
    }
    return found;
  }

  private find(u: number): Int32Array {
    const { field, room, peers } = this;
    let count = 0;
    for (let bird = 0; bird < field.birds; bird++) {
      const { units, grid, reach } = peers[field.bird[u] * field.birds + bird];
      const { cell, minX, minY, columns, rows, starts, members } = grid;
      const row1 = Math.min(rows - 1, Math.floor((field.y[u] + reach - minY) / cell));
      const column0 = Math.max(0, Math.floor((field.x[u] - reach - minX) / cell));
      const column1 = Math.min(columns - 1, Math.floor((field.x[u] + reach - minX) / cell));
      if (column0 > column1) continue;
      for (let row = Math.max(0, Math.floor((field.y[u] - reach - minY) / cell)); row <= row1; row++) {
        const to = starts[row * columns + column1 + 1];
        for (let k = starts[row * columns + column0]; k < to; k++) {
          const v = units[members[k]];
          if (v !== u && conflict(field, u, v)) room[count++] = v;
        }
      }
    }
    return room.slice(0, count);
  }
}

function peersOf(field: Field): Peers[] {
  const { birds, bird, apart } = field;
  let pair = 0;
  for (let u = 0; u < field.count; u++)
    pair = Math.max(pair, Math.hypot(field.x2[u] - field.x[u], field.y2[u] - field.y[u]));
  const all = Int32Array.from({ length: field.count }, (_, u) => u);
  const byBird = Array.from({ length: birds }, (_, b) => all.filter((u) => bird[u] === b));
  return Array.from({ length: birds * birds }, (_, ab) => {
    const units = byBird[ab % birds];
    const reach = Math.sqrt(apart[ab]) + 2 * pair;
    const x = Float64Array.from(units, (u) => field.x[u]);
    const y = Float64Array.from(units, (u) => field.y[u]);
    return { units, reach, grid: gridOf(x, y, Math.max(reach / 2, roomy(x, y))) };
  });
}

/** Metres of a cell that holds about one unit. */
function roomy(x: Float64Array, y: Float64Array): number {
  const span = (list: Float64Array) =>
    list.reduce((most, v) => Math.max(most, v), -Infinity) - list.reduce((least, v) => Math.min(least, v), Infinity);
  return x.length < 2 ? 1 : Math.sqrt(Math.max(span(x) * span(y), 1) / x.length);
}
