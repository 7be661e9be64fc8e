/** The places of a target around a post, as distances and bearings. */
import { bearing, type Point } from '../geometry/point.ts';
import type { Piece, Target } from '../ground/types.ts';
import type { Spot } from './spot.ts';

/** A place of something near a post: metres off, degrees clockwise from north, and the feature it belongs to. */
export interface Near {
  readonly distance: number;
  readonly toward: number;
  readonly at: Point;
  readonly feature: string;
}

/** Metres between two places taken along a fence or edge. */
const step = 5;

/** Adds a place within reach. */
function add(from: Point, x: number, y: number, feature: string, reach: number, into: Near[]): void {
  const dx = x - from.x;
  const dy = y - from.y;
  const distance = Math.sqrt(dx * dx + dy * dy);
  if (distance > reach) return;
  const at = { x, y };
  into.push({ distance, toward: bearing(from, at), at, feature });
}

/**
 * Places taken along a piece: its point nearest to the post, every 5 m from there within reach, and its ends. Counted from the nearest
 * point, they glide along as the post moves, so that nothing scored from them jumps.
 */
function along(from: Point, piece: Piece, reach: number, into: Near[]): void {
  const { a, b, feature } = piece;
  const length = Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
  if (length === 0) {
    add(from, a.x, a.y, feature, reach, into);
    return;
  }
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const put = (t: number) => add(from, a.x + t * ux, a.y + t * uy, feature, reach, into);
  const foot = Math.min(length, Math.max(0, (from.x - a.x) * ux + (from.y - a.y) * uy));
  put(foot);
  put(0);
  put(length);
  for (let off = step; off <= reach; off += step) {
    if (foot - off > 0) put(foot - off);
    if (foot + off < length) put(foot + off);
  }
}

/** Places of a target within `reach` metres. Kept on the spot. */
export function placesAround(spot: Spot, target: Target, reach: number): readonly Near[] {
  const pieces = spot.pieces(target, reach);
  if (pieces.length === 0) return [];
  return spot.keep(pieces, reach, () => {
    const places: Near[] = [];
    for (const piece of pieces) along(spot.point, piece, reach, places);
    return places;
  });
}
