/** Temperatures that hurt eggs and young, as printed, and the conversion that shows which printed pairs agree. */

import type { Figure } from './guide.ts';
import { figure } from './make.ts';

/** °C of so many °F. */
export function celsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** °F of so many °C. */
export function fahrenheit(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}

/** Whether a printed pair says the same to the nearest whole degree Fahrenheit. */
export function pairAgrees(degreesF: number, degreesC: number): boolean {
  return Math.round(fahrenheit(degreesC)) === Math.round(degreesF);
}

export interface HeatLimit {
  readonly what: string;
  /** °C. */
  readonly limit: Figure;
  /** °F as printed beside it; null when none was. */
  readonly printed: number | null;
}

/** Limits found in print. They explain the afternoon-sun grade; no temperature of a box is ever computed from them. */
export const heatLimits: readonly HeatLimit[] = [
  {
    what: 'eggs of most birds, for a short time',
    limit: figure(41, '°C', 'A', ['Webb 1987'], { range: [16, 41] }),
    printed: null,
  },
  {
    what: 'eggs of most birds, for hours',
    limit: figure(39, '°C', 'A', ['Webb 1987'], {
      range: [36, 39],
      note: 'Cooper & Chu 2002 print 40.5 °C as the upper end of good development: sources disagree.',
    }),
    printed: null,
  },
  {
    what: 'eggs and young of bluebirds',
    limit: figure(41, '°C', 'C', ['WMP', 'Sial'], {
      note: 'Printed as 107 °F, which is 41.7 °C; 41 °C is 105.8 °F. Kept without decimals.',
    }),
    printed: 107,
  },
];
