/** Distances to straight segments, in metres. */

/** Copies ax, ay, bx, by of piece `from` to piece `to` of another list. */
export function copyPiece(ends: Float64Array, from: number, into: Float64Array, to: number): void {
  into[4 * to] = ends[4 * from]!;
  into[4 * to + 1] = ends[4 * from + 1]!;
  into[4 * to + 2] = ends[4 * from + 2]!;
  into[4 * to + 3] = ends[4 * from + 3]!;
}

/** Where on the segment a→b the place nearest to p lies: 0 at a, 1 at b; 0 when the segment has no length. */
export function nearestShare(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  if (square === 0) return 0;
  const share = ((px - ax) * dx + (py - ay) * dy) / square;
  return share < 0 ? 0 : Math.min(share, 1);
}

/** Square of the distance from p to the segment a→b, m². */
export function squareToSegment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const share = nearestShare(px, py, ax, ay, bx, by);
  const dx = ax + share * (bx - ax) - px;
  const dy = ay + share * (by - ay) - py;
  return dx * dx + dy * dy;
}

/** Distance from p to the segment a→b, m. */
export function distanceToSegment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  return Math.sqrt(squareToSegment(px, py, ax, ay, bx, by));
}
