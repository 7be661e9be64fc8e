/** What stands up: walls (edges of anything with a height) and round crowns, sorted for looking around. */
import { type Grid, makeGrid } from '../geometry/grid.ts';
import type { Drawn } from './drawn.ts';
import type { Layer } from './layer.ts';

/** Obstacles of one shape in a grid, the tallest of each cell, and how far any reaches beyond its cell. */
export interface Stand {
  readonly grid: Grid;
  /** Metres, by grid part. */
  readonly height: Float64Array;
  /** Radius of a crown by grid part; empty for walls. */
  readonly radius: Float64Array;
  readonly tallest: number;
  readonly tallestIn: Float64Array;
  /** Metres an obstacle may stick out of its cell. */
  readonly pad: number;
}

export interface Obstacles {
  /** Walls run with the taller side on their left. */
  readonly walls: Stand | null;
  readonly crowns: Stand | null;
  /** Hedges by their middle line, `radius` being half the width: for "does a post stand in one". */
  readonly hedges: Stand | null;
}

/** Growing list of obstacles before they are sorted. */
class Gathered {
  private ends: Float64Array;
  private height: Float64Array;
  private radius: Float64Array;
  private count = 0;

  constructor(expected: number) {
    this.ends = new Float64Array(4 * expected);
    this.height = new Float64Array(expected);
    this.radius = new Float64Array(expected);
  }

  add(ax: number, ay: number, bx: number, by: number, height: number, radius: number): void {
    if (this.count === this.height.length) this.grow();
    const i = this.count++;
    this.ends[4 * i] = ax;
    this.ends[4 * i + 1] = ay;
    this.ends[4 * i + 2] = bx;
    this.ends[4 * i + 3] = by;
    this.height[i] = height;
    this.radius[i] = radius;
  }

  private grow(): void {
    const widened = (list: Float64Array): Float64Array => {
      const wider = new Float64Array(2 * list.length);
      wider.set(list);
      return wider;
    };
    this.ends = widened(this.ends);
    this.height = widened(this.height);
    this.radius = widened(this.radius);
  }

  sorted(): Stand | null {
    const grid = makeGrid(this.ends.subarray(0, 4 * this.count));
    if (!grid) return null;
    const height = new Float64Array(grid.piece.length);
    const radius = new Float64Array(grid.piece.length);
    const tallestIn = new Float64Array(grid.columns * grid.rows);
    let tallest = 0;
    let widest = 0;
    for (let cell = 0; cell < tallestIn.length; cell++) {
      for (let k = grid.start[cell]!; k < grid.start[cell + 1]!; k++) {
        height[k] = this.height[grid.piece[k]!]!;
        radius[k] = this.radius[grid.piece[k]!]!;
        if (height[k]! > tallestIn[cell]!) tallestIn[cell] = height[k]!;
        if (radius[k]! > widest) widest = radius[k]!;
      }
      if (tallestIn[cell]! > tallest) tallest = tallestIn[cell]!;
    }
    return { grid, height, radius, tallest, tallestIn, pad: grid.reach + widest };
  }
}

/** Seams between different heights: the taller side stands there as a wall. */
function addAreaWalls(walls: Gathered, { ends, left, right, areas }: Layer): void {
  for (let s = 0; s < left.length; s++) {
    const onLeft = left[s]! < 0 ? 0 : areas[left[s]!]!.height;
    const onRight = right[s]! < 0 ? 0 : areas[right[s]!]!.height;
    if (onLeft === onRight) continue;
    const ax = ends[4 * s]!;
    const ay = ends[4 * s + 1]!;
    const bx = ends[4 * s + 2]!;
    const by = ends[4 * s + 3]!;
    if (onLeft > onRight) walls.add(ax, ay, bx, by, onLeft, 0);
    else walls.add(bx, by, ax, ay, onRight, 0);
  }
}

/** A hedge stands as its two sides, rounded at every bend and end. */
function addHedge(
  all: { walls: Gathered; crowns: Gathered; hedges: Gathered },
  path: Float64Array,
  h: number,
  half: number,
): void {
  for (let i = 0; i < path.length; i += 2) all.crowns.add(path[i]!, path[i + 1]!, path[i]!, path[i + 1]!, h, half);
  for (let i = 0; i + 2 < path.length; i += 2) {
    const [ax, ay, bx, by] = [path[i]!, path[i + 1]!, path[i + 2]!, path[i + 3]!];
    const length = Math.hypot(bx - ax, by - ay);
    const [nx, ny] = [(half * (by - ay)) / length, (half * (ax - bx)) / length];
    all.walls.add(ax + nx, ay + ny, bx + nx, by + ny, h, 0);
    all.walls.add(bx - nx, by - ny, ax - nx, ay - ny, h, 0);
    all.hedges.add(ax, ay, bx, by, h, half);
  }
}

/** Gathers everything with a height. Fences, wires, shrubs and perches hide nothing. */
export function makeObstacles(layer: Layer, drawn: Drawn): Obstacles {
  const all = { walls: new Gathered(layer.left.length + 64), crowns: new Gathered(64), hedges: new Gathered(64) };
  addAreaWalls(all.walls, layer);
  for (const line of drawn.lines) {
    if (line.kind !== 'hedge' || line.height <= 0) continue;
    for (const path of line.paths) addHedge(all, path, line.height, line.width / 2);
  }
  for (const { kind, x, y, height, crown } of drawn.points) {
    if (kind === 'tree' && height > 0) all.crowns.add(x, y, x, y, height, crown);
  }
  return { walls: all.walls.sorted(), crowns: all.crowns.sorted(), hedges: all.hedges.sorted() };
}
