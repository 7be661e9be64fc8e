/** The door: a plan's paper as sheets of one display list each. */
import type { Sheet } from './display.ts';
import { type BookFacts, bookFacts, type Draft } from './facts.ts';
import { type SheetInput, type SheetName, sheetNames } from './input.ts';
import { boxCards } from './sheets/box-cards.ts';
import { checkSheets } from './sheets/check-sheet.ts';
import { detailSheets } from './sheets/detail-sheet.ts';
import { indexSheet } from './sheets/index-sheet.ts';
import { landownerSheet } from './sheets/landowner-sheet.ts';
import { materialsSheets } from './sheets/materials-sheet.ts';
import { numberLabels } from './sheets/number-labels.ts';

/** One maker for each name; adding a kind of sheet is one file and one line here (docs/paper.md). */
const makers: Readonly<Record<SheetName, (facts: BookFacts) => Draft[]>> = {
  index: indexSheet,
  details: detailSheets,
  check: checkSheets,
  cards: boxCards,
  labels: numberLabels,
  materials: materialsSheets,
  landowner: landownerSheet,
};

/** The sheets asked for, in printing order, numbered through ("Sheet 2 of 9"). Draw them with `sheetToSvg` or `sheetsToPdf`. */
export function makeSheets(input: SheetInput): Sheet[] {
  const facts = bookFacts(input);
  const drafts = sheetNames
    .filter((name) => input.options.sheets.includes(name))
    .flatMap((name) => makers[name](facts));
  return drafts.map((draft, i) => ({
    id: draft.id,
    kind: draft.kind,
    title: draft.title,
    width: draft.page.width,
    height: draft.page.height,
    safe: draft.page.safe,
    items: draft.draw(i + 1, drafts.length),
    numbers: draft.numbers,
    scale: draft.scale,
  }));
}
