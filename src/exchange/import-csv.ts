/** CSV of any separator: the columns of the place are found by name (degrees, or easting and northing), decimal commas are understood. */
import { dsvFormat } from 'd3-dsv';
import type { Issue, LonLat } from '../site/types.ts';
import { readPosition } from './coordinates.ts';
import { undoFormulaGuard } from './csv.ts';
import { headings, isPlaceName, type PairColumns, type PlaceColumns, placeColumns } from './csv-columns.ts';
import { askDegrees, placeMetres } from './csv-metres.ts';
import { readNumber } from './decimals.ts';
import type { Ask, Attributes, ImportOptions, RawFeature, RawFile } from './import-types.ts';
import { count, fileIssue } from './issue.ts';
import { oneLine } from './safe-text.ts';
import { readZone, type ZoneText } from './utm-zone.ts';

/** One point a row. Attributes: every other column by its heading, as text without our formula guard. */
export function readCsv(text: string, options: Pick<ImportOptions, 'columns' | 'projection'> = {}): RawFile {
  const separator = separatorOf(text);
  const rows = dsvFormat(separator)
    .parseRows(text)
    .filter((row) => row.some((cell) => cell.trim() !== ''));
  const heads = headings((rows[0] ?? []).map(undoFormulaGuard));
  if (rows.length < 2)
    return failed('csv-empty', 'The table has no rows under its headings.', 'Choose a table with a heading row.');
  const place = placeColumns(heads, options.columns);
  if (!place) return noColumns(heads);
  const body = rows.slice(1).map((row, i) => rowOf(row, i + 1, heads));
  const { places, used, issues = [], ask, axesSure } = placesOf(body, heads, place, separator, options.projection);
  if (ask) return { features: [], issues, ask };
  const left = new Set(used);
  const features = body.map((row, i) => featureOf(row, heads, left, places[i]!));
  return { features, issues: [...issues, ...ragged(rows)], ...(axesSure ? { axesSure } : {}) };
}

/** The separator that splits the heading row and the first rows most evenly; a comma when nothing does. */
function separatorOf(text: string): string {
  const head = text.slice(0, 50_000);
  const scored = [',', ';', '\t', '|'].map((separator) => {
    const rows = dsvFormat(separator).parseRows(head).slice(0, 20);
    const width = rows[0]?.length ?? 0;
    const even = rows.filter((row) => row.length === width).length;
    const named = headings((rows[0] ?? []).map(undoFormulaGuard)).some(isPlaceName);
    return { separator, score: width < 2 ? 0 : (named ? 1000 : 0) + even + width / 100 };
  });
  return scored.reduce((best, one) => (one.score > best.score ? one : best)).separator;
}

/** A row under the headings: its thing, still without a place, and its cells. */
interface Row {
  readonly from: string;
  readonly cells: readonly string[];
}

type PlaceOrTrouble = LonLat | string;

function placesOf(
  rows: readonly Row[],
  heads: readonly string[],
  place: PlaceColumns,
  separator: string,
  projection: string | undefined,
): Located {
  if ('both' in place)
    return { places: rows.map(({ cells }) => fromText(cells[place.both] ?? '')), used: [place.both] };
  const { across, up, named } = place;
  const columns = `“${heads[across]}” and “${heads[up]}”`;
  const size = sizeOf(rows, place, separator);
  const degrees = named === 'degrees' || (named !== 'metres' && size !== 'metres');
  if (degrees) {
    const places = rows.map(({ cells }) => fromCells(cells[up] ?? '', cells[across] ?? '', separator));
    return { places, used: [across, up], issues: named === 'xy' ? [readAsDegrees(columns, projection)] : [] };
  }
  const zones = rows.map(({ cells }) => zoneOf(cells, place));
  const metres = rows.map(({ cells }, i) => ({
    easting: ordinate(cells[across] ?? '', separator),
    northing: ordinate(cells[up] ?? '', separator),
    zone: zones[i]!,
  }));
  const found =
    size === 'degrees' && projection === undefined ? askDegrees(columns) : placeMetres(metres, columns, projection);
  const spent = zones.some((zone) => zone !== null) ? [place.zone, place.half] : [];
  return { ...found, used: [across, up, ...spent].filter((at) => at !== null), axesSure: true };
}

interface Located {
  readonly places: readonly PlaceOrTrouble[];
  /** Columns that need not be kept as attributes. */
  readonly used: readonly number[];
  readonly issues?: readonly Issue[];
  readonly ask?: Ask;
  readonly axesSure?: true;
}

/** What most of the figures can be: more than a whole turn is no angle, and no easting and northing are both as small as one. */
function sizeOf(rows: readonly Row[], { across, up }: PairColumns, separator: string): 'degrees' | 'metres' | null {
  const figures = rows
    .map(({ cells }) => [across, up].map((at) => ordinate(cells[at] ?? '', separator)))
    .filter((pair) => pair.every((figure) => typeof figure === 'number'));
  if (figures.length === 0) return null;
  const large = figures.filter((pair) => pair.some((figure) => Math.abs(Number(figure)) > 360)).length;
  return large > figures.length / 2 ? 'metres' : 'degrees';
}

function zoneOf(cells: readonly string[], { zone, half }: PairColumns): ZoneText | null {
  const text = zone === null ? '' : (cells[zone] ?? '');
  const read = readZone(text);
  return read?.half === null && half !== null ? (readZone(`${text} ${cells[half] ?? ''}`) ?? read) : read;
}

function readAsDegrees(columns: string, projection: string | undefined): Issue {
  const unused = projection === undefined ? '' : ' The projection you gave was not used.';
  const sentence = `The columns ${columns} were read as longitude and latitude, because their figures are that small.${unused}`;
  return fileIssue(
    'note',
    'xy-as-degrees',
    sentence,
    'If they are not degrees, name the columns easting and northing.',
  );
}

function rowOf(cells: readonly string[], number: number, heads: readonly string[]): Row {
  const at = heads.findIndex((head) => head === 'name' || head === 'Name');
  const name = oneLine(undoFormulaGuard(cells[at] ?? ''));
  return { from: `row ${number}${name ? ` “${name.slice(0, 60)}”` : ''}`, cells };
}

function featureOf(
  { from, cells }: Row,
  heads: readonly string[],
  used: Set<number>,
  place: PlaceOrTrouble,
): RawFeature {
  const kept = heads.flatMap((head, i) =>
    used.has(i) || !cells[i]?.trim() ? [] : [[head, undoFormulaGuard(cells[i]!).trim()]],
  );
  const attributes: Attributes = Object.fromEntries(kept);
  return typeof place === 'string'
    ? { from, attributes, geometry: null, trouble: place }
    : { from, attributes, geometry: { type: 'Point', coordinates: [...place] } };
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

/** Metres as a number, with a unit or an axis letter behind it if need be; a sentence when it is none or may be two numbers. */
function ordinate(cell: string, separator: string): number | string {
  const text = undoFormulaGuard(cell).trim();
  const bare = text.replace(/\s*m?\s*[EN]?$/i, '');
  if (bare === '') return 'it has no easting and northing';
  if (/^\d{1,3},\d{3}$/.test(bare)) return `“${bare}” may be a decimal comma or thousands; write it without the comma`;
  const grouped = /^\d{1,3}(,\d{3})+\.\d+$|^\d{1,3}(,\d{3}){2,}$/.test(bare);
  return (
    angle(grouped ? bare.replaceAll(',', '') : bare, separator) ??
    `“${oneLine(text).slice(0, 20)}” is no easting or northing`
  );
}

function ragged(rows: readonly (readonly string[])[]) {
  const width = rows[0]!.length;
  const odd = rows.filter((row) => row.length > width).length;
  const sentence = `${count(odd, 'row')} had more cells than there are headings; the extra cells were left out.`;
  return odd === 0 ? [] : [fileIssue('warning', 'csv-ragged', sentence, 'Look at the names of those rows.')];
}

function noColumns(heads: readonly string[]): RawFile {
  const sentence = `No columns of latitude and longitude, or of easting and northing, were found among: ${heads.slice(0, 20).join(', ')}.`;
  const issue = fileIssue(
    'error',
    'csv-no-columns',
    sentence,
    'Say which columns they are, or name them lat and lon, or easting and northing.',
  );
  return { features: [], issues: [issue], ask: { what: 'columns', sentence, columns: heads } };
}

function failed(id: string, sentence: string, fix: string): RawFile {
  return { features: [], issues: [fileIssue('error', id, sentence, fix)] };
}
