/** A position as typed or pasted, read back in words so that swapped axes are seen before they do harm. */
import type { Issue, LonLat } from '../site/types.ts';
import { anglePair } from './angle-pair.ts';
import { formatDecimal } from './coordinate-format.ts';
import { gridSquareBounds } from './grid-square.ts';
import { fileIssue } from './issue.ts';
import { fromUtm, latitudeBand } from './utm.ts';

export type CoordinateForm = 'degrees' | 'utm' | 'grid';

/** What was read. `position` is null when it is no place on earth, then `issue` says why; `said` repeats a good one in words. */
export interface TypedPosition {
  readonly position: LonLat | null;
  readonly form: CoordinateForm | null;
  readonly said: string;
  readonly issue: Issue | null;
}

/**
 * Reads decimal degrees, degrees-minutes(-seconds), hemisphere letters before or after, UTM ("17T 456789 4567890") and MGRS/USNG.
 * Without letters the first figure is the latitude, unless only the other order is possible, it stands in [brackets] (GeoJSON), or `lonFirst`.
 */
export function readPosition(text: string, options: { readonly lonFirst?: boolean } = {}): TypedPosition {
  const plain = tidyMarks(text);
  if (plain === '') return unread('Nothing was typed.');
  if (plain.length > 200) return unread('This is too long for a position.');
  return gridReference(plain) ?? utmPosition(plain) ?? degreesPosition(plain, text, options.lonFirst ?? false);
}

const advice =
  'Type latitude and longitude such as "41.5, -81.25", degrees and minutes with N/S and E/W, UTM such as "17T 456789 4567890", or a grid reference such as "17T NE 53703 74440".';

function unread(reason: string): TypedPosition {
  return { position: null, form: null, said: '', issue: fileIssue('error', 'no-position', reason, advice) };
}

function read(position: LonLat, form: CoordinateForm, how: string, issue: Issue | null = null): TypedPosition {
  const [lon, lat] = position;
  const sides = `${lat < 0 ? 'south' : 'north'} of the equator, ${lon < 0 ? 'west' : 'east'} of Greenwich`;
  return { position, form, said: `${how}: ${formatDecimal(position)} (latitude, longitude; ${sides}).`, issue };
}

function gridReference(text: string): TypedPosition | null {
  const found = /^(?:MGRS|USNG)?\s*(\d{1,2})\s*([C-HJ-NP-X])\s*([A-HJ-NP-Z])\s*([A-HJ-NP-V])\s*(\d*)\s*(\d*)$/.exec(
    text,
  );
  if (!found) return null;
  const [, zone, band, column, row, first = '', second = ''] = found;
  const digits = first + second;
  const uneven = digits.length % 2 === 1 || (second !== '' && first.length !== second.length);
  if (uneven || digits.length > 10) {
    return unread('A grid reference needs as many digits for the easting as for the northing, at most five each.');
  }
  if (digits === '') return unread(`${text} is a square of 100 km; give digits for easting and northing.`);
  return squareOf(`${zone}${band}${column}${row}${digits}`, 10 ** (5 - digits.length / 2), band!, Number(zone));
}

function squareOf(reference: string, metres: number, band: string, zone: number): TypedPosition {
  const nowhere = unread(`There is no grid square ${reference}.`);
  if (zone < 1 || zone > 60) return nowhere;
  try {
    const [west, south, east, north] = gridSquareBounds(reference);
    const position: LonLat = [turnedHome((west + east) / 2), (south + north) / 2];
    const here = latitudeBand(position[1]);
    if (here === null || Math.abs(here.charCodeAt(0) - band.charCodeAt(0)) > 2) return nowhere;
    const size = metres >= 1000 ? `${metres / 1000} km` : `${metres} m`;
    return read(position, 'grid', `Read as the middle of the ${size} grid square ${reference}`);
  } catch {
    return nowhere;
  }
}

function turnedHome(lon: number): number {
  return lon >= 180 ? lon - 360 : lon < -180 ? lon + 360 : lon;
}

function utmPosition(text: string): TypedPosition | null {
  const found =
    /^(?:UTM|ZONE)?\s*(\d{1,2})\s*([C-HJ-NP-X])[\s,]+(\d{6}(?:\.\d+)?)\s*M?\s*E?[\s,]+(\d{1,8}(?:\.\d+)?)\s*M?\s*N?$/.exec(
      text,
    );
  if (!found) return null;
  const zone = Number(found[1]);
  const letter = found[2]!;
  const metres = { easting: Number(found[3]), northing: Number(found[4]) };
  const asBand = fromUtm({ zone, band: letter, ...metres });
  if (asBand && nearBand(asBand[1], letter))
    return read(asBand, 'utm', `Read as UTM zone ${zone}, latitude band ${letter}`);
  const half = letter === 'N' || letter === 'S' ? fromUtm({ zone, band: letter === 'N' ? 'N' : 'M', ...metres }) : null;
  if (half)
    return read(half, 'utm', `Read as UTM zone ${zone}, ${letter === 'N' ? 'northern' : 'southern'} half of the earth`);
  return unread(`UTM zone ${zone}${letter} has no such easting and northing.`);
}

function nearBand(latitude: number, band: string): boolean {
  return [latitude - 0.1, latitude, latitude + 0.1].some((near) => latitudeBand(near) === band);
}

function degreesPosition(plain: string, text: string, lonFirst: boolean): TypedPosition {
  const pair = anglePair(plain);
  if (typeof pair === 'string') return unread(pair);
  const [one, two] = pair;
  const bracketed = /^\s*\[.*\]\s*$/.test(text) || /^\W*l(on|ng).*lat/i.test(text);
  const lettered = one.axis ?? (two.axis && (two.axis === 'lat' ? 'lon' : 'lat'));
  const wanted = lettered ?? (lonFirst || bracketed ? 'lon' : 'lat');
  const swapped = lettered === null && wanted === 'lat' && Math.abs(one.value) > 90 && Math.abs(two.value) <= 90;
  const first = swapped ? 'lon' : wanted;
  const position: LonLat = first === 'lat' ? [two.value, one.value] : [one.value, two.value];
  if (Math.abs(position[1]) > 90) return unread(`Latitude ${position[1]} is beyond the poles (90).`);
  if (Math.abs(position[0]) > 180) return unread(`Longitude ${position[0]} is beyond 180.`);
  const why = lettered
    ? ''
    : swapped
      ? ', because the first is over 90'
      : bracketed
        ? ', as it is labeled or bracketed'
        : '';
  return read(position, 'degrees', `Read ${first === 'lat' ? 'latitude' : 'longitude'} first${why}`);
}

/** Upper case, one kind of mark for degrees, minutes, seconds and minus; brackets and a geo: prefix go. */
function tidyMarks(text: string): string {
  return text
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replace(/^\s*geo:([^;?]*).*$/is, '$1')
    .toUpperCase()
    .replace(/DEGREES?|DEG\b/g, '°')
    .replace(/[′’‘´`]/g, "'")
    .replace(/''|[″”“]/g, '"')
    .replace(/[−–—]/g, '-')
    .replace(/NORTH/g, 'N')
    .replace(/SOUTH/g, 'S')
    .replace(/EAST/g, 'E')
    .replace(/WEST/g, 'W')
    .replace(/\b(LAT(ITUDE)?|LON(GITUDE)?|LNG)\b[.:=]?|[[\]()]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
