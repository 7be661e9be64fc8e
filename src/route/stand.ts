/** Where a walker stands to reach a place. */
import type { Point } from '../geometry/point.ts';
import { distance } from '../geometry/point.ts';
import { nearestShare } from '../geometry/segment.ts';
import type { Frame } from './walk-grid.ts';
import type { Walkable } from './walkable.ts';

/** On a path within this many metres counts as on it: a bridge, a dock. */
const onPath = 2;

/** The place itself when it is free or on a path; else the nearest free ground found within `reach` metres; else null. */
export function freeNear(land: Walkable, frame: Frame, place: Point, reach: number): Point | null {
  if (!land.walls.blockedAt(place.x, place.y)) return place;
  const path = nearestOnPaths(land, place);
  if (path && distance(path, place) <= onPath) return path;
  const centre = nearestFreeCell(land, frame, place, reach + frame.cell * 2);
  if (!centre) return null;
  const rim = lastFree(land, centre, place);
  return distance(rim, place) <= reach ? rim : null;
}

function nearestOnPaths(land: Walkable, p: Point): Point | null {
  let best: Point | null = null;
  for (const path of land.paths) {
    for (let i = 0; i + 3 < path.length; i += 2) {
      const [ax, ay, bx, by] = path.subarray(i, i + 4);
      const share = nearestShare(p.x, p.y, ax, ay, bx, by);
      const at = { x: ax + share * (bx - ax), y: ay + share * (by - ay) };
      if (!best || distance(at, p) < distance(best, p)) best = at;
    }
  }
  return best;
}

function nearestFreeCell(land: Walkable, frame: Frame, p: Point, reach: number): Point | null {
  const column = Math.floor((p.x - frame.minX) / frame.cell);
  const row = Math.floor((p.y - frame.minY) / frame.cell);
  const rings = Math.min(Math.max(frame.columns, frame.rows), Math.ceil(reach / frame.cell));
  let best: Point | null = null;
  for (let ring = 0; ring <= rings; ring++) {
    if (best && distance(best, p) < (ring - 1) * frame.cell) break;
    for (let r = row - ring; r <= row + ring; r++) {
      const across = Math.abs(r - row) === ring ? 1 : 2 * ring;
      for (let c = column - ring; c <= column + ring; c += Math.max(1, across)) {
        const at = { x: frame.minX + (c + 0.5) * frame.cell, y: frame.minY + (r + 0.5) * frame.cell };
        if (land.walls.blockedAt(at.x, at.y)) continue;
        if (!best || distance(at, p) < distance(best, p)) best = at;
      }
    }
  }
  return best;
}

/** The free point nearest to `blocked` on the way there from `free`, found by halving. */
function lastFree(land: Walkable, free: Point, blocked: Point): Point {
  let [low, high] = [0, 1];
  const at = (share: number) => ({
    x: free.x + share * (blocked.x - free.x),
    y: free.y + share * (blocked.y - free.y),
  });
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    const p = at(middle);
    if (land.walls.free(free.x, free.y, p.x, p.y)) low = middle;
    else high = middle;
  }
  return at(low);
}
