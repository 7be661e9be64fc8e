/** A table on paper: ruled, tagged row by row, header repeated by the caller on each page. */
import { group, type Item, line, text } from './display.ts';
import type { Face } from './font-widths.ts';
import { shorten, wrapAtMost } from './measure.ts';
import { point, type Style } from './style.ts';

/** One line in a cell; the size is the table's own unless given. */
export interface CellLine {
  readonly words: string;
  readonly face?: Face;
  readonly size?: number;
}

/** What stands in a cell: lines of words, or drawn items at the cell's box. */
export type Cell = readonly CellLine[] | ((x: number, y: number, width: number, height: number) => Item[]);

export interface Column<Row> {
  readonly head: string;
  /** mm */
  readonly width: number;
  readonly align?: 'start' | 'middle';
  /** Head in plain letters, for narrow columns. */
  readonly light?: boolean;
  /** A thick line at its left. */
  readonly thick?: boolean;
  cell(row: Row): Cell;
}

/** Padding at the side of a cell, mm. */
const pad = 1.2;

/** Sizes of a table in mm and points. */
export interface TableLook {
  readonly size: number;
  readonly row: number;
  readonly head: number;
}

/** The table with its head at (x, y). The first column's cells head their rows. */
export function drawTable<Row>(
  x: number,
  y: number,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  look: TableLook,
): Item {
  const head = columns.map((column, i) =>
    group(cellItems(headLines(column, look), leftOf(columns, i, x), y, column, look.head, look), {
      tag: 'TH',
      scope: 'Column',
    }),
  );
  const body = rows.map((row, r) => {
    const top = y + look.head + r * look.row;
    const cells = columns.map((column, i) => {
      const items = cellItems(column.cell(row), leftOf(columns, i, x), top, column, look.row, look);
      return group(items, i === 0 ? { tag: 'TH', scope: 'Row' } : { tag: 'TD' });
    });
    return group(cells, { tag: 'TR' });
  });
  return group([group(rules(x, y, columns, rows.length, look)), group(head, { tag: 'TR' }), ...body], { tag: 'Table' });
}

/** Width of all columns, mm. */
export function tableWidth(columns: readonly Column<never>[]): number {
  return columns.reduce((sum, column) => sum + column.width, 0);
}

function leftOf(columns: readonly { readonly width: number }[], i: number, x: number): number {
  return columns.slice(0, i).reduce((sum, column) => sum + column.width, x);
}

function headLines(
  column: { head: string; width: number; light?: boolean; align?: string },
  look: TableLook,
): CellLine[] {
  const most = Math.max(1, Math.floor((look.head - 1) / (look.size * point * 1.15)));
  const face: Face = column.light ? 'sans' : 'sansBold';
  const room = column.width - (column.align === 'middle' ? 0.6 : 2 * pad);
  return wrapAtMost(most, column.head, room, look.size, face).map((words) => ({ words, face }));
}

function cellItems(
  cell: Cell,
  x: number,
  y: number,
  column: { width: number; align?: 'start' | 'middle' },
  height: number,
  look: TableLook,
): Item[] {
  if (typeof cell === 'function') return cell(x, y, column.width, height);
  const step = look.size * point * 1.16;
  const room = Math.max(1, Math.floor((height - 0.6) / step));
  const lines = cell.slice(0, room);
  const top = y + (height - lines.length * step) / 2;
  const middle = column.align === 'middle';
  return lines.map(({ words, face = 'sans', size = look.size }, i) => {
    const base = top + (i + 0.5) * step + size * point * 0.33;
    const shown = shorten(words, column.width - (middle ? 0.5 : 2 * pad), size, face);
    return text(middle ? x + column.width / 2 : x + pad, base, shown, size, {
      face,
      anchor: middle ? 'middle' : 'start',
    });
  });
}

function rules(
  x: number,
  y: number,
  columns: readonly { width: number; thick?: boolean }[],
  rows: number,
  look: TableLook,
): Item[] {
  const width = leftOf(columns, columns.length, 0);
  const bottom = y + look.head + rows * look.row;
  const items: Item[] = [line(x, y, x + width, y, 0.5), line(x, bottom, x + width, bottom, 0.5)];
  for (let r = 0; r < rows; r++) {
    const level = y + look.head + r * look.row;
    items.push(line(x, level, x + width, level, r === 0 ? 0.5 : 0.2));
  }
  for (let i = 0; i <= columns.length; i++) {
    const at = leftOf(columns, i, x);
    const thick = i === 0 || i === columns.length || columns[i]?.thick;
    items.push(line(at, y, at, bottom, thick ? 0.5 : 0.2));
  }
  return items;
}

/** A table in the sizes of a style. */
export function tableLook(style: Style, size: 'text' | 'small' = 'small'): TableLook {
  const letters = style[size];
  return {
    size: letters,
    row: Math.max(style.row, letters * point * 2.5),
    head: letters * point * 1.2 * (style.variant === 'large-print' ? 1 : 2) + 1.4,
  };
}
