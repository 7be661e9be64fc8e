/** Cuts rings and lines to a box, so that a big polygon costs a sheet only what the sheet shows of it. */
import type { Box } from './display.ts';

export type Spot = readonly [x: number, y: number];

interface Side {
  inside(p: Spot): boolean;
  /** Where a–b crosses the side. */
  cross(a: Spot, b: Spot): Spot;
}

/** Sutherland and Hodgman 1974: a ring against the four sides. What is cut off runs along the box's edge. */
export function clipRing(ring: readonly Spot[], box: Box): Spot[] {
  let points: Spot[] = [...ring];
  for (const side of sidesOf(box)) {
    const kept: Spot[] = [];
    let from = points[points.length - 1];
    for (const to of points) {
      if (!from) break;
      if (side.inside(to)) {
        if (!side.inside(from)) kept.push(side.cross(from, to));
        kept.push(to);
      } else if (side.inside(from)) kept.push(side.cross(from, to));
      from = to;
    }
    points = kept;
  }
  return points;
}

/** The pieces of a line inside a box, in order. */
export function clipLine(line: readonly Spot[], box: Box): Spot[][] {
  const pieces: Spot[][] = [];
  let current: Spot[] = [];
  for (let i = 1; i < line.length; i++) {
    const cut = clipSegment(line[i - 1]!, line[i]!, box);
    if (!cut) continue;
    const last = current[current.length - 1];
    if (last && last[0] === cut[0][0] && last[1] === cut[0][1]) current.push(cut[1]);
    else {
      if (current.length > 1) pieces.push(current);
      current = [cut[0], cut[1]];
    }
  }
  if (current.length > 1) pieces.push(current);
  return pieces;
}

/** Liang and Barsky 1984: the part of a–b inside a box, or null. */
export function clipSegment(a: Spot, b: Spot, box: Box): [Spot, Spot] | null {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  let from = 0;
  let to = 1;
  const bounds: [number, number][] = [
    [-dx, a[0] - box.x],
    [dx, box.x + box.width - a[0]],
    [-dy, a[1] - box.y],
    [dy, box.y + box.height - a[1]],
  ];
  for (const [p, q] of bounds) {
    if (p === 0 && q < 0) return null;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  if (from >= to) return null;
  const at = (t: number): Spot => (t === 0 ? a : t === 1 ? b : [a[0] + t * dx, a[1] + t * dy]);
  return [at(from), at(to)];
}

function sidesOf({ x, y, width, height }: Box): Side[] {
  const upright = (at: number, sign: number): Side => ({
    inside: (p) => (p[0] - at) * sign >= 0,
    cross: (a, b) => [at, a[1] + ((at - a[0]) * (b[1] - a[1])) / (b[0] - a[0])],
  });
  const level = (at: number, sign: number): Side => ({
    inside: (p) => (p[1] - at) * sign >= 0,
    cross: (a, b) => [a[0] + ((at - a[1]) * (b[0] - a[0])) / (b[1] - a[1]), at],
  });
  return [upright(x, 1), upright(x + width, -1), level(y, 1), level(y + height, -1)];
}
