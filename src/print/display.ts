/** The one display list a sheet is made of. Lengths in millimetres from the paper's top left corner (x right, y down), text sizes in points. */
import type { Face } from './font-widths.ts';

/** Drawing commands in one flat row: 'M' x y, 'L' x y, 'Q' x1 y1 x y, 'C' x1 y1 x2 y2 x y, 'Z'. All absolute. */
export type Path = readonly (string | number)[];

/** A straight upright rectangle on the paper, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Stroke {
  /** mm */
  readonly width: number;
  readonly color: string;
  /** mm on, mm off … */
  readonly dash?: readonly number[];
  /** Whether dashes end round: a short one is a dot. Lines without a dash always do. */
  readonly round?: boolean;
}

/** Lines and shapes. Areas are filled even-odd, so an inner ring is a hole. */
export interface PathItem {
  readonly item: 'path';
  readonly path: Path;
  readonly stroke?: Stroke;
  readonly fill?: string;
}

/** One line of text; `y` is its baseline. */
export interface TextItem {
  readonly item: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** Points. */
  readonly size: number;
  readonly face: Face;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly color?: string;
  /** White round the letters, mm. */
  readonly halo?: number;
  /** Degrees clockwise as seen, about (x, y). */
  readonly turn?: number;
  /** Where it leads when touched; only https and mailto are written. */
  readonly link?: string;
}

/** What a part of the page is, for screen readers: headings, paragraphs, tables, pictures with a text of their own. */
export type Tag = 'H1' | 'H2' | 'P' | 'Figure' | 'Table' | 'TR' | 'TH' | 'TD';

/** Items that belong together: cut to `clip`, or standing for one thing of the page's structure. */
export interface GroupItem {
  readonly item: 'group';
  readonly items: readonly Item[];
  readonly clip?: Path;
  readonly tag?: Tag;
  /** Said for a picture. */
  readonly alt?: string;
  /** What a header cell heads. */
  readonly scope?: 'Column' | 'Row';
}

export type Item = PathItem | TextItem | GroupItem;

/** What kind of sheet it is, by what it is for. */
export type SheetKind = 'index' | 'detail' | 'check' | 'check-back' | 'cards' | 'labels' | 'materials' | 'landowner';

/** One page. */
export interface Sheet {
  /** Such as `detail-2`; unique in the book. */
  readonly id: string;
  readonly kind: SheetKind;
  readonly title: string;
  /** Paper, mm. */
  readonly width: number;
  readonly height: number;
  /** Nothing is drawn outside it. */
  readonly safe: Box;
  readonly items: readonly Item[];
  /** Numbers of the boxes that are this page's own: on maps those in its body. */
  readonly numbers: readonly number[];
  /** Denominator of the map's scale; null when the page holds no map. */
  readonly scale: number | null;
}

/** Lines or a shape. */
export function path(path: Path, paint: { stroke?: Stroke; fill?: string }): PathItem {
  return { item: 'path', path, ...paint };
}

/** A line of text; the face is sans unless said. */
export function text(x: number, y: number, words: string, size: number, more: Partial<TextItem> = {}): TextItem {
  return { item: 'text', x, y, text: words, size, face: 'sans', ...more };
}

/** Items that belong together. */
export function group(items: readonly Item[], more: Omit<GroupItem, 'item' | 'items'> = {}): GroupItem {
  return { item: 'group', items, ...more };
}

/** A straight line from a to b. */
export function line(x1: number, y1: number, x2: number, y2: number, width: number, color = '#000000'): PathItem {
  return path(['M', x1, y1, 'L', x2, y2], { stroke: { width, color } });
}

/** Upright rectangle as a path. */
export function rectangle({ x, y, width, height }: Box): Path {
  return ['M', x, y, 'L', x + width, y, 'L', x + width, y + height, 'L', x, y + height, 'Z'];
}

/** Circle as four curves (the usual 0.5523 handle; off by at most 0.03 % of the radius). */
export function circle(x: number, y: number, r: number): Path {
  const k = r * 0.5522848;
  return [
    ...['M', x + r, y, 'C', x + r, y + k, x + k, y + r, x, y + r],
    ...['C', x - k, y + r, x - r, y + k, x - r, y, 'C', x - r, y - k, x - k, y - r, x, y - r],
    ...['C', x + k, y - r, x + r, y - k, x + r, y, 'Z'],
  ];
}

/** Every text of a list with the groups opened, in drawing order. */
export function textsOf(items: readonly Item[]): TextItem[] {
  return items.flatMap((one) => (one.item === 'text' ? [one] : one.item === 'group' ? textsOf(one.items) : []));
}
