/** Ways kept for the places last asked about: the same boxes are walked again when their round is proven. */
import type { Point } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import { type Grain, type Ways, waysBetween } from './surface.ts';

/** Ways between places, with how far off each may find free ground: see `waysBetween`. */
export type FindWays = (ground: Ground, places: readonly Point[], reach: readonly number[], grain?: Grain) => Ways;

/** A finder that remembers its last answer. */
export function keptWays(): FindWays {
  let last: { ground: Ground; key: string; ways: Ways } | null = null;
  return (ground, places, reach, grain = 'fine') => {
    const key = JSON.stringify([places.map(({ x, y }) => [x, y]), reach, grain]);
    if (last?.ground !== ground || last.key !== key)
      last = { ground, key, ways: waysBetween(ground, places, reach, grain) };
    return last.ways;
  };
}
