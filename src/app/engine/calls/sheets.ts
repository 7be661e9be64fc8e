/** The sheets of a plan as pictures: Site and Plan → one SVG a sheet. */
import type { Sheet, SheetKind } from '../../../print/display.ts';
import type { SheetName } from '../../../print/input.ts';
import { plain } from '../../../print/measure.ts';
import { sheetToSvg } from '../../../print/to-svg.ts';
import { lightSheet } from '../../paper/light-sheet.ts';
import type { DrawnSheet } from '../../paper/paper-state.ts';
import { type BookQuestion, bookOf } from './book.ts';

/** Under which choice a kind of sheet is asked for. */
const nameOf: Readonly<Record<SheetKind, SheetName>> = {
  index: 'index',
  detail: 'details',
  check: 'check',
  'check-back': 'check',
  cards: 'cards',
  labels: 'labels',
  materials: 'materials',
  landowner: 'landowner',
};

export async function sheets(question: BookQuestion): Promise<DrawnSheet[]> {
  return (await bookOf(question)).map((sheet) => drawn(sheet, question.plan.siteName));
}

function drawn(sheet: Sheet, siteName: string): DrawnSheet {
  const { id, kind, title, width, height, numbers, scale } = sheet;
  const what = plain(title.startsWith(`${siteName}: `) ? title.slice(siteName.length + 2) : title);
  return {
    id,
    name: nameOf[kind],
    what,
    width,
    height,
    numbers,
    scale,
    svg: sheetToSvg(sheet),
    thumb: sheetToSvg(lightSheet(sheet)),
  };
}
