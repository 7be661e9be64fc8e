/** UTM on WGS84 through proj4: the zone rules (with Norway and Svalbard) are ours, the projection is not. */
import proj4 from 'proj4';
import type { LonLat } from '../site/types.ts';

/** A UTM place. `band` is the latitude letter C–X (N and up is the northern hemisphere); metres. */
export interface Utm {
  readonly zone: number;
  readonly band: string;
  readonly easting: number;
  readonly northing: number;
}

const bands = 'CDEFGHJKLMNPQRSTUVWX';

/** UTM covers 80° S to 84° N (NGA.SIG.0012, 2014). */
export const utmSouth = -80;
export const utmNorth = 84;

/** The latitude band letter, 8° each from 80° S, X being 12°; null outside 80° S – 84° N. */
export function latitudeBand(latitude: number): string | null {
  if (!(latitude >= utmSouth && latitude <= utmNorth)) return null;
  // A hair south of the equator is still M: adding 80 would lose the hair.
  if (latitude < 0 && latitude > -8) return 'M';
  return bands[Math.min(Math.floor((latitude - utmSouth) / 8), bands.length - 1)] ?? null;
}

/** The zone a place is in, 1–60, with the wide zones of south-west Norway (32V) and Svalbard (31X 33X 35X 37X). */
export function utmZone([lon, lat]: LonLat): number {
  const plain = Math.floor((wrap(lon) + 180) / 6) + 1;
  if (lat >= 56 && lat < 64 && lon >= 3 && lon < 12) return 32;
  if (lat >= 72 && lat <= 84 && lon >= 0 && lon < 42) return lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37;
  return plain;
}

/** The place in UTM metres, in its own zone or the one given; null outside 80° S – 84° N. */
export function toUtm(position: LonLat, zone = utmZone(position)): Utm | null {
  const band = latitudeBand(position[1]);
  if (band === null || !Number.isFinite(position[0])) return null;
  const [easting, northing] = proj4('EPSG:4326', definition(zone, band < 'N'), [wrap(position[0]), position[1]]);
  return { zone, band, easting: easting!, northing: northing! };
}

/** Longitude and latitude of a UTM place; null when the figures are no place (zone, band, easting or northing out of bounds). */
export function fromUtm({ zone, band, easting, northing }: Utm): LonLat | null {
  const inBounds = easting >= 100_000 && easting < 1_000_000 && northing >= 0 && northing <= 10_000_000;
  if (!inBounds || !Number.isInteger(zone) || zone < 1 || zone > 60 || !bands.includes(band)) return null;
  const [lon, lat] = proj4(definition(zone, band < 'N'), 'EPSG:4326', [easting, northing]);
  return Number.isFinite(lon) && Number.isFinite(lat) ? [wrap(lon!), lat!] : null;
}

/** The proj4 text of a UTM zone on WGS84. */
export function definition(zone: number, south: boolean): string {
  return `+proj=utm +zone=${zone}${south ? ' +south' : ''} +datum=WGS84 +units=m +no_defs`;
}

function wrap(lon: number): number {
  return lon >= -180 && lon < 180 ? lon : ((((lon + 180) % 360) + 360) % 360) - 180;
}
