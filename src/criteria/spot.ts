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
  /** A list of 360 numbers to be filled and kept with the spot; what stands in it is anything. */
  round(): Float64Array;
}

/** What was found for a key and a figure: a handful at a spot, so a list is quicker than a map. */
class Kept<T> {
  private readonly entries: { key: unknown; figure: number; value: T }[] = [];
  private used = 0;

  find(key: unknown, figure: number): { value: T } | null {
    for (let k = 0; k < this.used; k++) {
      const entry = this.entries[k]!;
      if (entry.key === key && entry.figure === figure) return entry;
    }
    return null;
  }

  add(key: unknown, figure: number, value: T): T {
    const old = this.entries[this.used];
    if (old) {
      old.key = key;
      old.figure = figure;
      old.value = value;
    } else this.entries.push({ key, figure, value });
    this.used++;
    return value;
  }

  forget(): void {
    this.used = 0;
  }
}

/** Lists of numbers handed out one after the other, and the same ones again once all are given back. */
class Room<T extends { readonly length: number }> {
  private readonly shelves: { readonly length: number; readonly lists: T[]; used: number }[] = [];
  private readonly make: (length: number) => T;

  constructor(make: (length: number) => T) {
    this.make = make;
  }

  take(length: number): T {
    let shelf = this.shelves.find((one) => one.length === length);
    if (!shelf) {
      shelf = { length, lists: [], used: 0 };
      this.shelves.push(shelf);
    }
    const list = shelf.lists[shelf.used] ?? this.make(length);
    shelf.lists[shelf.used++] = list;
    return list;
  }

  giveBack(): void {
    for (const shelf of this.shelves) shelf.used = 0;
  }
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** A class and not a set of closures: ten thousand of them are made while a site is scored. */
class KeptSpot implements Spot {
  readonly ground: Ground;
  point: Point;
  private readonly discs = new Kept<Shares>();
  private readonly found = new Kept<Found | null>();
  private readonly near = new Kept<readonly Piece[]>();
  private readonly sights = new Kept<Float64Array>();
  private readonly means = new Kept<number>();
  private readonly shades = new Kept<Uint8Array>();
  private readonly others = new Kept<unknown>();
  private readonly degrees = new Room((length) => new Float64Array(length));
  private readonly marks = new Room((length) => new Uint8Array(length));

  constructor(ground: Ground, point: Point) {
    this.ground = ground;
    this.point = point;
  }

  /** Forgets everything and stands elsewhere. */
  moveTo(point: Point): this {
    this.point = point;
    for (const kept of [this.discs, this.found, this.near, this.sights, this.means, this.shades, this.others])
      kept.forget();
    this.degrees.giveBack();
    this.marks.giveBack();
    return this;
  }

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
    return kept
      ? kept.value
      : this.sights.add(reach, level, this.ground.sight(this.point, level, reach, this.degrees.take(360)));
  }

  /** From the same rays as the facing's, so that one look round serves both. */
  meanSight(eye: number, reach: number): number {
    const kept = this.means.find(reach, eye);
    return kept ? kept.value : this.means.add(reach, eye, mean(this.sight(eye, reach)));
  }

  shaded(eye: number, sun: SunTable): Uint8Array {
    const kept = this.shades.find(sun, eye);
    if (kept) return kept.value;
    const room = this.marks.take(sun.rays.azimuth.length);
    return this.shades.add(sun, eye, this.ground.shaded(this.point, eye, sun.rays, room));
  }

  keep<T>(owner: object, figure: number, make: () => T): T {
    const kept = this.others.find(owner, figure);
    return (kept ? kept.value : this.others.add(owner, figure, make())) as T;
  }

  round(): Float64Array {
    return this.degrees.take(360);
  }
}

/** A place made ready to be asked. Nothing is measured before it is asked for, and nothing twice. */
export function makeSpot(ground: Ground, point: Point): Spot {
  return new KeptSpot(ground, point);
}

/** The spot that passes over each ground: one for all its places, as the ground itself serves one caller at a time. */
const passing = new WeakMap<Ground, KeptSpot>();

/**
 * A place to be asked and then forgotten: it is the same object for every place of a ground, so nothing read from it (the lists of numbers
 * above all) may be kept once the next place is asked for. For scoring thousands of posts, where making new lists costs as much as measuring.
 */
export function passingSpot(ground: Ground, point: Point): Spot {
  const spot = passing.get(ground);
  if (spot) return spot.moveTo(point);
  const made = new KeptSpot(ground, point);
  passing.set(ground, made);
  return made;
}
