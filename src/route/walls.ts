/** What stops a walker, exactly as drawn: areas nobody may cross, their edges in a grid, and whether a straight walk stays clear of them. */
import type { Point } from '../geometry/point.ts';
import { EdgeGrid } from './edge-grid.ts';
import { Region } from './region.ts';

/** Metres to either side looked at where a walk runs along an edge: both sides blocked means there is no way between. */
const hair = 1e-5;
/** Stretches of a walk shorter than this between two edges are rounding. */
const shortest = 1e-3;

export class Walls {
  readonly edges: EdgeGrid;
  private readonly blocked: Region;
  private readonly bounds: Region | null;
  private readonly meetings: number[] = [];
  /** Every ring of a wall, x and y alternating. */
  readonly rings: readonly Float64Array[];

  /** Rings (x, y alternating) of areas nobody crosses, each area a list of rings; and of the areas a walk must stay inside, if any. */
  constructor(
    blocked: readonly (readonly Float64Array[])[],
    bounds: readonly (readonly Float64Array[])[],
    cell: number,
  ) {
    this.blocked = new Region(blocked);
    this.bounds = bounds.length > 0 ? new Region(bounds) : null;
    this.rings = [...blocked.flat(), ...bounds.flat()];
    this.edges = new EdgeGrid(this.rings, cell);
  }

  get empty(): boolean {
    return this.edges.count === 0;
  }

  /** Whether a walker may not stand at x, y. */
  blockedAt(x: number, y: number): boolean {
    return this.blocked.contains(x, y) || (this.bounds !== null && !this.bounds.contains(x, y));
  }

  /** Whether the straight walk from a to b crosses nothing. Running along an edge or touching a corner is free. */
  free(ax: number, ay: number, bx: number, by: number): boolean {
    const { meetings } = this;
    meetings.length = 0;
    this.edges.meetings(ax, ay, bx, by, meetings);
    const length = Math.hypot(bx - ax, by - ay);
    if (meetings.length > 1) meetings.sort((p, q) => p - q);
    let from = 0;
    for (let k = 0; k <= meetings.length; k++) {
      const to = k === meetings.length ? 1 : Math.min(1, Math.max(0, meetings[k]));
      if ((to - from) * length > shortest && this.closedOff((from + to) / 2, ax, ay, bx, by, length)) return false;
      from = Math.max(from, to);
    }
    return true;
  }

  private closedOff(share: number, ax: number, ay: number, bx: number, by: number, length: number): boolean {
    const x = ax + share * (bx - ax);
    const y = ay + share * (by - ay);
    const sideX = (-(by - ay) / length) * hair;
    const sideY = ((bx - ax) / length) * hair;
    return this.blockedAt(x + sideX, y + sideY) && this.blockedAt(x - sideX, y - sideY);
  }

  /** Corners of edges inside the triangle a, b, c, its rim counted in. */
  cornersIn(a: Point, b: Point, c: Point): Point[] {
    return this.edges.cornersIn(a, b, c);
  }
}
