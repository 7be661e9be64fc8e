/** Box cards: one for each box, for the person who mounts it. */

import type { PlannedBox } from '../../plan-types.ts';
import { boxFacts, type Fact, sharedFacts } from '../box-facts.ts';
import { discLook, drawDisc } from '../disc.ts';
import { type Box, group, type Item, path, text } from '../display.ts';
import { type BookFacts, birdName, type Draft, guideOf } from '../facts.ts';
import { drawHeader, stampWords } from '../header.ts';
import { marksOf } from '../landmarks.ts';
import { headHeight } from '../layout.ts';
import { plain, shorten, widthOf, wrap } from '../measure.ts';
import { point, type Style } from '../style.ts';

/** Room between cards, mm; the line to cut along runs in its middle. */
const gap = 4;

/** A card, or a piece of one that needs more than a page. */
interface Piece {
  readonly box: PlannedBox;
  readonly rows: readonly Fact[];
  readonly first: boolean;
}

/** Four cards a page, two, or one: as many as was asked for, unless words would be cut off. Large print has two, and a page of what all share. */
export function boxCards(facts: BookFacts): Draft[] {
  const { plan, page } = facts;
  const marks = marksOf(facts.things);
  const boxes = [...plan.boxes].sort((a, b) => a.number - b.number);
  const cards = boxes.map((box): Piece => ({ box, rows: boxFacts(facts, box, marks), first: true }));
  const perPage = perPageOf(facts, cards);
  const pieces = cards.flatMap((card) => cutCard(facts, card, perPage));
  const pages = Array.from({ length: Math.ceil(pieces.length / perPage) }, (_, i): Draft => {
    const some = pieces.slice(i * perPage, (i + 1) * perPage);
    return {
      id: `cards-${i + 1}`,
      kind: 'cards',
      title: `${plan.siteName}: box cards, page ${i + 1}`,
      page,
      numbers: some.flatMap(({ box, first }) => (first ? [box.number] : [])),
      scale: null,
      draw: (sheet, sheets) => [
        ...cutLines(page.safe, perPage),
        ...some.map((one, c) => card(facts, one, cellOf(page.safe, perPage, c), `${sheet}/${sheets}`)),
      ],
    };
  });
  return [...pages, ...sharedPage(facts)];
}

/** In large print: what holds for every box, so that each card keeps to what is its own. */
function sharedPage(facts: BookFacts): Draft[] {
  const { plan, page, style } = facts;
  const known = plan.boxes.find((box) => guideOf(box) !== null) ?? plan.boxes[0];
  if (style.variant !== 'large-print' || !known) return [];
  const { safe } = page;
  const top = safe.y + headHeight(style) + 3;
  const words = { siteName: plan.siteName, what: 'for every box', below: 'Goes with the box cards.' };
  return [
    {
      id: 'cards-all',
      kind: 'cards',
      title: `${plan.siteName}: for every box`,
      page,
      numbers: [],
      scale: null,
      draw: (sheet, sheets) => [
        ...drawHeader({ ...safe, height: headHeight(style) }, { ...words, sheet, sheets, ...facts.stamp }, style).items,
        ...factItems(sharedFacts(facts, known), { ...safe, y: top, height: safe.y + safe.height - top }, style.small),
      ],
    },
  ];
}

/** Of ten cards at most one may go on in a second piece before all get more room (ours). */
const mostCut = 1.1;

/** As many cards on a page as asked for, or fewer: so many that hardly a card is too long. */
function perPageOf(facts: BookFacts, cards: readonly Piece[]): 1 | 2 | 4 {
  const { style, options } = facts;
  if (style.variant === 'large-print') return twoIfShorter(facts, cards);
  const asked = options.cardsPerPage ?? 4;
  const fits = (perPage: 2 | 4) =>
    cards.flatMap((card) => cutCard(facts, card, perPage)).length <= cards.length * mostCut;
  return ([4, 2] as const).filter((one) => one <= asked).find(fits) ?? 1;
}

/** Two cards a page, the long ones in two pieces, where that takes fewer pages than one each. */
function twoIfShorter(facts: BookFacts, cards: readonly Piece[]): 1 | 2 {
  const pagesOf = (perPage: 1 | 2) => cards.flatMap((card) => cutCard(facts, card, perPage)).length / perPage;
  return pagesOf(2) < pagesOf(1) ? 2 : 1;
}

/** A card too long for its room goes on in the next. */
function cutCard({ style, page }: BookFacts, card: Piece, perPage: number): Piece[] {
  const room = factRoom(cellOf(page.safe, perPage, 0), style);
  const pieces: Fact[][] = [[]];
  for (const row of card.rows) {
    const current = pieces[pieces.length - 1]!;
    if (current.length > 0 && factsHeight([...current, row], room.width, style.small) > room.height) pieces.push([row]);
    else current.push(row);
  }
  return pieces.map((rows, i) => ({ box: card.box, rows, first: i === 0 }));
}

/** The c-th of the page's cells, in rows. */
function cellOf(safe: Box, perPage: number, c: number): Box {
  const lying = safe.width > safe.height;
  const [columns, rows] = perPage === 4 ? [2, 2] : perPage === 2 ? (lying ? [2, 1] : [1, 2]) : [1, 1];
  const width = (safe.width - gap * (columns - 1)) / columns;
  const height = (safe.height - gap * (rows - 1)) / rows;
  return {
    x: safe.x + (c % columns) * (width + gap),
    y: safe.y + Math.floor(c / columns) * (height + gap),
    width,
    height,
  };
}

function cutLines(safe: Box, perPage: number): Item[] {
  const lying = safe.width > safe.height;
  const stroke = { width: 0.2, color: '#000000', dash: [1.5, 1.5] };
  const [x, y] = [safe.x + safe.width / 2, safe.y + safe.height / 2];
  const items: Item[] = [];
  if (perPage === 4 || (perPage === 2 && lying))
    items.push(path(['M', x, safe.y, 'L', x, safe.y + safe.height], { stroke }));
  if (perPage === 4 || (perPage === 2 && !lying))
    items.push(path(['M', safe.x, y, 'L', safe.x + safe.width, y], { stroke }));
  return items;
}

/** Size and place of a card's disc and head, mm. */
function headOf(cell: Box, style: Style) {
  const look = discLook([99], style.variant === 'large-print' ? 26 : 17);
  const middle = look.radius + 3.4;
  const base = cell.y + style.head * point * 1.25;
  const bottom = Math.max(cell.y + 2 * middle + 1, base + 2 * style.smallLine + 3);
  return { middle, base, bottom };
}

/** Where the lines of a card stand. */
function factRoom(cell: Box, style: Style): Box {
  const { bottom } = headOf(cell, style);
  return { x: cell.x, y: bottom, width: cell.width, height: cell.y + cell.height - bottom };
}

function card(facts: BookFacts, { box, rows, first }: Piece, cell: Box, place: string): Item {
  const { style, plan, stamp } = facts;
  const look = discLook([box.number], style.variant === 'large-print' ? 26 : 17);
  const { middle, base } = headOf(cell, style);
  const left = cell.x + 2 * middle + 2;
  const right = cell.x + cell.width;
  const disc = {
    number: box.number,
    score: box.card.score,
    facing: box.card.facing.used,
    standing: box.state === 'standing',
  };
  const title = `Box ${box.number}, ${birdName(box)}${first ? '' : ', continued'}`;
  // Large letters leave no room for the site's name: the page of what all share has it.
  const site = style.variant === 'large-print' ? '' : `${plain(plan.siteName)} · `;
  const under = `${site}${stampWords(stamp, 'rev')} · ${place}`;
  const head = (y: number, words: string) => text(left, y, shorten(words, right - left, style.small), style.small);
  return group([
    group(
      [text(left, base, shorten(title, right - left, style.head, 'serifBold'), style.head, { face: 'serifBold' })],
      { tag: 'H2' },
    ),
    group([head(base + style.smallLine + 1, headLine(box)), head(base + 2 * style.smallLine + 1, under)], { tag: 'P' }),
    group([drawDisc(cell.x + middle, cell.y + middle, disc, look)], {
      tag: 'Figure',
      alt: `Box ${box.number}, hole facing ${Math.round(disc.facing)} degrees`,
    }),
    ...factItems(rows, factRoom(cell, style), style.small),
  ]);
}

function headLine({ state, pairedWith, card }: PlannedBox): string {
  const kind = state === 'standing' ? 'standing box: check, do not move' : 'new box';
  return `${kind} · score ${Math.round(card.score)}${pairedWith === null ? '' : ` · pair with box ${pairedWith}`}`;
}

/** Air above the first line and under each fact, mm. */
const air = 0.65;

function lineStep(size: number): number {
  return size * point * 1.17;
}

/** Room of the bold labels, mm; the same on every card of one size. */
function labelWidthOf(size: number): number {
  return widthOf('Why here', size, 'sansBold') + 2;
}

function linesOf({ words, big }: Fact, width: number, size: number): string[] {
  return wrap(words, width - labelWidthOf(size), size, big ? 'sansBold' : 'sans');
}

function factsHeight(rows: readonly Fact[], width: number, size: number): number {
  return rows.reduce((sum, row) => sum + linesOf(row, width, size).length * lineStep(size) + air, 1.2);
}

/** Lines of a card, labels bold in a column of their own. */
function factItems(rows: readonly Fact[], area: Box, size: number): Item[] {
  const labels = labelWidthOf(size);
  const items: Item[] = [
    path(['M', area.x, area.y, 'L', area.x + area.width, area.y], { stroke: { width: 0.3, color: '#000000' } }),
  ];
  let y = area.y + 1.2;
  for (const row of rows) {
    const lines = linesOf(row, area.width, size);
    const first = y + size * point * 0.9;
    const face = row.big ? 'sansBold' : 'sans';
    items.push(
      group(
        [
          text(area.x, first, row.label, size, { face: 'sansBold' }),
          ...lines.map((words, i) => text(area.x + labels, first + i * lineStep(size), words, size, { face })),
        ],
        { tag: 'P' },
      ),
    );
    y += lines.length * lineStep(size) + air;
  }
  return items;
}
