/** CSV (RFC 4180): comma, CRLF, quotes where needed, a byte order mark so that spreadsheets read UTF-8, and no cell that a spreadsheet would run. */
import { shortDecimal } from './decimals.ts';
import type { Exported, ExportedThing, PlainValue } from './exported.ts';
import { cleanText } from './safe-text.ts';

/** One column of a table: its heading and what it shows of a row. Text is made safe, numbers stay numbers. */
export interface Column<Row> {
  readonly name: string;
  readonly value: (row: Row) => PlainValue | null | undefined;
}

/** The table as CSV text. Numbers are written plainly with at most nine decimals; NaN and missing values are empty cells. */
export function toCsv<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const head = columns.map((column) => cell(column.name)).join(',');
  const lines = rows.map((row) => columns.map((column) => cell(column.value(row))).join(','));
  return `\ufeff${[head, ...lines].join('\r\n')}\r\n`;
}

/**
 * Text that a spreadsheet would take for a formula (OWASP "CSV Injection": = + - @ tab CR first; full-width forms too, ours)
 * gets a quote mark before it. A plain number in text does not: −81.5 must stay one. `undoFormulaGuard` takes exactly this back.
 */
export function formulaGuard(text: string): string {
  return looksLikeFormula(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
}

/** The text as it was before `formulaGuard`. */
export function undoFormulaGuard(text: string): string {
  return text.startsWith("'") && looksLikeFormula(text) ? text.slice(1) : text;
}

/** Places only (`name,lat,lon` first, then number, kind, id, note and the facts). Lines and areas are left out; unplaced things have empty lat and lon. */
export function writePlacesCsv(exported: Exported): string {
  const rows = exported.things.filter((thing) => thing.geometry === null || thing.geometry.type === 'Point');
  const own = new Set(['name', 'lat', 'lon', 'number', 'kind', 'id', 'note']);
  const facts = new Set(rows.flatMap((row) => Object.keys(row.properties)).filter((key) => !own.has(key)));
  return toCsv(rows, [
    { name: 'name', value: (row) => row.name },
    { name: 'lat', value: (row) => ordinate(row, 1) },
    { name: 'lon', value: (row) => ordinate(row, 0) },
    { name: 'number', value: (row) => row.number },
    { name: 'kind', value: (row) => row.kind },
    { name: 'id', value: (row) => row.id },
    { name: 'note', value: (row) => row.note },
    ...[...facts].map((key) => ({ name: key, value: (row: ExportedThing) => row.properties[key] })),
  ]);
}

function ordinate(thing: ExportedThing, axis: 0 | 1): number | null {
  return thing.geometry?.type === 'Point' ? Number(shortDecimal(thing.geometry.coordinates[axis]!, 7)) : null;
}

function cell(value: PlainValue | null | undefined): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return numberCell(value);
  const text = formulaGuard(cleanText(value));
  return /[",;\t\n\r|]|^\s|\s$/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}

function numberCell(value: number): string {
  return Number.isFinite(value) && Math.abs(value) < 1e21 ? shortDecimal(value, 9) : '';
}

function looksLikeFormula(text: string): boolean {
  return /^['\s]*[=+\-@\t\r＝＋－＠]/.test(text);
}
