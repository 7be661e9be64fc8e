/** Which way the phone looks, and how far that can be trusted. */
import { normalDegrees } from '../../geometry/point.ts';

/** `magnetic`: told so by the device. `compass`: an absolute reading whose north the device does not name. `course`: from walking. */
export type HeadingKind = 'magnetic' | 'compass' | 'course';

export interface Heading {
  /** Degrees clockwise from true north as far as known. */
  readonly degrees: number;
  readonly kind: HeadingKind;
}

/** What a device event may hold. iOS gives `webkitCompassHeading` from magnetic north (from memory of Apple's documents). */
export interface OrientationReading {
  readonly alpha: number | null;
  readonly absolute: boolean;
  readonly webkitCompassHeading?: number;
  readonly webkitCompassAccuracy?: number;
}

/**
 * The heading in a reading, or null. W3C Device Orientation: alpha turns counterclockwise from north when `absolute`, and means nothing
 * otherwise. A magnetic heading is turned to true by `declination` (degrees east), or left as it is when that is not known.
 */
export function headingOf(
  reading: OrientationReading,
  declination: number | null,
  screenAngle: number,
): Heading | null {
  const { webkitCompassHeading: compass, webkitCompassAccuracy: accuracy, alpha, absolute } = reading;
  if (compass !== undefined && Number.isFinite(compass)) {
    // A negative accuracy is the device's way to say that the compass is not to be trusted.
    if (accuracy !== undefined && accuracy < 0) return null;
    return { degrees: normalDegrees(compass + screenAngle + (declination ?? 0)), kind: 'magnetic' };
  }
  if (!absolute || alpha === null || !Number.isFinite(alpha)) return null;
  return { degrees: normalDegrees(360 - alpha + screenAngle), kind: 'compass' };
}

/** Where the arrow on the screen points: straight up is ahead of the walker, or north when no heading is known. */
export function arrowTurn(bearing: number, heading: Heading | null): number {
  return normalDegrees(bearing - (heading?.degrees ?? 0));
}

/** Smooths headings round the circle, so that the arrow does not tremble: `share` of the new one is taken. */
export function eased(before: number | null, now: number, share = 0.25): number {
  if (before === null) return now;
  const apart = normalDegrees(now - before + 180) - 180;
  return normalDegrees(before + apart * share);
}
