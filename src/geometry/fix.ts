/** Where a place is by tape: from one landmark with a bearing, or from two landmarks with two tapes. */
import { bearing, destination, distance, type Point, turn } from './point.ts';

/** A place found by tape. `left` and `right` are seen walking from the first landmark to the second. */
export interface TapeFix {
  readonly left: Point;
  readonly right: Point;
  /** Angle between the two tapes at the place, 0–90 degrees: under 30 a small slip of a tape moves the place far (common practice of surveyors). */
  readonly crossing: number;
}

/** None, with the sentence why, and by how many metres the tapes fail to meet. */
export interface NoFix {
  readonly reason: string;
  readonly gap: number;
}

/** The place `metres` from a landmark along a bearing, degrees clockwise from true north. Throws on a negative or not finite length. */
export function fixByBearing(landmark: Point, degrees: number, metres: number): Point {
  if (!(metres >= 0) || !Number.isFinite(metres) || !Number.isFinite(degrees)) {
    throw new Error(`no tape length and bearing: ${metres} m, ${degrees}°`);
  }
  return destination(landmark, degrees, metres);
}

/**
 * The two places that lie `fromA` metres from `a` and `fromB` metres from `b`; left and right are the same when the tapes just touch.
 * Throws when a tape is not positive and finite.
 */
export function fixByTapes(a: Point, fromA: number, b: Point, fromB: number): TapeFix | NoFix {
  if (!(fromA > 0 && fromB > 0) || !Number.isFinite(fromA + fromB))
    throw new Error(`no tape lengths: ${fromA} m, ${fromB} m`);
  const apart = distance(a, b);
  const trouble = cannotMeet(apart, fromA, fromB);
  if (trouble) return trouble;
  // Distance along a → b to the foot of the place, and off the line (two circles, plane trigonometry).
  const along = (fromA ** 2 - fromB ** 2 + apart ** 2) / (2 * apart);
  const off = Math.sqrt(Math.max(0, fromA ** 2 - along ** 2));
  const foot = destination(a, bearing(a, b), along);
  const left = destination(foot, bearing(a, b) - 90, off);
  const right = destination(foot, bearing(a, b) + 90, off);
  const angle = turn(bearing(left, a), bearing(left, b));
  return { left, right, crossing: Math.min(angle, 180 - angle) };
}

/** Whether a fix was found. */
export function isFix(answer: TapeFix | NoFix): answer is TapeFix {
  return 'left' in answer;
}

/** A millimetre: tapes that miss by less are taken to touch. */
const slack = 0.001;

function cannotMeet(apart: number, fromA: number, fromB: number): NoFix | null {
  if (apart < slack) return { reason: 'The two landmarks are the same place; choose two that stand apart.', gap: 0 };
  const short = apart - fromA - fromB;
  if (short > slack) {
    return {
      reason: `The tapes do not reach each other: the landmarks are ${apart.toFixed(1)} m apart, the tapes together ${(fromA + fromB).toFixed(1)} m.`,
      gap: short,
    };
  }
  const long = Math.abs(fromA - fromB) - apart;
  if (long > slack) {
    return {
      reason: `One tape is too long for the other: they differ by ${Math.abs(fromA - fromB).toFixed(1)} m, the landmarks are only ${apart.toFixed(1)} m apart.`,
      gap: long,
    };
  }
  return null;
}
