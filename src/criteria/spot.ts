/** One place with everything measured there kept: criteria and birds share the same disc, distances and sight. */
import type { Point } from '../geometry/point.ts';
import type { Found, Ground, Piece, Shares, Target } from '../ground/types.ts';
import type { SunTable } from '../sky/sun-table.ts';

export interface Spot {
  readonly ground: Ground;
  readonly point: Point;
  shares(radius: number): Shares;
  nearest(target: Target): Found | null;
  pieces(target: Target, reach: number): readonly Piece[];
  /** Free sight toward each whole degree: see `Ground.sight`. Only to be read. */
  sight(eye: number, reach: number): Float64Array;
  meanSight(eye: number, reach: number): number;
  shaded(eye: number, sun: SunTable): Uint8Array;
  /** Whatever else is worked out here once: for an owner (a sun, a list of pieces) and a figure (an eye height, a reach). */
  keep<T>(owner: object, figure: number, make: () => T): T;
}

/** What was asked for with these keys, or made now and kept. A list: a spot is asked for a handful of things. */
function memo<T>(kept: [unknown, number, T][], key: unknown, size: number, make: () => T): T {
  for (const entry of kept) if (entry[0] === key && entry[1] === size) return entry[2];
  const made = make();
  kept.push([key, size, made]);
  return made;
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** A place made ready to be asked. Nothing is measured before it is asked for, and nothing twice. */
export function makeSpot(ground: Ground, point: Point): Spot {
  const shares: [unknown, number, Shares][] = [];
  const found: [unknown, number, Found | null][] = [];
  const pieces: [unknown, number, readonly Piece[]][] = [];
  const sights: [unknown, number, Float64Array][] = [];
  const shades: [unknown, number, Uint8Array][] = [];
  const others: [unknown, number, unknown][] = [];
  const sight = (eye: number, reach: number) => memo(sights, eye, reach, () => ground.sight(point, eye, reach));
  return {
    ground,
    point,
    shares: (radius) => memo(shares, '', radius, () => ground.shares(point, radius)),
    nearest: (target) => memo(found, target, 0, () => ground.nearest(point, target)),
    pieces: (target, reach) => memo(pieces, target, reach, () => ground.piecesWithin(point, target, reach)),
    sight,
    // From the same rays as the facing's, so that one look round serves both.
    meanSight: (eye, reach) => mean(sight(eye, reach)),
    shaded: (eye, sun) => memo(shades, sun, eye, () => ground.shaded(point, eye, sun.rays)),
    keep: <T>(owner: object, figure: number, make: () => T) => memo(others, owner, figure, make) as T,
  };
}
