/** The index sheet: the whole site, every number, and the ground of every detail sheet. */
import type { Point } from '../../geometry/point.ts';
import type { Units } from '../../site/types.ts';
import { overlapShare } from '../book.ts';
import { discLook } from '../disc.ts';
import type { BookFacts, Draft } from '../facts.ts';
import { boundsOf } from '../land-things.ts';
import { mapLayout } from '../layout.ts';
import { boxRows, landRows } from '../legend.ts';
import type { MapFrame } from '../map.ts';
import { mapPageItems } from '../map-sheet.ts';
import { timeWords, walkWords } from '../units.ts';
import { viewOf } from '../view.ts';
import { keySheet } from './key-sheet.ts';

const scales: Readonly<Record<Units, readonly number[]>> = {
  us: [50, 60, 80, 100, 150, 200, 250, 300, 400, 500, 600, 800, 1000, 1500, 2000, 3000, 4000].map((feet) => feet * 12),
  metric: [500, 600, 800, 1000, 1250, 1500, 2000, 2500, 3000, 4000, 5000, 7500, 10000, 15000, 20000, 25000, 50000],
};

/** One page; in large print the key follows on a page of its own, unless it follows the detail sheets. */
export function indexSheet(facts: BookFacts): Draft[] {
  const { plan, style, page, units } = facts;
  const { window } = mapLayout(page, style);
  const bounds = siteBounds(facts);
  const scale = fittingScale(bounds, window, scales[units]);
  const centre = { x: (bounds.min.x + bounds.max.x) / 2, y: (bounds.min.y + bounds.max.y) / 2 };
  const numbers = plan.boxes.map((box) => box.number);
  const metres = plan.rounds.reduce((sum, round) => sum + round.metres, 0);
  const minutes = plan.rounds.reduce((sum, round) => sum + round.minutes, 0);
  const walk = metres > 0 ? ` · ${walkWords(metres, units)} of walking, about ${timeWords(minutes)}` : '';
  return [
    {
      id: 'index',
      kind: 'index',
      title: `${plan.siteName}: index`,
      page,
      numbers,
      scale,
      draw: (sheet, sheets) =>
        mapPageItems(facts, {
          view: viewOf(scale, centre, window),
          what: 'all boxes',
          below: `${count(numbers.length, 'box', 'boxes')}${walk}`,
          wish: {
            own: new Set(numbers),
            look: discLook(numbers, style.indexNumber),
            lengths: false,
            alt: `Map of ${plan.siteName} with ${count(numbers.length, 'box', 'boxes')}`,
            sheetOf: null,
            frames: framesOf(facts),
          },
          boxRows: boxRows(has(facts)),
          landRows: landRows(facts.things, facts.layers, style, facts.words ?? {}),
          notes:
            facts.options.sheets.includes('details') && facts.book.frames.length > 0
              ? ['Dashed: ground of the detail sheets.']
              : [],
          sheet,
          sheets,
        }),
    },
    ...(facts.options.sheets.includes('details') && facts.book.frames.length > 0 ? [] : keySheet(facts)),
  ];
}

/** Everything drawn, every box and every start; 60 m around the frame's middle when there is nothing. Lines may run out. */
function siteBounds({ things, plan }: BookFacts): { min: Point; max: Point } {
  const land = things.filter((thing) => thing.lines.length === 0).flatMap((thing) => [thing.min, thing.max]);
  const starts = plan.rounds.flatMap((round) => round.start ?? []);
  const lines = things.flatMap((thing) => [thing.min, thing.max]);
  const own = [...land, ...plan.boxes.map((box) => box.at), ...starts];
  return boundsOf(own.length > 0 ? own : lines) ?? { min: { x: -30, y: -30 }, max: { x: 30, y: 30 } };
}

/** The largest drawing of a list that fits with a small margin; past the list the scale is doubled until it fits. */
export function fittingScale(
  { min, max }: { min: Point; max: Point },
  window: { width: number; height: number },
  list: readonly number[],
  margin = 6,
): number {
  const need = (size: number, room: number) => (size * 1000) / Math.max(1, room - 2 * margin);
  const least = Math.max(need(max.x - min.x, window.width), need(max.y - min.y, window.height));
  let scale = list.find((one) => one >= least) ?? list[list.length - 1] ?? 1000;
  while (scale < least) scale *= 2;
  return scale;
}

function framesOf({ book, options, sheetOf }: BookFacts): MapFrame[] {
  if (!options.sheets.includes('details')) return [];
  const [w, h] = [(book.across * (1 - overlapShare)) / 2, (book.down * (1 - overlapShare)) / 2];
  return book.frames.map(({ centre, numbers }) => ({
    min: { x: centre.x - w, y: centre.y - h },
    max: { x: centre.x + w, y: centre.y + h },
    words: `sheet ${sheetOf(numbers[0] ?? 0) ?? ''}`,
  }));
}

function has({ plan }: BookFacts) {
  return {
    standing: plan.boxes.some((box) => box.state === 'standing'),
    pair: plan.boxes.some((box) => box.pairedWith !== null),
    rounds: plan.rounds,
    several: plan.rounds.length > 1,
    others: false,
  };
}

function count(n: number, one: string, many: string): string {
  return `${n} ${n === 1 ? one : many}`;
}
