/** Eastings and northings of a table: the UTM zone each row names, else the projection the person gave, else a question. */
import type { Issue, LonLat } from '../site/types.ts';
import type { Ask } from './import-types.ts';
import { count, fileIssue } from './issue.ts';
import { readProjection } from './projection.ts';
import { oneLine } from './safe-text.ts';
import { placeInZone, readZone, type ZoneText, zoneWords } from './utm-zone.ts';

/** One row: its figures as numbers (or why they are none), and what its zone columns say. */
export interface MetreRow {
  readonly easting: number | string;
  readonly northing: number | string;
  readonly zone: ZoneText | null;
}

/** A place or the reason there is none for each row, in their order; or the question to ask first. */
export interface MetrePlaces {
  readonly places: readonly (LonLat | string)[];
  readonly issues: readonly Issue[];
  readonly ask?: Ask;
}

/** `columns` names the two columns in sentences; `projection` is the person's answer. */
export function placeMetres(rows: readonly MetreRow[], columns: string, projection: string | undefined): MetrePlaces {
  const given = projection === undefined ? null : referenceOf(projection);
  const zoned = rows.filter(({ zone }) => zone !== null && zone.half !== null).length;
  const figures = rows.some(({ easting, northing }) => typeof easting === 'number' && typeof northing === 'number');
  if (figures && !given && (zoned === 0 || projection !== undefined)) return askZone(rows, columns, projection);
  const places = rows.map((row) => placeOf(row, given));
  return { places, issues: [...said(rows, places, given), ...bandOrHalf(rows, places, given)] };
}

/** A question about figures that are too small for the meters their headings promise. */
export function askDegrees(columns: string): MetrePlaces {
  const sentence = `The columns ${columns} hold figures that look like degrees, not meters.`;
  const hint =
    'Give EPSG:4326 if they are longitude and latitude, else the EPSG code of their projection, such as EPSG:32617.';
  return asking(sentence, hint);
}

interface Reference {
  readonly name: string;
  readonly zone: ZoneText | null;
  toLonLat(easting: number, northing: number): LonLat | null;
}

function referenceOf(text: string): Reference | null {
  const zone = readZone(text);
  if (zone)
    return zone.half === null
      ? null
      : { name: `UTM zone ${zoneWords(zone)}`, zone, toLonLat: (x, y) => placeInZone(zone, x, y) };
  const projection = readProjection(text);
  return projection && { name: projection.name, zone: null, toLonLat: (x, y) => projection.toLonLat(x, y) };
}

function placeOf({ easting, northing, zone }: MetreRow, given: Reference | null): LonLat | string {
  if (typeof easting === 'string') return easting;
  if (typeof northing === 'string') return northing;
  const own = zone?.half ? zone : null;
  if (!own && !given) return zone ? `its zone ${zone.zone} does not say north or south` : 'it has no UTM zone';
  if (!own && zone && given?.zone && given.zone.zone !== zone.zone)
    return `its zone is ${zone.zone}, but ${given.name} was given`;
  const place = own ? placeInZone(own, easting, northing) : given!.toLonLat(easting, northing);
  const where = own ? `UTM zone ${zoneWords(own)}` : given!.name;
  return place ?? `easting ${easting}, northing ${northing} is no place in ${where}`;
}

function said(rows: readonly MetreRow[], places: readonly (LonLat | string)[], given: Reference | null): Issue[] {
  const zones = new Set(rows.flatMap(({ zone }, i) => (zone?.half && isPlace(places[i]!) ? [zoneWords(zone)] : [])));
  const rest = rows.some(({ zone }, i) => !zone?.half && isPlace(places[i]!));
  const own = zones.size > 0 ? [`UTM zone ${[...zones].slice(0, 5).join(', ')} (WGS84) as the rows say`] : [];
  const from = [...own, ...(given && rest ? [given.name] : [])];
  const unused = given && !rest && zones.size > 0 ? ` ${given.name}, which was given, was not needed.` : '';
  const sentence = `Positions were turned from ${from.join(' and ')} into longitude and latitude.${unused}`;
  const check = 'Check that the things lie where they should.';
  return from.length > 0 ? [fileIssue('note', 'projected', sentence, check)] : [];
}

/** Band S (32–40° north) and the southern half are written alike, and eastings there fit both. */
function bandOrHalf(rows: readonly MetreRow[], places: readonly (LonLat | string)[], given: Reference | null): Issue[] {
  const unsure = rows.filter(({ zone }, i) => {
    const place = places[i]!;
    return (zone?.half ? zone : given?.zone)?.half === 'S' && isPlace(place) && place[1] > 0;
  }).length;
  const sentence = `In ${count(unsure, 'row')} the S after the zone was read as latitude band S (32–40° north), not as the southern half of the earth.`;
  return unsure > 0
    ? [fileIssue('note', 'utm-band-s', sentence, 'For the southern half write "south" in place of S.')]
    : [];
}

function isPlace(place: LonLat | string): place is LonLat {
  return typeof place !== 'string';
}

function askZone(rows: readonly MetreRow[], columns: string, tried: string | undefined): MetrePlaces {
  const bare = rows.find(({ zone }) => zone !== null)?.zone;
  const what = bare
    ? `The UTM zone (${bare.zone}) of the columns ${columns} does not say north or south`
    : `The columns ${columns} hold meters, and nothing says in which projection or UTM zone`;
  const wrong = tried === undefined ? '' : `; “${oneLine(tried).slice(0, 40)}”, which was given, is not known`;
  return asking(
    `${what}${wrong}.`,
    'Give the UTM zone with its letter, such as 17N or 17T, or an EPSG code such as EPSG:32617.',
  );
}

function asking(sentence: string, hint: string): MetrePlaces {
  const issues = [fileIssue('error', 'projection-unknown', sentence, hint)];
  return { places: [], issues, ask: { what: 'projection', sentence, hint } };
}
