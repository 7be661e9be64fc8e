/** The map book's detail sheets: a round scale, overlap, and tabs that lead to the neighbors. */
import type { Frame } from '../book.ts';
import type { BookFacts, Draft } from '../facts.ts';
import { touches } from '../land.ts';
import { mapLayout } from '../layout.ts';
import { boxRows, landRows } from '../legend.ts';
import { pushedApart } from '../map.ts';
import { mapPageItems } from '../map-sheet.ts';
import { piecesOf } from '../route-line.ts';
import { spanWords, timeWords, walkWords } from '../units.ts';
import { inside, type View, viewOf } from '../view.ts';
import { keySheet } from './key-sheet.ts';

/** One page for every frame of the book; in large print the key follows on a page of its own. */
export function detailSheets(facts: BookFacts): Draft[] {
  const { book, page, style, plan } = facts;
  const { window } = mapLayout(page, style);
  const maps = book.frames.map((frame): Draft => {
    const view = viewOf(book.scale, frame.centre, window);
    return {
      id: `detail-${frame.sheet}`,
      kind: 'detail',
      title: `${plan.siteName}: boxes ${spanWords(frame.numbers)}`,
      page,
      numbers: frame.numbers,
      scale: book.scale,
      draw: (sheet, sheets) => mapPageItems(facts, { ...pageOf(facts, frame, view), sheet, sheets }),
    };
  });
  return maps.length > 0 ? [...maps, ...keySheet(facts)] : [];
}

function pageOf(facts: BookFacts, frame: Frame, view: View) {
  const { plan, style, things, layers, units } = facts;
  const own = new Set(frame.numbers);
  const legs = plan.rounds.flatMap((round) => round.legs).filter((leg) => own.has(leg.to as number));
  const metres = legs.reduce((sum, leg) => sum + leg.metres, 0);
  const minutes =
    frame.numbers.length * facts.site.settings.minutesPerBox + legs.reduce((sum, leg) => sum + leg.minutes, 0);
  const walk = metres > 0 ? `${walkWords(metres, units)} to walk to these boxes, about ${timeWords(minutes)}` : '';
  const mine = plan.boxes.filter((box) => own.has(box.number));
  const others = plan.boxes.some((box) => !own.has(box.number) && inside(view.window, ...view.toPaper(box.at)));
  const pushed = pushedApart(plan.boxes, view, { own, look: facts.look });
  const apart = pushed.length > 0 ? [`Pushed apart to be read: ${spanWords(pushed)}.`] : [];
  const around = [...neighborWords(facts, frame), ...apart];
  return {
    view,
    what: `boxes ${spanWords(frame.numbers)}`,
    below: walk,
    wish: {
      own,
      look: facts.look,
      lengths: true,
      alt: `Map of boxes ${frame.numbers.join(', ')}`,
      sheetOf: (stop: number | 'start' | 'end') => {
        if (typeof stop !== 'number')
          return seesStart(facts, view)
            ? null
            : facts.options.sheets.includes('index')
              ? 'see the index'
              : 'off this sheet';
        const sheet = facts.sheetOf(stop);
        return sheet === null ? null : `sheet ${sheet}`;
      },
    },
    landRows: landRows(
      things.filter((thing) => touches(thing, view, 0)),
      layers,
      style,
      facts.words ?? {},
    ),
    boxRows: boxRows({
      standing: mine.some((box) => box.state === 'standing'),
      pair: mine.some((box) => box.pairedWith !== null),
      rounds: plan.rounds.filter((round) => round.legs.some((leg) => piecesOf(leg, view).length > 0)),
      several: plan.rounds.length > 1,
      others,
    }),
    notes: around,
  };
}

function seesStart({ plan }: BookFacts, view: View): boolean {
  return plan.rounds.every(({ start }) => start === null || inside(view.window, ...view.toPaper(start)));
}

/** "Sheet 3 joins above, sheet 5 on the right." */
function neighborWords({ book, sheetOf }: BookFacts, frame: Frame): string[] {
  const sides = [
    ['above', -1, 0],
    ['below', 1, 0],
    ['on the left', 0, -1],
    ['on the right', 0, 1],
  ] as const;
  const found = sides.flatMap(([words, down, right]) => {
    const next = book.frames.find((one) => one.row === frame.row + down && one.column === frame.column + right);
    const sheet = next ? sheetOf(next.numbers[0] ?? 0) : null;
    return sheet === null ? [] : [`sheet ${sheet} ${words}`];
  });
  return found.length === 0 ? [] : [`Joins ${found.join(', ')}.`];
}
