/** Box cards: one for each box, for the person who mounts it. */

import type { PlannedBox } from '../../plan-types.ts';
import { boxFacts, type Fact } from '../box-facts.ts';
import { discLook, drawDisc } from '../disc.ts';
import { type Box, group, type Item, path, text } from '../display.ts';
import { type BookFacts, birdName, type Draft } from '../facts.ts';
import { type Mark, marksOf } from '../landmarks.ts';
import { plain, shorten, widthOf, wrap } from '../measure.ts';
import { point } from '../style.ts';

/** Room between cards, mm; the line to cut along runs in its middle. */
const gap = 4;

/** Two or four cards a page; large print has one. */
export function boxCards(facts: BookFacts): Draft[] {
  const { plan, style, options, page } = facts;
  const perPage = style.variant === 'large-print' ? 1 : (options.cardsPerPage ?? 4);
  const marks = marksOf(facts.things);
  const boxes = [...plan.boxes].sort((a, b) => a.number - b.number);
  const pages = Math.ceil(boxes.length / perPage);
  return Array.from({ length: pages }, (_, i) => {
    const some = boxes.slice(i * perPage, (i + 1) * perPage);
    return {
      id: `cards-${i + 1}`,
      kind: 'cards',
      title: `${plan.siteName}: box cards, page ${i + 1}`,
      page,
      numbers: some.map((box) => box.number),
      scale: null,
      draw: (sheet, sheets) => [
        ...cutLines(page.safe, perPage),
        ...some.map((box, c) => card(facts, box, cellOf(page.safe, perPage, c), marks, `${sheet}/${sheets}`)),
      ],
    };
  });
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

function card(facts: BookFacts, box: PlannedBox, cell: Box, marks: readonly Mark[], place: string): Item {
  const { style, plan, stamp } = facts;
  const look = discLook([box.number], style.variant === 'large-print' ? 26 : 20);
  const middle = look.radius + 3.4;
  const left = cell.x + 2 * middle + 2;
  const right = cell.x + cell.width;
  const base = cell.y + style.head * point * 1.25;
  const disc = {
    number: box.number,
    score: box.card.score,
    facing: box.card.facing.used,
    standing: box.state === 'standing',
  };
  const under = `${plain(plan.siteName)} · ${stamp.date} · rev ${plain(stamp.revision)} · ${plain(stamp.hash).slice(0, 8)} · ${place}`;
  const top = Math.max(cell.y + 2 * middle + 1, base + 2 * style.smallLine + 3);
  return group([
    group(
      [
        text(
          left,
          base,
          shorten(`Box ${box.number}, ${birdName(box)}`, right - left, style.head, 'serifBold'),
          style.head,
          { face: 'serifBold' },
        ),
      ],
      { tag: 'H2' },
    ),
    group(
      [
        text(left, base + style.smallLine + 1, shorten(headLine(box), right - left, style.small), style.small),
        text(left, base + 2 * style.smallLine + 1, shorten(under, right - left, style.small), style.small),
      ],
      { tag: 'P' },
    ),
    group([drawDisc(cell.x + middle, cell.y + middle, disc, look)], {
      tag: 'Figure',
      alt: `Box ${box.number}, hole facing ${Math.round(disc.facing)} degrees`,
    }),
    ...factItems(
      boxFacts(facts, box, marks),
      { x: cell.x, y: top, width: cell.width, height: cell.y + cell.height - top },
      facts,
    ),
  ]);
}

function headLine({ state, pairedWith, card }: PlannedBox): string {
  const kind = state === 'standing' ? 'standing box: check, do not move' : 'new box';
  return `${kind} · score ${Math.round(card.score)}${pairedWith === null ? '' : ` · pair with box ${pairedWith}`}`;
}

/** Lines of a card, labels bold in a column of their own; lines that find no room at the foot are left out. */
function factItems(rows: readonly Fact[], area: Box, { style }: BookFacts): Item[] {
  const size = style.small;
  const labelWidth = Math.max(...rows.map((row) => widthOf(row.label, size, 'sansBold'))) + 2;
  const step = size * point * 1.22;
  const items: Item[] = [
    path(['M', area.x, area.y, 'L', area.x + area.width, area.y], { stroke: { width: 0.3, color: '#000000' } }),
  ];
  let y = area.y + 1.2;
  for (const { label, words, big } of rows) {
    const face = big ? 'sansBold' : 'sans';
    const lines = wrap(words, area.width - labelWidth, size, face);
    const room = Math.floor((area.y + area.height - y) / step);
    if (room < 1) break;
    const shown =
      lines.length <= room
        ? lines
        : [...lines.slice(0, room - 1), shorten(lines.slice(room - 1).join(' '), area.width - labelWidth, size, face)];
    const first = y + size * point * 0.9;
    items.push(
      group(
        [
          text(area.x, first, label, size, { face: 'sansBold' }),
          ...shown.map((row, i) => text(area.x + labelWidth, first + i * step, row, size, { face })),
        ],
        { tag: 'P' },
      ),
    );
    y += shown.length * step + 0.9;
  }
  return items;
}
