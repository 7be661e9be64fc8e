/** A position as people write it: decimal degrees, degrees-minutes-seconds, UTM, and the grid reference (MGRS, in the US the USNG). */

import type { LonLat } from '../site/types.ts';
import { plainDecimal } from './decimals.ts';
import { gridSquareAt } from './grid-square.ts';
import { latitudeBand, toUtm } from './utm.ts';

/** "41.5000000, -81.2500000": latitude first, as people say it. */
export function formatDecimal([lon, lat]: LonLat, places = 7): string {
  return `${plainDecimal(lat, places)}, ${plainDecimal(lon, places)}`;
}

/** `41°30′00.0″ N 81°15′00.0″ W`; `places` decimals of a second. */
export function formatDms([lon, lat]: LonLat, places = 1): string {
  return `${dms(lat, 'N', 'S', places)} ${dms(lon, 'E', 'W', places)}`;
}

/** `41°30.0000′ N 81°15.0000′ W`, degrees and decimal minutes as most receivers show them. */
export function formatDmm([lon, lat]: LonLat, places = 4): string {
  return `${dmm(lat, 'N', 'S', places)} ${dmm(lon, 'E', 'W', places)}`;
}

/** `17T 456789 4594321` (zone and latitude band, easting, northing, truncated to whole metres like the grid reference); null outside 80° S – 84° N. */
export function formatUtm(position: LonLat): string | null {
  const utm = toUtm(position);
  return (
    utm && `${String(utm.zone).padStart(2, '0')}${utm.band} ${Math.floor(utm.easting)} ${Math.floor(utm.northing)}`
  );
}

/** `17T NE 53703 74440`: digits (1–5) of easting and northing, truncated never rounded (FGDC-STD-011-2001 §3); null outside 80° S – 84° N. */
export function formatMgrs(position: LonLat, digits = 5): string | null {
  if (latitudeBand(position[1]) === null || !Number.isFinite(position[0])) return null;
  const text = gridSquareAt(position, digits);
  return `${text.slice(0, 3)} ${text.slice(3, 5)} ${text.slice(5, 5 + digits)} ${text.slice(5 + digits)}`;
}

function dms(value: number, plus: string, minus: string, places: number): string {
  const unit = 10 ** places;
  const total = Math.round(Math.abs(value) * 3600 * unit);
  const seconds = (total % (60 * unit)) / unit;
  const minutes = Math.floor(total / (60 * unit)) % 60;
  const whole = Math.floor(total / (3600 * unit));
  const secondsText = seconds.toFixed(places).padStart(places ? places + 3 : 2, '0');
  return `${whole}°${String(minutes).padStart(2, '0')}′${secondsText}″ ${value < 0 ? minus : plus}`;
}

function dmm(value: number, plus: string, minus: string, places: number): string {
  const unit = 10 ** places;
  const total = Math.round(Math.abs(value) * 60 * unit);
  const minutes = (total % (60 * unit)) / unit;
  const minutesText = minutes.toFixed(places).padStart(places ? places + 3 : 2, '0');
  return `${Math.floor(total / (60 * unit))}°${minutesText}′ ${value < 0 ? minus : plus}`;
}
