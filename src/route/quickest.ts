/** Quickest ways from one node of the net to the places (Dijkstra 1959, with buckets of minutes instead of a heap). */
import type { WalkGrid } from './walk-grid.ts';
import { steps } from './walk-grid.ts';

/** Reusable arrays for one net; `run` overwrites what the last run left. */
export class Quickest {
  readonly minutes: Float64Array;
  /** The node before each on its quickest way; −1 at the source and where there is no way. */
  readonly before: Int32Array;
  private readonly grid: WalkGrid;
  private readonly width: number;
  private readonly buckets: number[][] = [];
  private readonly done: Uint8Array;

  constructor(grid: WalkGrid, fastest: number) {
    this.grid = grid;
    this.minutes = new Float64Array(grid.nodes);
    this.before = new Int32Array(grid.nodes);
    this.done = new Uint8Array(grid.nodes);
    this.width = Math.max(1e-9, grid.frame.cell * fastest);
  }

  /** Finds the quickest ways from node `source` to every place numbered `fromPlace` or more. */
  run(source: number, fromPlace: number): void {
    const { grid, minutes, before, buckets, done } = this;
    minutes.fill(Infinity);
    before.fill(-1);
    done.fill(0);
    buckets.length = 0;
    let waiting = grid.nodes - (grid.firstPlace + fromPlace);
    minutes[source] = 0;
    this.put(source, 0);
    for (let b = 0; b < buckets.length && waiting > 0; b++) {
      const bucket = buckets[b];
      if (!bucket) continue;
      // Shorter steps than a bucket is wide may add to the bucket being emptied.
      for (let k = 0; k < bucket.length; k++) {
        const node = bucket[k];
        if (Math.floor(minutes[node] / this.width) < b) continue;
        this.leave(node);
      }
      for (const node of bucket) {
        if (node >= grid.firstPlace + fromPlace && !done[node]) {
          done[node] = 1;
          waiting--;
        }
      }
      buckets[b] = empty;
    }
  }

  private put(node: number, at: number): void {
    const b = Math.floor(at / this.width);
    (this.buckets[b] ??= []).push(node);
  }

  private relax(from: number, to: number, at: number): void {
    if (at >= this.minutes[to] - 1e-9) return;
    this.minutes[to] = at;
    this.before[to] = from;
    this.put(to, at);
  }

  private leave(node: number): void {
    const { grid, minutes } = this;
    const at = minutes[node];
    for (let link = grid.head[node]; link >= 0; link = grid.next[link]) {
      this.relax(node, grid.to[link], at + grid.minutes[link]);
    }
    if (node >= grid.cells) return;
    const { columns, rows } = grid.frame;
    const column = node % columns;
    const row = (node - column) / columns;
    for (let s = 0; s < 8; s++) {
      const [dx, dy] = steps[s];
      const ahead = grid.step[node * 8 + s];
      const jump = dy * columns + dx;
      if (ahead < Infinity) this.relax(node, node + jump, at + ahead);
      if (column < dx || row - dy < 0 || row - dy >= rows) continue;
      const back = grid.step[(node - jump) * 8 + s];
      if (back < Infinity) this.relax(node, node - jump, at + back);
    }
  }

  /** Nodes from the source to `node`, both counted; empty when there is no way. */
  wayTo(node: number): number[] {
    if (this.minutes[node] === Infinity) return [];
    const way: number[] = [];
    for (let k = node; k >= 0; k = this.before[k]) way.push(k);
    return way.reverse();
  }
}

const empty: number[] = [];
