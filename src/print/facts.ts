/** Everything the sheets of one book share, worked out once. */

import type { BirdGuide } from '../birds/guide.ts';
import { birdById, isBird } from '../birds/index.ts';
import type { PlannedBox } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { type Book, makeBook } from './book.ts';
import { type DiscLook, discLook, discRoom } from './disc.ts';
import type { Item, SheetKind } from './display.ts';
import type { SheetInput } from './input.ts';
import { type Thing, thingsOf } from './land-things.ts';
import { mapLayout } from './layout.ts';
import { plain } from './measure.ts';
import { type Page, pageOf } from './paper.ts';
import { type Style, styleOf } from './style.ts';

export interface BookFacts extends SheetInput {
  readonly units: Units;
  readonly page: Page;
  readonly style: Style;
  readonly things: readonly Thing[];
  readonly look: DiscLook;
  readonly book: Book;
  /** Page number of the sheet whose body a box lies in; null when no detail sheets are printed. */
  sheetOf(number: number): number | null;
}

/** One page before its number among all pages is known. */
export interface Draft {
  readonly id: string;
  readonly kind: SheetKind;
  readonly title: string;
  readonly page: Page;
  readonly numbers: readonly number[];
  readonly scale: number | null;
  draw(sheet: number, sheets: number): readonly Item[];
}

/** Works out scale, frames and looks. */
export function bookFacts(given: SheetInput): BookFacts {
  const input = tidied(given);
  const { options, plan, site } = input;
  if (options.scale !== null && !(options.scale >= 1 && Number.isFinite(options.scale)))
    throw new Error(`scale must be a denominator of at least 1, or null: ${options.scale}`);
  const style = styleOf(options.variant);
  const page = pageOf(options.paper, options.orientation);
  const look = discLook(
    plan.boxes.map((box) => box.number),
    style.number,
  );
  const { window } = mapLayout(page, style);
  const { units } = site.settings;
  const book = makeBook(
    plan.boxes,
    { ...window, room: (box) => discRoom(look, box.state === 'standing') },
    units,
    options.scale,
  );
  const first = options.sheets.includes('index') ? 2 : 1;
  const pages = new Map(book.frames.flatMap((one) => one.numbers.map((n) => [n, one.sheet - 1 + first] as const)));
  const sheetOf = (number: number) => (options.sheets.includes('details') ? (pages.get(number) ?? null) : null);
  return { ...input, units, page, style, things: thingsOf(site, input.frame), look, book, sheetOf };
}

/** Longest revision and credit that are printed, letters. */
const longest = { revision: 24, credit: 160 };

/** Words from outside made plain once, before anything is drawn with them. */
function tidied(input: SheetInput): SheetInput {
  const { plan, stamp } = input;
  const credit = stamp.credit ? plain(stamp.credit).slice(0, longest.credit) : null;
  const revision = plain(stamp.revision).slice(0, longest.revision);
  return {
    ...input,
    plan: { ...plan, siteName: plain(plan.siteName) || 'Unnamed site' },
    stamp: { ...stamp, credit, revision, hash: plain(stamp.hash).slice(0, 64), date: plain(stamp.date).slice(0, 24) },
  };
}

/** The bird's guide, or null for an id no guide has. */
export function guideOf(box: Pick<PlannedBox, 'bird'>): BirdGuide | null {
  return isBird(box.bird) ? birdById(box.bird) : null;
}

/** The bird's name, or its id when no guide has it. */
export function birdName(box: Pick<PlannedBox, 'bird'>): string {
  return guideOf(box)?.name ?? box.bird;
}
