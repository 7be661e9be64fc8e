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

function near(from: Point, at: Point, feature: string): Near {
  return { distance: Math.hypot(at.x - from.x, at.y - from.y), toward: bearing(from, at), at, feature };
}

/**
 * Places taken along a piece: its point nearest to the post, every 5 m from there within reach, and its ends. Counted from the nearest
 * point, they glide along as the post moves, so that nothing scored from them jumps.
 */
function along(from: Point, piece: Piece, reach: number, into: Near[]): void {
  const { a, b, feature } = piece;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0) {
    into.push(near(from, a, feature));
    return;
  }
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const foot = Math.min(length, Math.max(0, (from.x - a.x) * ux + (from.y - a.y) * uy));
  const shares = [foot, 0, length];
  for (let off = step; off <= reach; off += step) {
    if (foot - off > 0) shares.push(foot - off);
    if (foot + off < length) shares.push(foot + off);
  }
  for (const t of shares) into.push(near(from, { x: a.x + t * ux, y: a.y + t * uy }, feature));
}

/** Places of a target within `reach` metres. Kept on the spot. */
export function placesAround(spot: Spot, target: Target, reach: number): readonly Near[] {
  const pieces = spot.pieces(target, reach);
  if (pieces.length === 0) return [];
  return spot.keep(pieces, reach, () => {
    const places: Near[] = [];
    for (const piece of pieces) along(spot.point, piece, reach, places);
    return places.filter((place) => place.distance <= reach);
  });
}
