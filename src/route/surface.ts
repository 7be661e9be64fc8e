/** The walking surface: how to get from one place to another, how far and how long. */
import type { Point } from '../geometry/point.ts';
import { distance } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import { minutesPerMetreOffPath } from './walk-time.ts';

/** A way between two places. */
export interface Way {
  readonly metres: number;
  readonly minutes: number;
  readonly line: readonly Point[];
}

/** Ways between every two of the places asked for, by index. */
export interface Ways {
  /** Null when no walk joins them. */
  way(a: number, b: number): Way | null;
}

/** Ways between all `places`. */
export function waysBetween(_ground: Ground, places: readonly Point[]): Ways {
  return {
    way(a, b) {
      const metres = distance(places[a], places[b]);
      return { metres, minutes: metres * minutesPerMetreOffPath, line: [places[a], places[b]] };
    },
  };
}
