/** The site as a walker sees it: what stops him, what he walks on, what he climbs over. */

import type { DrawnLine } from '../ground/drawn.ts';
import { drawnOn } from '../ground/drawn.ts';
import type { Ground } from '../ground/types.ts';
import { EdgeGrid } from './edge-grid.ts';
import { minutesPerFence, minutesPerHedge, minutesPerMetre, streamWidth } from './pace.ts';
import { Walls } from './walls.ts';

export interface Walkable {
  readonly walls: Walls;
  /** Paths and roads, x and y alternating: walked at path pace, and the only way across walls. */
  readonly paths: readonly Float64Array[];
  readonly fences: EdgeGrid;
  readonly hedges: EdgeGrid;
  /** Minutes a metre takes at a place. */
  paceAt(x: number, y: number): number;
  /** True when nothing drawn changes a walk: straight lines everywhere. */
  readonly plain: boolean;
}

/** Reads the drawn site; `cell` is the size of what is looked up together, in metres. */
export function walkableOf(ground: Ground, cell: number): Walkable {
  const drawn = drawnOn(ground.site, ground.frame);
  const areas = [...drawn.cover.filter((a) => a.kind === 'water' || a.kind === 'building'), ...drawn.offLimits];
  const streams = drawn.lines.filter((line) => line.kind === 'stream').flatMap((line) => line.paths.flatMap(banks));
  const blocked = [...areas.flatMap((area) => area.parts), ...streams.map((ring) => [ring])];
  const walls = new Walls(
    blocked,
    drawn.boundary.flatMap((area) => area.parts),
    cell,
  );
  const linesOf = (...kinds: DrawnLine['kind'][]) =>
    drawn.lines.filter((line) => kinds.includes(line.kind)).flatMap((line) => line.paths);
  const paths = linesOf('path', 'road').filter((path) => path.length >= 4);
  const fences = new EdgeGrid(linesOf('fence'), cell, true);
  const hedges = new EdgeGrid(linesOf('hedge'), cell, true);
  const even = drawn.cover.every((a) => minutesPerMetre(a.kind as never) === minutesPerMetre(null) || isWall(a.kind));
  return {
    walls,
    paths,
    fences,
    hedges,
    paceAt: even
      ? () => minutesPerMetre(null)
      : (x, y) => {
          const cover = ground.coverAt({ x, y });
          return minutesPerMetre(isWall(cover) ? null : cover);
        },
    plain: walls.empty && paths.length === 0 && fences.count === 0 && hedges.count === 0 && even,
  };
}

function isWall(kind: string | null): boolean {
  return kind === 'water' || kind === 'building';
}

/** A stream as one thin box for each of its stretches. */
function banks(path: Float64Array): Float64Array[] {
  const boxes: Float64Array[] = [];
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4);
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const dx = (-(by - ay) / length) * (streamWidth / 2);
    const dy = ((bx - ax) / length) * (streamWidth / 2);
    boxes.push(Float64Array.of(ax + dx, ay + dy, bx + dx, by + dy, bx - dx, by - dy, ax - dx, ay - dy));
  }
  return boxes;
}

/** Minutes lost at fences and hedges on the straight walk from a to b. */
export function fenceMinutes(
  land: Walkable,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  scratch: number[],
): number {
  if (land.fences.count === 0 && land.hedges.count === 0) return 0;
  scratch.length = 0;
  land.fences.meetings(ax, ay, bx, by, scratch);
  const fences = crossings(scratch);
  scratch.length = 0;
  land.hedges.meetings(ax, ay, bx, by, scratch);
  return fences * minutesPerFence + crossings(scratch) * minutesPerHedge;
}

/** Meetings at one place (a corner of a fence belongs to two edges) count once. */
function crossings(meetings: number[]): number {
  if (meetings.length < 2) return meetings.length;
  meetings.sort((p, q) => p - q);
  return meetings.filter((share, k) => k === 0 || share - meetings[k - 1] > 1e-9).length;
}
