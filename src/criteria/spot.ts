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

/** What was found for a key and a figure: a handful at a spot, so a list is quicker than a map. */
class Kept<T> {
  private readonly entries: { key: unknown; figure: number; value: T }[] = [];

  find(key: unknown, figure: number): { value: T } | null {
    for (const entry of this.entries) if (entry.key === key && entry.figure === figure) return entry;
    return null;
  }

  add(key: unknown, figure: number, value: T): T {
    this.entries.push({ key, figure, value });
    return value;
  }
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** A class and not a set of closures: ten thousand of them are made while a site is scored. */
class KeptSpot implements Spot {
  private readonly discs = new Kept<Shares>();
  private readonly found = new Kept<Found | null>();
  private readonly near = new Kept<readonly Piece[]>();
  private readonly sights = new Kept<Float64Array>();
  private readonly means = new Kept<number>();
  private readonly shades = new Kept<Uint8Array>();
  private readonly others = new Kept<unknown>();

  constructor(
    readonly ground: Ground,
    readonly point: Point,
  ) {}

  shares(radius: number): Shares {
    const kept = this.discs.find('', radius);
    return kept ? kept.value : this.discs.add('', radius, this.ground.shares(this.point, radius));
  }

  nearest(target: Target): Found | null {
    const kept = this.found.find(target, 0);
    return kept ? kept.value : this.found.add(target, 0, this.ground.nearest(this.point, target));
  }

  pieces(target: Target, reach: number): readonly Piece[] {
    const kept = this.near.find(target, reach);
    return kept ? kept.value : this.near.add(target, reach, this.ground.piecesWithin(this.point, target, reach));
  }

  sight(eye: number, reach: number): Float64Array {
    // Eyes between the same two heights see the same: most birds share one look round.
    const level = this.ground.eyeLevel(eye);
    const kept = this.sights.find(reach, level);
    return kept ? kept.value : this.sights.add(reach, level, this.ground.sight(this.point, level, reach));
  }

  /** From the same rays as the facing's, so that one look round serves both. */
  meanSight(eye: number, reach: number): number {
    const kept = this.means.find(reach, eye);
    return kept ? kept.value : this.means.add(reach, eye, mean(this.sight(eye, reach)));
  }

  shaded(eye: number, sun: SunTable): Uint8Array {
    const kept = this.shades.find(sun, eye);
    return kept ? kept.value : this.shades.add(sun, eye, this.ground.shaded(this.point, eye, sun.rays));
  }

  keep<T>(owner: object, figure: number, make: () => T): T {
    const kept = this.others.find(owner, figure);
    return (kept ? kept.value : this.others.add(owner, figure, make())) as T;
  }
}

/** A place made ready to be asked. Nothing is measured before it is asked for, and nothing twice. */
export function makeSpot(ground: Ground, point: Point): Spot {
  return new KeptSpot(ground, point);
}
