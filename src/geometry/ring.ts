/** Closed rings of points in metres. The closing point may be repeated or not. */
import { orient2d } from 'robust-predicates';
import { forEachEdgePair } from './edge-pairs.ts';
import type { Point } from './point.ts';

/** Area enclosed, m²: positive when the points run counter-clockwise. 0 for fewer than 3 points. */
export function ringArea(points: readonly Point[]): number {
  if (points.length < 3) return 0;
  const { x, y } = points[0]!;
  let twice = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    twice += (a.x - x) * (b.y - y) - (b.x - x) * (a.y - y);
  }
  return twice / 2;
}

/** Whether `p` lies inside (even–odd rule; on the boundary either answer is possible). */
export function ringContains(points: readonly Point[], p: Point): boolean {
  let inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [a, b] = [points[i]!, points[j]!];
    if (a.y > p.y === b.y > p.y) continue;
    const side = orient2d(a.x, a.y, b.x, b.y, p.x, p.y);
    if (side !== 0 && side > 0 === b.y < a.y) inside = !inside;
  }
  return inside;
}

/** The ring's points without consecutive repeats (the closing point included), with each one's place in the input. */
function cleaned(points: readonly Point[]): { points: Point[]; index: number[] } {
  const kept: Point[] = [];
  const index: number[] = [];
  points.forEach((p, i) => {
    const last = kept[kept.length - 1];
    if (last && last.x === p.x && last.y === p.y) return;
    kept.push(p);
    index.push(i);
  });
  while (kept.length > 1 && kept[0]!.x === kept[kept.length - 1]!.x && kept[0]!.y === kept[kept.length - 1]!.y) {
    kept.pop();
    index.pop();
  }
  return { points: kept, index };
}

const between = (a: Point, b: Point, p: Point): boolean =>
  Math.min(a.x, b.x) <= p.x && p.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= p.y && p.y <= Math.max(a.y, b.y);

/** orient2d of robust-predicates: exact sign, positive when a, b, c turn clockwise (its y axis points down). */
const side = (a: Point, b: Point, c: Point): number => Math.sign(orient2d(a.x, a.y, b.x, b.y, c.x, c.y));

/** Where the closed segments a–b and c–d meet, or null. Exact in whether, rounded in where. */
export function segmentsMeet(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [sa, sb, sc, sd] = [side(c, d, a), side(c, d, b), side(a, b, c), side(a, b, d)];
  if (sa * sb < 0 && sc * sd < 0) {
    const [ex, ey, fx, fy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
    const share = ((c.x - a.x) * fy - (c.y - a.y) * fx) / (ex * fy - ey * fx);
    return { x: a.x + share * ex, y: a.y + share * ey };
  }
  if (sc === 0 && between(a, b, c)) return c;
  if (sd === 0 && between(a, b, d)) return d;
  if (sa === 0 && between(c, d, a)) return a;
  if (sb === 0 && between(c, d, b)) return b;
  return null;
}

/** Two edges that follow each other (…a→b→c…) meet only in b unless the second turns straight back over the first. */
function turnsBack(a: Point, b: Point, c: Point): Point | null {
  if (side(a, b, c) !== 0 || (a.x - b.x) * (c.x - b.x) + (a.y - b.y) * (c.y - b.y) <= 0) return null;
  return between(a, b, c) ? c : a;
}

/**
 * Where a ring crosses, touches or runs back over itself: the place and the two edges (edge i runs from point i of the input to the
 * next different one). null for a simple ring, and for one of fewer than 3 different points. A ring that only touches itself in one
 * point counts: its inside is not one piece.
 */
export function selfCrossing(points: readonly Point[]): { at: Point; i: number; j: number } | null {
  const ring = cleaned(points);
  const n = ring.points.length;
  if (n < 3) return null;
  const edges = new Float64Array(4 * n);
  ring.points.forEach((p, i) => {
    const q = ring.points[(i + 1) % n]!;
    edges.set([p.x, p.y, q.x, q.y], 4 * i);
  });
  let found: { at: Point; i: number; j: number } | null = null;
  forEachEdgePair(edges, 0, (i, j) => {
    const [a, b, c, d] = [ring.points[i]!, ring.points[i + 1]!, ring.points[j]!, ring.points[(j + 1) % n]!];
    let at: Point | null;
    if (j === i + 1) at = turnsBack(a, b, d);
    else if (i === 0 && j === n - 1) at = turnsBack(c, a, b);
    else at = segmentsMeet(a, b, c, d);
    if (at) found = { at, i: ring.index[i]!, j: ring.index[j]! };
    return at !== null;
  });
  return found;
}
