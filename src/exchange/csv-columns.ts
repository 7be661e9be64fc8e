/** Which columns of a table say where a thing is, told by their headings alone. */
import { oneLine } from './safe-text.ts';

/**
 * Where a row's place stands, as column numbers from 0. `across` and `up` are longitude and latitude, or easting and northing;
 * `named` = what the headings say they are (`xy` says neither, `chosen` = the person picked them). `zone` and `half` are columns that may hold a UTM zone.
 */
export interface PairColumns {
  readonly across: number;
  readonly up: number;
  readonly named: 'degrees' | 'metres' | 'xy' | 'chosen';
  readonly zone: number | null;
  readonly half: number | null;
}

export type PlaceColumns = PairColumns | { readonly both: number };

const names = {
  lat: ['lat', 'latitude', 'lat_dd', 'latdd', 'latitude_deg', 'breite', 'breitengrad', 'latitud'],
  lon: [
    ...['lon', 'lng', 'long', 'longitude', 'lon_dd', 'londd', 'longitude_deg'],
    ...['laenge', 'länge', 'längengrad', 'longitud'],
  ],
  easting: [
    ...['easting', 'eastings', 'utm_e', 'utme', 'utm_easting', 'utm_east', 'easting_utm', 'easting_m', 'e_utm'],
    ...['utm_x', 'utmx', 'x_utm', 'rechtswert', 'ostwert', 'east', 'e'],
  ],
  northing: [
    ...['northing', 'northings', 'utm_n', 'utmn', 'utm_northing', 'utm_north', 'northing_utm', 'northing_m', 'n_utm'],
    ...['utm_y', 'utmy', 'y_utm', 'hochwert', 'nordwert', 'north', 'n'],
  ],
  x: ['x', 'xcoord', 'x_coord', 'x_coordinate', 'coord_x', 'point_x'],
  y: ['y', 'ycoord', 'y_coord', 'y_coordinate', 'coord_y', 'point_y'],
  zone: ['utm_zone', 'utmzone', 'zone_utm', 'grid_zone', 'gzd', 'zone', 'utm'],
  half: ['hemisphere', 'utm_hemisphere', 'hemi', 'utm_band', 'latitude_band', 'band'],
  both: [
    ...['coordinates', 'coordinate', 'position', 'latlon', 'lat_lon', 'lat,lon', 'latlng', 'gps'],
    ...['mgrs', 'usng', 'utm'],
  ],
} as const;

const { zone: _zone, half: _half, ...places } = names;
const placeNames = new Set<string>(Object.values(places).flat());

/** The headings of a row on one line each; an empty one is called by its number. */
export function headings(row: readonly string[]): string[] {
  return row.map((cell, i) => oneLine(cell) || `column ${i + 1}`);
}

/** Whether a heading is one of those that say where a thing is. */
export function isPlaceName(heading: string): boolean {
  return placeNames.has(plain(heading));
}

/** The columns of the place; null when the headings do not tell. Latitude and longitude go before easting and northing, these before x and y. */
export function placeColumns(
  heads: readonly string[],
  chosen?: { readonly lat: string; readonly lon: string },
): PlaceColumns | null {
  const plainHeads = heads.map(plain);
  const find = (list: readonly string[]) => list.map((name) => plainHeads.indexOf(name)).find((at) => at >= 0) ?? -1;
  const pair = (across: number, up: number, named: PairColumns['named']): PairColumns | null => {
    if (across < 0 || up < 0 || across === up) return null;
    const besides = (list: readonly string[]) => {
      const at = find(list);
      return at < 0 || at === across || at === up ? null : at;
    };
    return { across, up, named, zone: besides(names.zone), half: besides(names.half) };
  };
  if (chosen) return pair(heads.indexOf(chosen.lon), heads.indexOf(chosen.lat), 'chosen');
  const told =
    pair(find(names.lon), find(names.lat), 'degrees') ??
    pair(find(names.easting), find(names.northing), 'metres') ??
    pair(find([...names.lon, ...names.x]), find([...names.lat, ...names.y]), 'xy');
  const both = find(names.both);
  return told ?? (both >= 0 ? { both } : null);
}

function plain(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/\s*[([].*$/, '')
    .trim()
    .replace(/[\s.-]+/g, '_');
}
