/** A scale in words. */
import type { Units } from '../site/types.ts';
import { trim } from './units.ts';

/** "1:2,400". */
export function ratioWords(scale: number): string {
  return `1:${String(Math.round(scale)).replace(/\B(?=(\d{3})+$)/g, ',')}`;
}

/** "1 in = 200 ft", or "1 cm = 25 m". */
export function scaleWords(scale: number, units: Units): string {
  if (units === 'metric') return `1 cm = ${trim(scale / 100, 1)} m`;
  const feet = scale / 12;
  return feet >= 5280 ? `1 in = ${trim(feet / 5280, 2)} mi` : `1 in = ${trim(feet, 0)} ft`;
}

/** The longest round length (1, 2 or 5 and zeros) of at most `most`. */
export function roundAtMost(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map((one) => one * power).find((one) => one <= most * (1 + 1e-9)) ?? power;
}
