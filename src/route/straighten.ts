/**
 * A way from cell to cell drawn taut: corners cut where nothing stands between, then pulled tight round what does (the shortest
 * line round obstacles inside a triangle is the hull of their corners in it). Never made slower than it was.
 */
import type { Point } from '../geometry/point.ts';

export interface Course {
  /** Whether the straight walk a–b crosses nothing. */
  free(a: Point, b: Point): boolean;
  /** Minutes of the straight walk a–b. */
  minutes(a: Point, b: Point): number;
  /** Corners of obstacles in the triangle. */
  cornersIn(a: Point, b: Point, c: Point): Point[];
}

/** Rounds of tightening at most; a handful settle nearly every way. */
const mostRounds = 60;
const settled = 1e-6;

/** The same walk with as few and as tight corners as its obstacles allow. Ends stay. */
export function straighten(line: readonly Point[], course: Course): Point[] {
  let current = cutCorners(line, course);
  for (let round = 0; round < mostRounds; round++) {
    const next = tighten(current, course);
    if (!next) break;
    current = next;
  }
  return current;
}

/** From each point straight on to the farthest one that can be walked to directly without losing time. */
function cutCorners(line: readonly Point[], course: Course): Point[] {
  const upTo = [0];
  for (let k = 1; k < line.length; k++) upTo.push(upTo[k - 1] + course.minutes(line[k - 1], line[k]));
  const kept: Point[] = [line[0]];
  let at = 0;
  while (at < line.length - 1) {
    let next = at + 1;
    for (let to = line.length - 1; to > at + 1; to--) {
      const old = upTo[to] - upTo[at];
      if (course.minutes(line[at], line[to]) > old + 1e-9 || !course.free(line[at], line[to])) continue;
      next = to;
      break;
    }
    kept.push(line[next]);
    at = next;
  }
  return kept;
}

/** One pass over the corners; null when none could be pulled tighter. */
function tighten(line: readonly Point[], course: Course): Point[] | null {
  const out: Point[] = [line[0]];
  let changed = false;
  for (let k = 1; k < line.length - 1; k++) {
    const a = out[out.length - 1];
    const [v, c] = [line[k], line[k + 1]];
    const chain = tautRound(a, v, c, course);
    if (chain) {
      out.push(...chain);
      changed = true;
    } else out.push(v);
  }
  out.push(line[line.length - 1]);
  return changed ? out : null;
}

/** Corners that replace v between a and c; null when v stays. */
function tautRound(a: Point, v: Point, c: Point, course: Course): Point[] | null {
  const old = course.minutes(a, v) + course.minutes(v, c);
  const chain = hullChain(a, c, v, course.cornersIn(a, v, c));
  const walk = [a, ...chain, c];
  const slack = length([a, v, c]) - length(walk);
  if (slack < settled) return null;
  let now = 0;
  for (let k = 1; k < walk.length; k++) {
    now += course.minutes(walk[k - 1], walk[k]);
    if (now > old + 1e-9 || !course.free(walk[k - 1], walk[k])) return null;
  }
  return chain;
}

function length(walk: readonly Point[]): number {
  let sum = 0;
  for (let k = 1; k < walk.length; k++) sum += Math.hypot(walk[k].x - walk[k - 1].x, walk[k].y - walk[k - 1].y);
  return sum;
}

/** The side toward v of the hull of a, c and the corners, without a and c: empty when nothing stands in the triangle. */
function hullChain(a: Point, c: Point, v: Point, corners: readonly Point[]): Point[] {
  const dx = c.x - a.x;
  const dy = c.y - a.y;
  const span = Math.hypot(dx, dy);
  if (span < 1e-12) return [];
  const side = Math.sign(dx * (v.y - a.y) - dy * (v.x - a.x)) || 1;
  const along = (p: Point) => ((p.x - a.x) * dx + (p.y - a.y) * dy) / span;
  const off = (p: Point) => (side * (dx * (p.y - a.y) - dy * (p.x - a.x))) / span;
  const beyond = corners
    .map((p) => ({ p, s: along(p), h: off(p) }))
    .filter((q) => q.h > 1e-9)
    .sort((p, q) => p.s - q.s || p.h - q.h);
  const hull = [{ p: a, s: 0, h: 0 }];
  for (const q of [...beyond, { p: c, s: span, h: 0 }]) {
    while (hull.length >= 2) {
      const [m, n] = [hull[hull.length - 2], hull[hull.length - 1]];
      if ((n.s - m.s) * (q.h - m.h) - (n.h - m.h) * (q.s - m.s) < -1e-12) break;
      hull.pop();
    }
    hull.push(q);
  }
  return hull.slice(1, -1).map((q) => q.p);
}
