/** The key of all map sheets on a page of its own: in large print it would leave the maps no room. */
import { group, type Item, text } from '../display.ts';
import type { BookFacts, Draft } from '../facts.ts';
import { drawHeader } from '../header.ts';
import { headHeight } from '../layout.ts';
import { boxRows, drawKeys, landRows } from '../legend.ts';
import { wrap } from '../measure.ts';
import { northWords } from '../north.ts';
import { point } from '../style.ts';

/** One page in large print, none else: there each map carries its own key. */
export function keySheet(facts: BookFacts): Draft[] {
  const { style, page, plan } = facts;
  if (style.variant !== 'large-print') return [];
  return [
    {
      id: 'key',
      kind: 'index',
      title: `${plan.siteName}: key`,
      page,
      numbers: [],
      scale: null,
      draw: (sheet, sheets) => [...head(facts, sheet, sheets), ...keyItems(facts)],
    },
  ];
}

function head({ page, style, plan, stamp }: BookFacts, sheet: number, sheets: number): Item[] {
  const words = { siteName: plan.siteName, what: 'key', below: 'To all map sheets.', sheet, sheets, ...stamp };
  return drawHeader({ ...page.safe, height: headHeight(style) }, words, style).items;
}

function keyItems({ page, style, plan, stamp, things, layers, words }: BookFacts): Item[] {
  const { safe } = page;
  const top = safe.y + headHeight(style) + 3;
  const bottom = safe.y + safe.height;
  const notes = [
    northWords(stamp.declination).join(' '),
    'UTM figures stand left and below, degrees right and above.',
  ].flatMap((one) => wrap(one, safe.width, style.small));
  const boxes = boxRows({
    standing: plan.boxes.some((box) => box.state === 'standing'),
    pair: plan.boxes.some((box) => box.pairedWith !== null),
    rounds: plan.rounds,
    several: plan.rounds.length > 1,
    others: true,
  });
  const land = landRows(things, layers, style, words ?? {});
  // Few rows look best as one list; where walkers have lines of their own the land goes under them.
  const parts = boxes.some((row) => row.walker) ? [boxes, land] : [[...boxes, ...land]];
  const notesTop = bottom - notes.length * style.smallLine;
  const keys = drawKeys(parts, { x: safe.x, y: top, width: safe.width, height: notesTop - top - 2 }, style);
  const lines = notes.map((row, i) =>
    text(safe.x, notesTop + i * style.smallLine + style.small * point * 0.8, row, style.small),
  );
  return [...keys, group(lines, { tag: 'P' })];
}
