/** Nest survival from exposure: Mayfield (1961, 1975), standard error of Johnson (1979). */

import { exactInterval, type Interval, normalQuantile } from './intervals.ts';

/** One nest under observation. */
export interface Exposed {
  readonly days: number;
  readonly lost: boolean;
}

export interface Survival {
  readonly nests: number;
  readonly losses: number;
  readonly exposureDays: number;
  /** Chance of a nest to live through one day. */
  readonly daily: number;
  /** sqrt((E − L) L / E³) with E exposure days, L losses. */
  readonly standardError: number;
  /** 95 % interval of the daily rate: ± 1.96 standard errors within 0–1; with no losses the exact binomial one, since the formula gives 0. */
  readonly interval: Interval;
}

/** Mayfield's daily survival of these nests; null when they were observed for no days at all. */
export function mayfield(nests: readonly Exposed[]): Survival | null {
  const exposureDays = nests.reduce((sum, nest) => sum + nest.days, 0);
  const losses = nests.filter((nest) => nest.lost).length;
  if (!(exposureDays > 0) || losses > exposureDays) return null;
  const daily = 1 - losses / exposureDays;
  const standardError = Math.sqrt(((exposureDays - losses) * losses) / exposureDays ** 3);
  const half = normalQuantile('0.95') * standardError;
  const interval =
    losses === 0
      ? { low: exactInterval(exposureDays, exposureDays).low, high: 1 }
      : { low: Math.max(0, daily - half), high: Math.min(1, daily + half) };
  return { nests: nests.length, losses, exposureDays, daily, standardError, interval };
}

/** Chance to live through `days` days, with the interval of the daily rate carried along. */
export function periodSurvival({ daily, interval }: Survival, days: number): { readonly share: number } & Interval {
  return { share: daily ** days, low: interval.low ** days, high: interval.high ** days };
}
