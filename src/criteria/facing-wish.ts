/** How good each bearing is for the hole of a box at a place. */
import { turn } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { type FacingValues, facingOn } from './facing-figures.ts';
import { coolFront, favored, leeOf, openFront, perchFront, preference } from './facing-parts.ts';
import type { Spot } from './spot.ts';

export interface FacingWish {
  /** 0–1 for every whole degree, index 0 = north, clockwise. */
  readonly worth: Float64Array;
  /** Whole degree with the most. */
  readonly best: number;
  /** The bearings round it that are as good; may run over north. `all` when every bearing is. */
  readonly from: number;
  readonly to: number;
  readonly all: boolean;
}

/** Adds `weight` times a part to the sum and returns the weight; nothing for a part that could not be judged. */
function add(sum: Float64Array, part: Float64Array | null, weight: number): number {
  if (!part) return 0;
  for (let i = 0; i < 360; i++) sum[i]! += weight * part[i]!;
  return weight;
}

/** The weighted mean of the parts, every whole degree. */
function worth(spot: Spot, sun: SunTable, site: SiteSettings, eye: number, values: FacingValues): Float64Array {
  const latitude = spot.ground.frame.centre[1];
  const sum = new Float64Array(360);
  const weights =
    add(sum, preference(latitude, values), values.preferenceWeight) +
    add(sum, coolFront(sun, spot.shaded(eye, sun)), values.beamWeight) +
    add(sum, site.stormFrom === null ? null : leeOf(site.stormFrom), values.stormWeight) +
    add(sum, openFront(spot.sight(eye, values.sightReach), values.openHalf, values.sightReach), values.openWeight) +
    add(sum, perchFront(spot, site, values), values.perchWeight);
  if (weights > 0) for (let i = 0; i < 360; i++) sum[i]! /= weights;
  return sum;
}

/** The whole degree worth most; of equals the one nearest to the bearing the latitude favors. */
function bestOf(values: Float64Array, center: number): number {
  let best = 0;
  for (let i = 1; i < 360; i++) {
    const gain = values[i]! - values[best]!;
    if (gain > 1e-9 || (gain > -1e-9 && turn(i, center) < turn(best, center))) best = i;
  }
  return best;
}

/** How far from the best, going one way (+1 or −1), bearings stay as good. */
function reachOf(values: Float64Array, best: number, way: number, least: number): number {
  let steps = 0;
  while (steps < 359 && values[(((best + way * (steps + 1)) % 360) + 360) % 360]! >= least) steps++;
  return steps;
}

/** Works the wish out at a spot, once for a sun and an eye height. */
export function facingWish(spot: Spot, sun: SunTable, site: SiteSettings, eye: number): FacingWish {
  return spot.keep(sun, eye, () => {
    const values = facingOn(site);
    const latitude = spot.ground.frame.centre[1];
    const list = worth(spot, sun, site, eye, values);
    const center = favored(latitude, values);
    const best = bestOf(list, latitude < 0 ? 180 - center : center);
    const least = list[best]! - values.asGood;
    const right = reachOf(list, best, 1, least);
    const left = reachOf(list, best, -1, least);
    const all = right >= 359;
    return { worth: list, best, from: (best - left + 360) % 360, to: (best + right) % 360, all };
  });
}

/** What a bearing is worth, between whole degrees by a straight line. */
export function worthAt(wish: FacingWish, bearing: number): number {
  const low = Math.floor(bearing);
  const [at, next] = [((low % 360) + 360) % 360, (((low + 1) % 360) + 360) % 360];
  return wish.worth[at]! + (bearing - low) * (wish.worth[next]! - wish.worth[at]!);
}
