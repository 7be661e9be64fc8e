/** Where the walker is, as far as the device knows, and what that allows to say about a box. */
import { bearing, distance, type Point } from '../../geometry/point.ts';
import type { LonLat } from '../../site/types.ts';

/** One answer of the device. `accuracy` is the radius in metres the place lies in with 95 % (W3C Geolocation). */
export interface Fix {
  readonly position: LonLat;
  readonly accuracy: number;
  /** Milliseconds since 1970. */
  readonly time: number;
  /** Degrees clockwise from true north it moves, and metres a second; null when the device does not say. */
  readonly heading: number | null;
  readonly speed: number | null;
}

/** Whether there is a position, and why not. */
export type Whereabouts =
  | { readonly at: 'off' | 'asking' | 'denied' | 'none' | 'not-possible' }
  | { readonly at: 'fix'; readonly fix: Fix };

export type Grade = 'good' | 'fair' | 'poor';

/** Up to 10 m good, up to 30 m fair (ours: boxes of a trail stand 90 m apart, a phone knows about 5 m under open sky). */
export function gradeOf(accuracy: number): Grade {
  return accuracy <= 10 ? 'good' : accuracy <= 30 ? 'fair' : 'poor';
}

/** A fix older than this no longer says where somebody walking is, milliseconds (ours: 30 s is 40 m). */
export const staleAfter = 30_000;

export function isStale(fix: Fix, now: number): boolean {
  return now - fix.time > staleAfter;
}

export interface WayThere {
  readonly metres: number;
  /** Degrees clockwise from true north. */
  readonly bearing: number;
  /** Whether the box lies inside the circle the position is known to: the bearing then says nothing. */
  readonly within: boolean;
}

/** From the walker to a box; `blur` = metres the box's own place may be off. */
export function wayThere(here: Point, accuracy: number, box: Point, blur = 0): WayThere {
  const metres = distance(here, box);
  return { metres, bearing: bearing(here, box), within: metres <= accuracy + blur };
}

/** Error circles wider than this would hold half a trail: nothing is said then, metres (ours). */
const widest = 60;

/** Numbers of all boxes inside the circle, nearest first; none when the fix is too coarse to mean anything. */
export function boxesWithin(
  here: Point,
  accuracy: number,
  boxes: readonly { readonly number: number; readonly at: Point | null }[],
): readonly number[] {
  if (accuracy > widest) return [];
  return boxes
    .flatMap(({ number, at }) => (at ? [{ number, metres: distance(here, at) }] : []))
    .filter(({ metres }) => metres <= accuracy)
    .sort((a, b) => a.metres - b.metres)
    .map(({ number }) => number);
}

/** Slower than this the course of a phone is noise, metres a second (ours). */
const walking = 0.7;

/**
 * Degrees clockwise from true north the walker moves: the device's own course, else from two fixes far enough apart to mean it
 * (more than both their errors). Null while standing.
 */
export function courseOf(before: Fix | null, now: Fix, toPlane: (position: LonLat) => Point): number | null {
  if (now.heading !== null && Number.isFinite(now.heading) && (now.speed ?? 0) >= walking) return now.heading;
  if (!before) return null;
  const [a, b] = [toPlane(before.position), toPlane(now.position)];
  return distance(a, b) > before.accuracy + now.accuracy ? bearing(a, b) : null;
}

/** Whether a fix can be used at all: numbers that are numbers, on the earth. */
export function isFix({ position: [lon, lat], accuracy }: Fix): boolean {
  return Math.abs(lat) <= 90 && Math.abs(lon) <= 180 && Number.isFinite(accuracy) && accuracy >= 0;
}
