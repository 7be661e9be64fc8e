/** CSV of any separator: the columns of latitude and longitude are found by name, decimal commas are understood, swapped columns are caught. */
import { dsvFormat } from 'd3-dsv';
import { readPosition } from './coordinates.ts';
import { undoFormulaGuard } from './csv.ts';
import { readNumber } from './decimals.ts';
import type { Attributes, ImportOptions, RawFeature, RawFile } from './import-types.ts';
import { count, fileIssue } from './issue.ts';
import { oneLine } from './safe-text.ts';

/** One point a row. Attributes: every other column by its heading, as text without our formula guard. */
export function readCsv(text: string, options: Pick<ImportOptions, 'columns'> = {}): RawFile {
  const separator = separatorOf(text);
  const rows = dsvFormat(separator)
    .parseRows(text)
    .filter((row) => row.some((cell) => cell.trim() !== ''));
  const heads = headings(rows[0] ?? []);
  if (rows.length < 2)
    return failed('csv-empty', 'The table has no rows under its headings.', 'Choose a table with a heading row.');
  const place = placeColumns(heads, options.columns);
  if (!place) return noColumns(heads);
  const features = rows.slice(1).map((row, i) => rowFeature(row, i + 1, heads, place, separator));
  return { features, issues: ragged(rows) };
}

type Place = { readonly lat: number; readonly lon: number } | { readonly both: number };

const latNames = [
  'lat',
  'latitude',
  'y',
  'lat_dd',
  'latdd',
  'ycoord',
  'y_coord',
  'latitude_deg',
  'breite',
  'breitengrad',
  'latitud',
];
const lonNames = [
  ...['lon', 'lng', 'long', 'longitude', 'x', 'lon_dd', 'londd', 'xcoord', 'x_coord', 'longitude_deg'],
  ...['laenge', 'länge', 'längengrad', 'longitud'],
];
const bothNames = [
  'coordinates',
  'coordinate',
  'position',
  'latlon',
  'lat_lon',
  'lat,lon',
  'latlng',
  'gps',
  'mgrs',
  'usng',
  'utm',
];

/** The separator that splits the heading row and the first rows most evenly; a comma when nothing does. */
function separatorOf(text: string): string {
  const head = text.slice(0, 50_000);
  const scored = [',', ';', '\t', '|'].map((separator) => {
    const rows = dsvFormat(separator).parseRows(head).slice(0, 20);
    const width = rows[0]?.length ?? 0;
    const even = rows.filter((row) => row.length === width).length;
    const named = headings(rows[0] ?? []).some((heading) => [...latNames, ...bothNames].includes(plain(heading)));
    return { separator, score: width < 2 ? 0 : (named ? 1000 : 0) + even + width / 100 };
  });
  return scored.reduce((best, one) => (one.score > best.score ? one : best)).separator;
}

function headings(row: readonly string[]): string[] {
  return row.map((cell, i) => oneLine(undoFormulaGuard(cell)) || `column ${i + 1}`);
}

function plain(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/\s*[([].*$/, '')
    .trim()
    .replace(/[\s.-]+/g, '_');
}

function placeColumns(heads: readonly string[], chosen: ImportOptions['columns']): Place | null {
  const plainHeads = heads.map(plain);
  const find = (names: readonly string[]) => names.map((name) => plainHeads.indexOf(name)).find((at) => at >= 0) ?? -1;
  const lat = chosen ? heads.indexOf(chosen.lat) : find(latNames);
  const lon = chosen ? heads.indexOf(chosen.lon) : find(lonNames);
  if (lat >= 0 && lon >= 0 && lat !== lon) return { lat, lon };
  const both = find(bothNames);
  return both >= 0 && !chosen ? { both } : null;
}

function rowFeature(
  row: readonly string[],
  number: number,
  heads: readonly string[],
  place: Place,
  separator: string,
): RawFeature {
  const used = new Set(Object.values(place) as number[]);
  const cells = heads.flatMap((head, i) =>
    used.has(i) || !row[i]?.trim() ? [] : [[head, undoFormulaGuard(row[i]!).trim()]],
  );
  const attributes: Attributes = Object.fromEntries(cells);
  const name = oneLine(attributes.name ?? attributes.Name);
  const from = `row ${number}${name ? ` “${name.slice(0, 60)}”` : ''}`;
  const position =
    'both' in place
      ? fromText(row[place.both] ?? '')
      : fromCells(row[place.lat] ?? '', row[place.lon] ?? '', separator);
  return typeof position === 'string'
    ? { from, attributes, geometry: null, trouble: position }
    : { from, attributes, geometry: { type: 'Point', coordinates: position } };
}

function fromText(text: string): [number, number] | string {
  const read = readPosition(text);
  return read.position
    ? [...read.position]
    : `“${oneLine(text).slice(0, 40)}” was not understood: ${read.issue?.sentence ?? ''}`;
}

function fromCells(lat: string, lon: string, separator: string): [number, number] | string {
  const [y, x] = [angle(lat, separator), angle(lon, separator)];
  if (x !== null && y !== null) return [x, y];
  if (!lat.trim() && !lon.trim()) return 'it has no latitude and longitude';
  const both = readPosition(`${lat}, ${lon}`);
  return both.position
    ? [...both.position]
    : `“${oneLine(lat).slice(0, 20)}, ${oneLine(lon).slice(0, 20)}” is no latitude and longitude`;
}

/** A number with a decimal dot, or with a decimal comma where the comma does not separate. */
function angle(cell: string, separator: string): number | null {
  const text = undoFormulaGuard(cell).trim().replace('−', '-');
  const comma = separator !== ',' || cell.includes(',');
  return readNumber(comma && /^[-+]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text);
}

function ragged(rows: readonly (readonly string[])[]) {
  const width = rows[0]!.length;
  const odd = rows.filter((row) => row.length > width).length;
  const sentence = `${count(odd, 'row')} had more cells than there are headings; the extra cells were left out.`;
  return odd === 0 ? [] : [fileIssue('warning', 'csv-ragged', sentence, 'Look at the names of those rows.')];
}

function noColumns(heads: readonly string[]): RawFile {
  const sentence = `No columns of latitude and longitude were found among: ${heads.slice(0, 20).join(', ')}.`;
  const issue = fileIssue(
    'error',
    'csv-no-columns',
    sentence,
    'Say which column is the latitude and which the longitude, or name them lat and lon.',
  );
  return { features: [], issues: [issue], ask: { what: 'columns', sentence, columns: heads } };
}

function failed(id: string, sentence: string, fix: string): RawFile {
  return { features: [], issues: [fileIssue('error', id, sentence, fix)] };
}
