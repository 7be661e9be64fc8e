/** The parts of the facing advice, each 0–1 for every whole degree (index 0 = north, clockwise). */
import { normalDegrees, turn } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import { faceBeams } from '../sky/face-beams.ts';
import type { SunTable } from '../sky/sun-table.ts';
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
const northern = (degrees: number, latitude: number) => (latitude < 0 ? normalDegrees(180 - degrees) : degrees);

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

/** Away from the afternoon sun as it reaches this post: 1 where the front gets none, 0 where it gets the most an unshaded face can. */
export function coolFront(sun: SunTable, shaded: Uint8Array): Float64Array {
  if (sun.brightest === 0) return new Float64Array(360).fill(1);
  return faceBeams(sun, shaded).map((beam) => Math.max(0, 1 - beam / sun.brightest));
}

/** Away from where storms come from: 0 facing it, 1 with the back to it. */
export function leeOf(stormFrom: number): Float64Array {
  const part = new Float64Array(360);
  for (let degrees = 0; degrees < 360; degrees++) part[degrees] = turn(degrees, stormFrom) / 180;
  return part;
}

/** Open land in front: mean free sight within `half` degrees to each side, as a share of the reach. */
export function openFront(sight: Float64Array, half: number, reach: number): Float64Array {
  const side = Math.round(half);
  const part = new Float64Array(360);
  let sum = 0;
  for (let i = -side; i <= side; i++) sum += sight[(i + 360) % 360]!;
  for (let degrees = 0; degrees < 360; degrees++) {
    part[degrees] = sum / (2 * side + 1) / reach;
    sum += sight[(degrees + side + 1) % 360]! - sight[(degrees - side + 360) % 360]!;
  }
  return part;
}

/** Spreads peaks to both sides, losing 1 over 90°: the upper envelope of all of them, in two rounds of the circle each way. */
function spread(peaks: Float64Array): Float64Array {
  const loss = 1 / 90;
  for (let i = 0; i < 720; i++) peaks[(i + 1) % 360] = Math.max(peaks[(i + 1) % 360]!, peaks[i % 360]! - loss);
  for (let i = 720; i > 0; i--) peaks[(i + 359) % 360] = Math.max(peaks[(i + 359) % 360]!, peaks[i % 360]! - loss);
  return peaks;
}

/** Puts a thing worth `worth` at an exact bearing onto the two whole degrees beside it. */
function put(peaks: Float64Array, toward: number, worth: number): void {
  const low = Math.floor(toward);
  const past = toward - low;
  const [at, next] = [low % 360, (low + 1) % 360];
  peaks[at] = Math.max(peaks[at]!, worth - past / 90);
  peaks[next] = Math.max(peaks[next]!, worth - (1 - past) / 90);
}

/** A perch in front at a good distance and nothing tall close before the hole; null where neither is drawn on the site. */
export function perchFront(spot: Spot, site: SiteSettings, values: FacingValues): Float64Array | null {
  const { ground } = spot;
  const [perches, talls] = [ground.has('perch'), ground.has('tall')];
  if (!perches && !talls) return null;
  const perch = new Float64Array(360);
  const byDistance = perchDistance(site);
  if (perches)
    for (const p of placesAround(spot, 'perch', perchReach(site))) put(perch, p.toward, byDistance(p.distance));
  const tall = new Float64Array(360);
  const reach = values.tallNear + values.tallSoft;
  if (talls)
    for (const p of placesAround(spot, 'tall', reach))
      put(tall, p.toward, Math.min(1, (reach - p.distance) / values.tallSoft));
  spread(perch);
  spread(tall);
  return perch.map((worth, i) => (perches ? 0.5 * worth : 0.5) + 0.5 * (1 - tall[i]!));
}
