/** A sheet as one SVG picture, true to size; text stays text. */
import type { GroupItem, Item, Path, PathItem, Sheet, TextItem } from './display.ts';
import type { Face } from './font-widths.ts';
import { isMeasured, widthOf } from './measure.ts';
import { point } from './style.ts';

/** CSS families of the faces: the shipped ones first, then their likes. */
const families: Readonly<Record<'sans' | 'serif', string>> = {
  sans: "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', 'Noto Sans', sans-serif",
  serif: "'Source Serif 4', 'Source Serif Pro', Palatino, Georgia, serif",
};

const roles: Readonly<Record<string, string>> = {
  H1: 'role="heading" aria-level="1"',
  H2: 'role="heading" aria-level="2"',
  P: 'role="paragraph"',
  Figure: 'role="img"',
  Table: 'role="table"',
  TR: 'role="row"',
  TH: 'role="columnheader"',
  TD: 'role="cell"',
};

/** The sheet as SVG text. Every name in it is escaped. Clip ids carry the sheet's id, so many sheets may share a page. */
export function sheetToSvg(sheet: Sheet): string {
  const writer = { clips: 0, id: sheet.id };
  const body = sheet.items.map((one) => itemText(one, writer)).join('\n');
  const size = `width="${n(sheet.width)}mm" height="${n(sheet.height)}mm" viewBox="0 0 ${n(sheet.width)} ${n(sheet.height)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} text-rendering="geometricPrecision" data-sheet="${escaped(sheet.id)}">
<title>${escaped(sheet.title)}</title>
<rect width="100%" height="100%" fill="#ffffff"/>
${body}
</svg>
`;
}

interface Writer {
  clips: number;
  readonly id: string;
}

function itemText(item: Item, writer: Writer): string {
  if (item.item === 'path') return pathText(item);
  return item.item === 'text' ? wordsText(item) : groupText(item, writer);
}

function pathText({ path, stroke, fill }: PathItem): string {
  const paint = [`fill="${fill ?? 'none'}"`];
  if (fill) paint.push('fill-rule="evenodd"');
  if (stroke) {
    paint.push(`stroke="${stroke.color}" stroke-width="${n(stroke.width)}" stroke-linejoin="round"`);
    if (stroke.dash) paint.push(`stroke-dasharray="${stroke.dash.map(n).join(' ')}"`);
    if (!stroke.dash || stroke.round) paint.push('stroke-linecap="round"');
  }
  return `<path d="${data(path)}" ${paint.join(' ')}/>`;
}

function wordsText(item: TextItem): string {
  const { x, y, size, face, anchor = 'start', color = '#000000', halo, turn } = item;
  const place = turn ? `transform="translate(${n(x)} ${n(y)}) rotate(${n(turn)})"` : `x="${n(x)}" y="${n(y)}"`;
  const rim = halo
    ? ` stroke="#ffffff" stroke-width="${n(2 * halo)}" stroke-linejoin="round" paint-order="stroke"`
    : '';
  const set = `font-family="${familyOf(face)}" font-size="${n(size * point)}"${weightOf(face)} text-anchor="${anchor}"`;
  const fixed = isMeasured(item.text)
    ? ` textLength="${n(widthOf(item.text, size, face))}" lengthAdjust="spacingAndGlyphs"`
    : '';
  const written = `<text ${place} ${set}${fixed} fill="${color}"${rim}>${escaped(item.text)}</text>`;
  return safeLink(item.link) ? `<a href="${escaped(item.link ?? '')}">${written}</a>` : written;
}

function groupText(item: GroupItem, writer: Writer): string {
  const body = item.items.map((one) => itemText(one, writer)).join('\n');
  const marks = [item.tag ? roles[item.tag] : '', item.alt ? `aria-label="${escaped(item.alt)}"` : ''];
  let before = '';
  if (item.clip) {
    const id = `clip-${writer.id}-${++writer.clips}`;
    before = `<clipPath id="${id}"><path d="${data(item.clip)}" clip-rule="evenodd"/></clipPath>`;
    marks.push(`clip-path="url(#${id})"`);
  }
  return `${before}<g ${marks.filter(Boolean).join(' ')}>\n${body}\n</g>`;
}

function familyOf(face: Face): string {
  return face.startsWith('sans') ? families.sans : families.serif;
}

function weightOf(face: Face): string {
  if (face.endsWith('Bold')) return ' font-weight="700"';
  return face.endsWith('Italic') ? ' font-style="italic"' : '';
}

/** Whether an address may be written as a link. */
export function safeLink(link: string | undefined): boolean {
  return link !== undefined && /^(https:\/\/|mailto:)[^\s"'<>]+$/.test(link);
}

function data(path: Path): string {
  return path.map((one) => (typeof one === 'number' ? n(one) : one)).join(' ');
}

/** A figure in thousandths of a millimetre, without needless zeros. */
function n(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function escaped(words: string): string {
  return words
    .replace(/[\u202a-\u202e\u2066-\u2069]/g, '')
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}
