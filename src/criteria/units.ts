/** Lengths and shares in a person's own units. */
import type { Units } from '../site/types.ts';

const footMetres = 0.3048;
const yardMetres = 0.9144;
const mileMetres = 1609.344;

/**
 * Metres as a number and a unit: feet below 100 yd, then yards, then miles; or metres (one decimal under 10), then kilometres. `like` is the
 * larger of two lengths that are compared: both then get its unit.
 */
function parts(metres: number, units: Units, like = metres): readonly [text: string, unit: string] {
  const size = Math.max(Math.abs(metres), Math.abs(like));
  if (units === 'us') {
    if (size < 99.5 * yardMetres) return [String(Math.round(metres / footMetres)), 'ft'];
    if (size < mileMetres) return [String(Math.round(metres / yardMetres)), 'yd'];
    return [(metres / mileMetres).toFixed(1), 'miles'];
  }
  if (size < 9.95) return [String(Math.round(metres * 10) / 10), 'm'];
  if (size < 999.5) return [String(Math.round(metres)), 'm'];
  return [(metres / 1000).toFixed(1), 'km'];
}

/** A length such as "46 m", "150 ft", "320 yd"; in the unit of `like` where that is longer, so that a comparison has one unit. */
export function lengthText(metres: number, units: Units, like?: number): string {
  return parts(metres, units, like).join(' ');
}

/** Two lengths in one unit, such as "8–30 m" or "25–100 ft". */
export function spanText(from: number, to: number, units: Units, like = to): string {
  const longest = Math.max(to, like);
  return `${parts(from, units, longest)[0]}–${parts(to, units, longest).join(' ')}`;
}

/** A share 0–1 such as "91 %". */
export function percentText(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A bearing such as "95°", 0–359. */
export function bearingText(degrees: number): string {
  return `${((Math.round(degrees) % 360) + 360) % 360}°`;
}
