/** Lengths as people type them, in the unit of the site: feet or meters. */
import type { Units } from '../site/types.ts';

const metresPerFoot = 0.3048;

/** The figure to show in an input: at most two decimals. */
export function shownLength(metres: number, units: Units): number {
  const value = units === 'metric' ? metres : metres / metresPerFoot;
  return Math.round(value * 100) / 100;
}

/** Metres of what was typed; null when it is no number. A unit typed with it ("40 ft", "12 m", "5 yd", 6') wins over the site's. */
export function typedLength(text: string, units: Units): number | null {
  const found = /^\s*([-+]?\d+(?:[.,]\d+)?)\s*(m|meters?|metres?|ft|feet|foot|'|yd|yards?)?\s*$/i.exec(text);
  if (!found) return null;
  const value = Number(found[1]!.replace(',', '.'));
  const unit = (found[2] ?? (units === 'metric' ? 'm' : 'ft')).toLowerCase();
  if (unit.startsWith('y')) return value * metresPerFoot * 3;
  return unit.startsWith('f') || unit === "'" ? value * metresPerFoot : value;
}
