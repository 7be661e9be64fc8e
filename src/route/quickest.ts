/** Quickest ways from one node of the net to the places (Dijkstra 1959, with buckets of minutes instead of a heap). */
import type { WalkGrid } from './walk-grid.ts';
import { jumps } from './walk-grid.ts';

/** Reusable arrays for one net; `run` overwrites what the last run left. */
export class Quickest {
  readonly minutes: Float64Array;
  /** The node before each on its quickest way; −1 at the source and where there is no way. */
  readonly before: Int32Array;
  private readonly grid: WalkGrid;
  private readonly width: number;
  /** Minutes at which a node was last left: a node waits in a bucket once for each time it got nearer. */
  private readonly left: Float64Array;
  private readonly jump: Int32Array;
  /** Who waits: entries in a row, chained by bucket from `first` to `last`. */
  private readonly first: number[] = [];
  private readonly last: number[] = [];
  private waiter: Int32Array;
  private after: Int32Array;
  private entries = 0;

  constructor(grid: WalkGrid, fastest: number) {
    this.grid = grid;
    this.minutes = new Float64Array(grid.nodes);
    this.before = new Int32Array(grid.nodes);
    this.left = new Float64Array(grid.nodes);
    this.jump = jumps(grid.frame.columns);
    this.width = Math.max(1e-9, grid.frame.cell * fastest);
    this.waiter = new Int32Array(4 * grid.nodes);
    this.after = new Int32Array(4 * grid.nodes);
  }

  /** Finds the quickest ways from node `source` to the places numbered `fromPlace` or more: to all of them, or at least to the `enough` nearest. */
  run(source: number, fromPlace: number, enough = Infinity): void {
    const { grid, minutes, before, left, first, last } = this;
    minutes.fill(Infinity);
    before.fill(-1);
    left.fill(-1);
    first.length = 0;
    last.length = 0;
    this.entries = 0;
    const target = grid.firstPlace + fromPlace;
    let waiting = Math.min(enough, grid.nodes - target);
    minutes[source] = 0;
    this.put(source, 0);
    for (let b = 0; b < first.length && waiting > 0; b++) {
      // Shorter steps than a bucket is wide may add to the bucket being emptied.
      for (let e = first[b]; e >= 0; e = this.after[e]) {
        const node = this.waiter[e];
        if (left[node] === minutes[node] || Math.floor(minutes[node] / this.width) < b) continue;
        if (node >= target && left[node] < 0) waiting--;
        left[node] = minutes[node];
        this.leave(node);
      }
    }
  }

  private put(node: number, at: number): void {
    const b = Math.floor(at / this.width);
    const { first, last } = this;
    while (first.length <= b) {
      first.push(-1);
      last.push(-1);
    }
    if (this.entries === this.waiter.length) this.grow();
    const entry = this.entries++;
    this.waiter[entry] = node;
    this.after[entry] = -1;
    if (last[b] < 0) first[b] = entry;
    else this.after[last[b]] = entry;
    last[b] = entry;
  }

  private grow(): void {
    const wider = (list: Int32Array) => {
      const room = new Int32Array(2 * list.length);
      room.set(list);
      return room;
    };
    this.waiter = wider(this.waiter);
    this.after = wider(this.after);
  }

  private relax(from: number, to: number, at: number): void {
    if (at >= this.minutes[to] - 1e-9) return;
    this.minutes[to] = at;
    this.before[to] = from;
    this.put(to, at);
  }

  private leave(node: number): void {
    const { grid, minutes, jump } = this;
    const at = minutes[node];
    for (let link = grid.head[node]; link >= 0; link = grid.next[link]) {
      this.relax(node, grid.to[link], at + grid.minutes[link]);
    }
    if (node >= grid.cells) return;
    const { step } = grid;
    for (let s = 0; s < 16; s++) {
      const more = step[node * 16 + s];
      if (more < Infinity) this.relax(node, node + jump[s], at + more);
    }
  }

  /** Whether the last run went on until the quickest way to `node` was known. */
  reached(node: number): boolean {
    return this.left[node] >= 0;
  }

  /** Nodes from the source to `node`, both counted; empty when there is no way. */
  wayTo(node: number): number[] {
    if (this.minutes[node] === Infinity) return [];
    const way: number[] = [];
    for (let k = node; k >= 0; k = this.before[k]) way.push(k);
    return way.reverse();
  }
}
