/** The ways over a site as a net: square cells of open ground with sixteen ways out of each, paths as chains of their own, and the places walked between. */
import type { Point } from '../geometry/point.ts';
import { gapCorners } from './gaps.ts';
import { minutesPerMetreOnPath } from './walk-time.ts';
import type { Walkable } from './walkable.ts';
import { fenceMinutes } from './walkable.ts';

/** Half of the sixteen ways: each is walked both ways. */
const steps = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
  [2, 1],
  [1, 2],
  [2, -1],
  [1, -2],
] as const;

/** How far on the cell of each of the sixteen ways lies: way 2s is step s, way 2s + 1 the same step back. */
export function jumps(columns: number): Int32Array {
  return Int32Array.from(steps.flatMap(([dx, dy]) => [dy * columns + dx, -dy * columns - dx]));
}

export interface Frame {
  readonly cell: number;
  readonly minX: number;
  readonly minY: number;
  readonly columns: number;
  readonly rows: number;
}

/** Nodes 0 … cells − 1 are cell centres; the rest are path nodes, corners beside gaps, and then the places. */
export interface WalkGrid {
  readonly frame: Frame;
  readonly cells: number;
  readonly nodes: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Minutes of way w out of cell c at `c * 16 + w`, in the order of `jumps`; Infinity where there is none. */
  readonly step: Float32Array;
  /** Further ways by node: `head[node]` → `next` chain of `to`, `minutes`. */
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly to: Int32Array;
  readonly minutes: Float64Array;
  /** First path node, first corner and first place. */
  readonly firstPath: number;
  readonly firstCorner: number;
  readonly firstPlace: number;
  /** Minutes a metre takes, by cell. */
  readonly pace: Float32Array;
}

/** Cells nearer than this many to a place or path node are joined to it. */
const joinReach = 2;
/** Corners of one gap lie within this many cells of each other. */
const gapReach = 20;

/** Marks of a cell that an edge of a wall, a fence or a hedge comes into. */
const walled = 1;
const hasFence = 2;

/** Builds the net for `places`, which must stand on free ground or on a path. */
export function walkGrid(land: Walkable, frame: Frame, places: readonly Point[]): WalkGrid {
  const inside = (x: number, y: number) =>
    x >= frame.minX &&
    y >= frame.minY &&
    x <= frame.minX + frame.columns * frame.cell &&
    y <= frame.minY + frame.rows * frame.cell;
  const net = new Net(land, frame, pathNodes(land, frame.cell), gapCorners(land.walls, frame.cell, inside), places);
  return net.finish();
}

/** Path corners and points between them, with the chain each belongs to. */
function pathNodes(land: Walkable, cell: number): { at: Point[]; links: [number, number][] } {
  const at: Point[] = [];
  const links: [number, number][] = [];
  const known = new Map<string, number>();
  const node = (x: number, y: number) => {
    const key = `${Math.round(x * 100)},${Math.round(y * 100)}`;
    const old = known.get(key);
    if (old !== undefined) return old;
    known.set(key, at.length);
    at.push({ x, y });
    return at.length - 1;
  };
  for (const path of land.paths) {
    for (let i = 0; i + 3 < path.length; i += 2) {
      const [ax, ay, bx, by] = path.subarray(i, i + 4);
      const parts = Math.max(1, Math.min(2000, Math.ceil(Math.hypot(bx - ax, by - ay) / cell)));
      let last = node(ax, ay);
      for (let k = 1; k <= parts; k++) {
        const here = node(ax + (k / parts) * (bx - ax), ay + (k / parts) * (by - ay));
        if (here !== last) links.push([last, here]);
        last = here;
      }
    }
  }
  return { at, links };
}

class Net {
  private readonly land: Walkable;
  private readonly frame: Frame;
  private readonly cells: number;
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  private readonly free: Uint8Array;
  private readonly near: Uint8Array;
  private readonly pace: Float32Array;
  private readonly head: Int32Array;
  private readonly next: number[] = [];
  private readonly to: number[] = [];
  private readonly minutes: number[] = [];
  private readonly firstPath: number;
  private readonly firstCorner: number;
  private readonly firstPlace: number;
  private readonly scratch: number[] = [];

  constructor(
    land: Walkable,
    frame: Frame,
    path: { at: Point[]; links: [number, number][] },
    corners: readonly Point[],
    places: readonly Point[],
  ) {
    this.land = land;
    this.frame = frame;
    this.cells = frame.columns * frame.rows;
    this.firstPath = this.cells;
    this.firstCorner = this.cells + path.at.length;
    this.firstPlace = this.firstCorner + corners.length;
    const nodes = this.firstPlace + places.length;
    this.x = new Float64Array(nodes);
    this.y = new Float64Array(nodes);
    this.free = new Uint8Array(this.cells);
    this.near = new Uint8Array(this.cells);
    this.pace = new Float32Array(this.cells);
    this.head = new Int32Array(nodes).fill(-1);
    this.fillCells();
    [...path.at, ...corners, ...places].forEach((p, k) => {
      this.x[this.cells + k] = p.x;
      this.y[this.cells + k] = p.y;
    });
    for (const [a, b] of path.links) this.joinAlongPath(this.firstPath + a, this.firstPath + b);
    for (let node = this.firstPath; node < this.firstCorner; node++) this.joinToCells(node, 1);
    this.joinCorners();
    for (let node = this.firstPlace; node < nodes; node++) {
      this.joinToCells(node, joinReach);
      this.joinToPaths(node);
    }
  }

  private fillCells(): void {
    const { frame, land } = this;
    const { edges } = land.walls;
    for (let c = 0; c < this.cells; c++) {
      const x = frame.minX + ((c % frame.columns) + 0.5) * frame.cell;
      const y = frame.minY + (Math.floor(c / frame.columns) + 0.5) * frame.cell;
      this.x[c] = x;
      this.y[c] = y;
      const fenced = land.fences.near(x, y, frame.cell / 2) || land.hedges.near(x, y, frame.cell / 2);
      this.near[c] = (edges.near(x, y, frame.cell / 2) ? walled : 0) | (fenced ? hasFence : 0);
      // No edge between its centre and its neighbour's: the same side of every wall.
      const like = c % frame.columns > 0 && ((this.near[c] | this.near[c - 1]) & walled) === 0;
      this.free[c] = like ? this.free[c - 1] : land.walls.blockedAt(x, y) ? 0 : 1;
      this.pace[c] = land.paceAt(x, y);
    }
  }

  private link(a: number, b: number, minutes: number): void {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ]) {
      this.next.push(this.head[from]);
      this.head[from] = this.to.length;
      this.to.push(to);
      this.minutes.push(minutes);
    }
  }

  private joinAlongPath(a: number, b: number): void {
    this.link(a, b, Math.hypot(this.x[a] - this.x[b], this.y[a] - this.y[b]) * minutesPerMetreOnPath);
  }

  /** Joins a node to the free cells around it that it can be walked to straight. */
  private joinToCells(node: number, reach: number): void {
    const { frame } = this;
    const column = Math.floor((this.x[node] - frame.minX) / frame.cell);
    const row = Math.floor((this.y[node] - frame.minY) / frame.cell);
    const [row0, row1] = [Math.max(0, row - reach), Math.min(frame.rows - 1, row + reach)];
    const [column0, column1] = [Math.max(0, column - reach), Math.min(frame.columns - 1, column + reach)];
    const clear = this.clearWithin(row0, row1, column0, column1);
    for (let r = row0; r <= row1; r++) {
      for (let c = column0; c <= column1; c++) {
        const cell = r * frame.columns + c;
        if (!this.free[cell]) continue;
        if (clear)
          this.link(node, cell, Math.hypot(this.x[node] - this.x[cell], this.y[node] - this.y[cell]) * this.pace[cell]);
        else this.joinOverLand(node, cell, this.pace[cell]);
      }
    }
  }

  /** Whether no edge, fence or hedge comes into any of the cells. */
  private clearWithin(row0: number, row1: number, column0: number, column1: number): boolean {
    for (let r = row0; r <= row1; r++) {
      for (let c = column0; c <= column1; c++) if (this.near[r * this.frame.columns + c] !== 0) return false;
    }
    return true;
  }

  /** Joins corners beside gaps to the cells around and to the corners at the gap's other end. */
  private joinCorners(): void {
    const reach = this.frame.cell * gapReach;
    for (let a = this.firstCorner; a < this.firstPlace; a++) {
      this.joinToCells(a, joinReach);
      const pace = this.land.paceAt(this.x[a], this.y[a]);
      for (let b = a + 1; b < this.firstPlace; b++) {
        if (Math.abs(this.x[a] - this.x[b]) > reach || Math.abs(this.y[a] - this.y[b]) > reach) continue;
        this.joinOverLand(a, b, pace);
      }
    }
  }

  private joinOverLand(a: number, b: number, pace: number): void {
    const { x, y, land } = this;
    if (!land.walls.free(x[a], y[a], x[b], y[b])) return;
    const metres = Math.hypot(x[a] - x[b], y[a] - y[b]);
    this.link(a, b, metres * pace + fenceMinutes(land, x[a], y[a], x[b], y[b], this.scratch));
  }

  /** Joins a place to the path nodes about it; one that stands on a path belongs to it whatever lies beside. */
  private joinToPaths(place: number): void {
    const reach = this.frame.cell * joinReach;
    const pace = this.land.paceAt(this.x[place], this.y[place]);
    for (let node = this.firstPath; node < this.firstCorner; node++) {
      const metres = Math.hypot(this.x[node] - this.x[place], this.y[node] - this.y[place]);
      if (metres > reach) continue;
      if (metres < this.frame.cell && this.land.walls.blockedAt(this.x[place], this.y[place])) {
        this.link(place, node, metres * minutesPerMetreOnPath);
      } else this.joinOverLand(place, node, pace);
    }
  }

  /** Minutes of the sixteen ways out of every cell. */
  private fillSteps(): Float32Array {
    const { frame, free, pace } = this;
    const step = new Float32Array(this.cells * 16).fill(Infinity);
    for (let row = 0; row < frame.rows; row++) {
      for (let column = 0; column < frame.columns; column++) {
        const a = row * frame.columns + column;
        if (!free[a]) continue;
        for (let s = 0; s < 8; s++) {
          const [dx, dy] = steps[s];
          if (column + dx >= frame.columns || row + dy >= frame.rows || row + dy < 0) continue;
          const b = a + dy * frame.columns + dx;
          if (!free[b]) continue;
          const minutes = this.stepMinutes(a, b, dx, dy, (pace[a] + pace[b]) / 2);
          step[a * 16 + 2 * s] = minutes;
          step[b * 16 + 2 * s + 1] = minutes;
        }
      }
    }
    return step;
  }

  private stepMinutes(a: number, b: number, dx: number, dy: number, pace: number): number {
    const { x, y, near, frame, land } = this;
    const row = frame.columns;
    const rise = Math.sign(dy) * row;
    const between = Math.abs(dx) === 2 ? near[a + 1] | near[a + 1 + rise] : near[a + rise] | near[a + 1 + rise];
    const close = near[a] | near[b] | (Math.abs(dx) + Math.abs(dy) === 3 ? between : 0);
    if (close & walled && !land.walls.free(x[a], y[a], x[b], y[b])) return Infinity;
    const fences = close & hasFence ? fenceMinutes(land, x[a], y[a], x[b], y[b], this.scratch) : 0;
    return frame.cell * Math.hypot(dx, dy) * pace + fences;
  }

  finish(): WalkGrid {
    return {
      frame: this.frame,
      cells: this.cells,
      nodes: this.x.length,
      x: this.x,
      y: this.y,
      step: this.fillSteps(),
      head: this.head,
      next: Int32Array.from(this.next),
      to: Int32Array.from(this.to),
      minutes: Float64Array.from(this.minutes),
      firstPath: this.firstPath,
      firstCorner: this.firstCorner,
      firstPlace: this.firstPlace,
      pace: this.pace,
    };
  }
}
