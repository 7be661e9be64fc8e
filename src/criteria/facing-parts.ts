/** The parts of the facing advice, each 0–1 for every whole degree (index 0 = north, clockwise). */
import { normalDegrees, turn } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import { placesAround } from './around.ts';
import type { FacingValues } from './facing-figures.ts';
import { perchDistance, perchReach } from './perch.ts';
import type { Spot } from './spot.ts';

/** The bearing favored at a latitude, for the northern half: one bearing in the south, another in the north, straight between. */
export function favored(latitude: number, values: FacingValues): number {
  const north = Math.abs(latitude);
  const share = (north - values.warmLatitude) / Math.max(0.1, values.coolLatitude - values.warmLatitude);
  return values.warmBearing + Math.min(1, Math.max(0, share)) * (values.coolBearing - values.warmBearing);
}

/** The bearing as it counts in the northern half: south of the equator north and south change places. */
function northern(degrees: number, latitude: number): number {
  return latitude < 0 ? normalDegrees(180 - degrees) : degrees;
}

/** What trail texts and papers prefer: full inside the band, falling over the rim, leaning toward the latitude's bearing. */
export function preference(latitude: number, values: FacingValues): Float64Array {
  const width = normalDegrees(values.bandTo - values.bandFrom);
  const middle = values.bandFrom + width / 2;
  const center = favored(latitude, values);
  const part = new Float64Array(360);
  for (let degrees = 0; degrees < 360; degrees++) {
    const bearing = northern(degrees, latitude);
    const outside = Math.max(0, turn(bearing, middle) - width / 2);
    const band = Math.max(0, 1 - outside / values.rim);
    part[degrees] = (1 - values.lean) * band + values.lean * (1 - turn(bearing, center) / 180);
  }
  return part;
}

/** Away from where storms come from: 0 facing it, 1 with the back to it. */
export function leeOf(stormFrom: number): Float64Array {
  return Float64Array.from({ length: 360 }, (_, degrees) => turn(degrees, stormFrom) / 180);
}

/** Open land in front: mean free sight within `half` degrees to each side, as a share of the reach. Written into `into`. */
export function openFront(sight: Float64Array, half: number, reach: number, into: Float64Array): Float64Array {
  const side = Math.min(179, Math.round(half));
  const whole = (2 * side + 1) * reach;
  let sum = 0;
  for (let i = -side; i <= side; i++) sum += sight[i < 0 ? i + 360 : i]!;
  let enters = side + 1;
  let leaves = 360 - side;
  for (let degrees = 0; degrees < 360; degrees++) {
    if (enters === 360) enters = 0;
    if (leaves === 360) leaves = 0;
    into[degrees] = sum / whole;
    sum += sight[enters++]! - sight[leaves++]!;
  }
  return into;
}

/** What a thing loses in worth for each degree it stands to the side of the facing: all of it at 90°. */
const loss = 1 / 90;

/** Spreads peaks to both sides: the upper envelope of all of them, by a round of the circle each way from the highest, which nothing lifts. */
function spread(peaks: Float64Array): void {
  let top = 0;
  for (let i = 1; i < 360; i++) if (peaks[i]! > peaks[top]!) top = i;
  let carried = peaks[top]!;
  for (let i = 1, at = top; i < 360; i++) {
    at = at === 359 ? 0 : at + 1;
    carried = Math.max(peaks[at]!, carried - loss);
    peaks[at] = carried;
  }
  carried = peaks[top]!;
  for (let i = 1, at = top; i < 360; i++) {
    at = at === 0 ? 359 : at - 1;
    carried = Math.max(peaks[at]!, carried - loss);
    peaks[at] = carried;
  }
}

/** Puts a thing worth `worth` at an exact bearing onto the two whole degrees beside it. */
function put(peaks: Float64Array, toward: number, worth: number): void {
  const low = Math.floor(toward);
  const past = toward - low;
  const at = low % 360;
  const next = (low + 1) % 360;
  peaks[at] = Math.max(peaks[at]!, worth - past * loss);
  peaks[next] = Math.max(peaks[next]!, worth - (1 - past) * loss);
}

/** Whether perches before the hole can be judged on a site at all. */
export function knowsPerches({ ground }: Spot): boolean {
  return ground.has('perch') || ground.has('tall');
}

/** A perch in front at a good distance, 0–1. Written into `into`; false, and nothing written, where there is none near. */
export function perchFront(spot: Spot, site: SiteSettings, into: Float64Array): boolean {
  const places = spot.ground.has('perch') ? placesAround(spot, 'perch', perchReach(site)) : [];
  if (places.length === 0) return false;
  into.fill(0);
  for (const { toward, distance } of places) put(into, toward, perchDistance(distance, site));
  spread(into);
  return true;
}

/** Something tall close before the hole, 0–1: the more the worse. Written into `into`; false where there is none near. */
export function tallFront(spot: Spot, { tallNear, tallSoft }: FacingValues, into: Float64Array): boolean {
  const reach = tallNear + tallSoft;
  const places = spot.ground.has('tall') ? placesAround(spot, 'tall', reach) : [];
  if (places.length === 0) return false;
  into.fill(0);
  for (const { toward, distance } of places) put(into, toward, Math.min(1, (reach - distance) / tallSoft));
  spread(into);
  return true;
}
