/** The check sheet: one row a box in walking order, with room to write, under a clipboard's clamp. */
import type { PlannedBox } from '../../plan-types.ts';
import { compassOf, degreesAre } from '../compass.ts';
import { group, type Item, text } from '../display.ts';
import type { BookFacts, Draft } from '../facts.ts';
import { drawHeader } from '../header.ts';
import { headHeight } from '../layout.ts';
import { shorten, widthOf, wrap } from '../measure.ts';
import { belowClamp, type Page, pageOf } from '../paper.ts';
import { point } from '../style.ts';
import { drawTable, tableLook } from '../table.ts';
import { degreeWords, timeWords, walkWords, windOf } from '../units.ts';
import { swatchDash, walkerLine } from '../walker-line.ts';
import { checkBack } from './check-back.ts';
import { columnsOf, type WalkList } from './check-columns.ts';

/** Most rows on a page (ours: more are too small to write in). */
const mostRows = 25;

/** Pages of every round, each round with its back page; boxes on no round come last. */
export function checkSheets(facts: BookFacts): Draft[] {
  const lists = walkLists(facts);
  return lists.flatMap((list, i) => [...frontPages(facts, list, i, lists.length), ...checkBack(facts, list, i)]);
}

function walkLists({ plan }: BookFacts): WalkList[] {
  const byNumber = new Map(plan.boxes.map((box) => [box.number, box]));
  const lists: WalkList[] = plan.rounds.map((round) => ({
    round,
    name: plan.rounds.length > 1 ? `check sheet, walker ${round.walker}` : 'check sheet',
    boxes: round.boxes.flatMap((number) => byNumber.get(number) ?? []),
  }));
  const walked = new Set(plan.rounds.flatMap((round) => round.boxes));
  const rest = plan.boxes.filter((box) => !walked.has(box.number)).sort((a, b) => a.number - b.number);
  if (rest.length > 0)
    lists.push({ round: null, name: plan.rounds.length > 0 ? 'boxes on no round' : 'check sheet', boxes: rest });
  return lists.filter((list) => list.boxes.length > 0);
}

/** The page the check sheet is on: large letters need a lying one. */
function checkPage({ page, style, options }: BookFacts): Page {
  return style.variant === 'large-print' ? pageOf(options.paper, 'landscape') : page;
}

function frontPages(facts: BookFacts, list: WalkList, index: number, lists: number): Draft[] {
  const { style } = facts;
  const page = checkPage(facts);
  const area = belowClamp(page);
  const look = tableLook(style);
  const foot = (style.variant === 'large-print' ? 1 : 2) * style.smallLine + 1.5;
  const room = area.height - headHeight(style) - 2 - style.smallLine - 1 - look.head - foot;
  const fitting = Math.max(1, Math.min(mostRows, Math.floor(room / look.row)));
  const pages = Math.ceil(list.boxes.length / fitting);
  const perPage = Math.ceil(list.boxes.length / pages);
  return Array.from({ length: pages }, (_, i) => {
    const boxes = list.boxes.slice(i * perPage, (i + 1) * perPage);
    return {
      id: `check-${index + 1}-${i + 1}`,
      kind: 'check',
      title: `${facts.plan.siteName}: ${list.name}${lists > 1 || pages > 1 ? `, part ${i + 1}` : ''}`,
      page,
      numbers: boxes.map((box) => box.number),
      scale: null,
      draw: (sheet, sheets) => frontItems(facts, list, boxes, sheet, sheets),
    };
  });
}

function frontItems(
  facts: BookFacts,
  list: WalkList,
  boxes: readonly PlannedBox[],
  sheet: number,
  sheets: number,
): Item[] {
  const { style, plan, stamp } = facts;
  const area = belowClamp(checkPage(facts));
  const header = drawHeader(
    area,
    { siteName: plan.siteName, what: list.name, below: walkLine(facts, list, boxes), sheet, sheets, ...stamp },
    style,
  );
  const look = tableLook(style);
  const fields = area.y + header.height + 2 + style.smallLine * 0.8;
  const top = fields + style.smallLine * 0.4;
  const bottom = area.y + area.height;
  const foot = footWords(facts).flatMap((words) => wrap(words, area.width, style.small));
  // Rows grow into the room that is left, but not so far that the page looks empty.
  const room = bottom - foot.length * style.smallLine - 3 - top - look.head;
  const row = Math.max(look.row, Math.min(room / boxes.length, look.row * 1.3));
  const written = 'Walker ____________________   Date ______________   Weather ______________';
  const line = mapLine(facts, list, area.x + area.width, fields);
  return [
    ...header.items,
    group([text(area.x, fields, shorten(written, area.width - line.width, style.small), style.small)], { tag: 'P' }),
    ...line.items,
    drawTable(area.x, top, columnsOf(facts, list, area.width), boxes, { ...look, row }),
    group(
      foot.map((words, i) =>
        text(
          area.x,
          bottom - (foot.length - 1 - i) * style.smallLine - 0.6,
          shorten(words, area.width, style.small),
          style.small,
        ),
      ),
      { tag: 'P' },
    ),
  ];
}

/** Which line on the maps is this walker's, at the right end of a row; nothing where there is one round. */
function mapLine({ plan, style }: BookFacts, { round }: WalkList, right: number, base: number) {
  if (!round || plan.rounds.length < 2) return { width: 0, items: [] };
  const words = 'on the maps:';
  const sample = 16;
  const y = base - style.small * point * 0.32;
  const ends = [
    [right - sample, y],
    [right, y],
  ] as const;
  const label = text(right - sample - 1.5, base, words, style.small, { anchor: 'end' });
  return {
    width: sample + widthOf(words, style.small) + 5,
    items: [group([label], { tag: 'P' }), group(walkerLine(ends, round.walker, swatchDash))],
  };
}

/** The lines under the table. */
function footWords({ stamp, style }: BookFacts): string[] {
  const unsure = 'Unsure which bird? Photograph nest and eggs, close, go on.';
  if (style.variant === 'large-print')
    return [
      `Degrees ${stamp.declination ? 'by compass' : 'from true north'}. Unsure? Photograph nest and eggs, close, go on.`,
    ];
  return [degreesAre(stamp.declination), `${unsure} Key, tick codes and cautions: back page.`];
}

/** How the page's first box is reached, and how long the round is. */
function walkLine({ units, stamp }: BookFacts, { round }: WalkList, boxes: readonly PlannedBox[]): string {
  const first = boxes[0];
  const leg = round?.legs.find((one) => one.to === first?.number);
  const whole = round ? `${walkWords(round.metres, units)}, about ${timeWords(round.minutes)}` : '';
  if (!leg || !first) return whole;
  const from = leg.from === 'start' ? 'start' : `box ${leg.from}`;
  const way = `${walkWords(leg.metres, units)} ${windOf(leg.bearing)} ${degreeWords(compassOf(leg.bearing, stamp.declination))}`;
  return `From ${from} to box ${first.number}: ${way} · whole round ${whole}`;
}
