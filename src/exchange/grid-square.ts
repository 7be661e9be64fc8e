/** The one file that knows the grid-reference package (MGRS and the US National Grid write the same squares). */
import * as loaded from 'mgrs';
import type { LonLat } from '../site/types.ts';

type Mgrs = typeof import('mgrs');

// Node hands over the package's older build under `default`, bundlers its module build with names (and warn of a plain `.default`).
const mgrs: Mgrs = (Reflect.get(loaded, 'default') as Mgrs | undefined) ?? loaded;

/** The reference of a place with `digits` (0–5) for easting and northing each, truncated, zone padded to two digits: "17TNE5370374440". */
export function gridSquareAt([lon, lat]: LonLat, digits: number): string {
  return mgrs.forward([lon, lat], digits).padStart(5 + digits * 2, '0');
}

/** West, south, east and north of a square in degrees. Throws when there is no such square. */
export function gridSquareBounds(reference: string): readonly [number, number, number, number] {
  return mgrs.inverse(reference);
}
