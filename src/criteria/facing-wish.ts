/** How good each bearing is for the hole of a box at a place. */
import { turn } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import { type BeamRoom, beamRoom, faceBeams } from '../sky/face-beams.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { type FacingValues, facingOn } from './facing-figures.ts';
import { favored, knowsPerches, leeOf, openFront, perchFront, preference, tallFront } from './facing-parts.ts';
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

/** What the facing advice of a site rests on wherever a post stands, and room to work in (one caller at a time). */
export interface FacingGrounds {
  readonly site: SiteSettings;
  readonly values: FacingValues;
  /** Weighted sum of what is the same everywhere: the preference and the storm. */
  readonly everywhere: Float64Array;
  readonly everywhereWeight: number;
  /** The bearing that wins among equals. */
  readonly center: number;
  readonly beams: BeamRoom;
  readonly room: Float64Array;
}

/** Made once for a site. `latitude` in degrees, south below zero. */
export function facingGrounds(latitude: number, site: SiteSettings): FacingGrounds {
  const values = facingOn(site);
  const everywhere = preference(latitude, values).map((part) => part * values.preferenceWeight);
  const lee = site.stormFrom === null ? null : leeOf(site.stormFrom);
  if (lee) for (let i = 0; i < 360; i++) everywhere[i]! += values.stormWeight * lee[i]!;
  const center = favored(latitude, values);
  return {
    site,
    values,
    everywhere,
    everywhereWeight: values.preferenceWeight + (lee ? values.stormWeight : 0),
    center: latitude < 0 ? 180 - center : center,
    beams: beamRoom(),
    room: new Float64Array(360),
  };
}

/** Half the weight for a perch in front, half for nothing tall close before the hole; null where neither kind of thing is drawn. The same for every bird. */
function perchPart(spot: Spot, grounds: FacingGrounds): Float64Array | null {
  if (!knowsPerches(spot)) return null;
  return spot.keep(grounds, 0, () => {
    const { site, values, room } = grounds;
    const half = values.perchWeight / 2;
    const sum = spot.round().fill(spot.ground.has('perch') ? half : 2 * half);
    if (perchFront(spot, site, room)) for (let i = 0; i < 360; i++) sum[i]! += half * room[i]!;
    if (tallFront(spot, values, room)) for (let i = 0; i < 360; i++) sum[i]! -= half * room[i]!;
    return sum;
  });
}

/** Weighted sum of all parts but the sun's: the same for all birds that see alike from here. */
function sunless(spot: Spot, eye: number, grounds: FacingGrounds): Float64Array {
  const { everywhere, values } = grounds;
  const { openWeight, openHalf, sightReach } = values;
  const sight = spot.sight(eye, sightReach);
  return spot.keep(sight, openHalf, () => {
    const perch = perchPart(spot, grounds);
    const sum = openFront(sight, openHalf, sightReach, spot.round());
    for (let i = 0; i < 360; i++) sum[i] = openWeight * sum[i]! + everywhere[i]! + (perch === null ? 0 : perch[i]!);
    return sum;
  });
}

/**
 * The weighted mean of the parts, every whole degree. The sun's part is 0 where the front gets the most an unshaded face can and 1 where it
 * gets none, so a shaded post may look west.
 */
function worthOf(spot: Spot, sun: SunTable, eye: number, grounds: FacingGrounds): Float64Array {
  const { everywhereWeight, values, beams } = grounds;
  const { beamWeight, openWeight } = values;
  const sum = sunless(spot, eye, grounds);
  const perchWeight = knowsPerches(spot) ? values.perchWeight : 0;
  const faces = faceBeams(sun, spot.shaded(eye, sun), beams);
  const perBeam = beamWeight / (sun.brightest || 1);
  const whole = everywhereWeight + beamWeight + openWeight + perchWeight || 1;
  const worth = spot.round();
  for (let i = 0; i < 360; i++) {
    const beam = Math.max(0, beamWeight - perBeam * faces[i]!);
    worth[i] = (sum[i]! + beam) / whole;
  }
  return worth;
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
  let at = best;
  for (let steps = 0; steps < 359; steps++) {
    at += way;
    if (at === 360) at = 0;
    else if (at < 0) at = 359;
    if (values[at]! < least) return steps;
  }
  return 359;
}

function makeWish(spot: Spot, sun: SunTable, eye: number, grounds: FacingGrounds): FacingWish {
  const worth = worthOf(spot, sun, eye, grounds);
  const best = bestOf(worth, grounds.center);
  const least = worth[best]! - grounds.values.asGood;
  const right = reachOf(worth, best, 1, least);
  const left = reachOf(worth, best, -1, least);
  return { worth, best, from: (best - left + 360) % 360, to: (best + right) % 360, all: right >= 359 };
}

/** Works the wish out at a spot, once for a sun and an eye height. */
export function facingWish(spot: Spot, sun: SunTable, eye: number, grounds: FacingGrounds): FacingWish {
  return spot.keep(sun, eye, () => makeWish(spot, sun, eye, grounds));
}

/** What a bearing is worth, between whole degrees by a straight line. */
export function worthAt(wish: FacingWish, bearing: number): number {
  const low = Math.floor(bearing);
  const [at, next] = [((low % 360) + 360) % 360, (((low + 1) % 360) + 360) % 360];
  return wish.worth[at]! + (bearing - low) * (wish.worth[next]! - wish.worth[at]!);
}
