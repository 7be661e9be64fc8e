/** Columns of the check sheet: what is known of a box, then room to write. */
import type { PlannedBox, Round } from '../../plan-types.ts';
import { compassOf, facingWords } from '../compass.ts';
import { circle, type Item, path } from '../display.ts';
import { type BookFacts, birdName } from '../facts.ts';
import type { DueVisit } from '../input.ts';
import { widthOf, wrap } from '../measure.ts';
import { type Column, tableWidth } from '../table.ts';
import { degreeWords, placeWords, walkWords, windOf } from '../units.ts';

/** What a tick says; a visit's state in one circle. */
export const ticks = ['empty', 'nest', 'eggs', 'young', 'flown'] as const;

/** Boxes of a round in walking order. */
export interface WalkList {
  readonly round: Round | null;
  readonly name: string;
  readonly boxes: readonly PlannedBox[];
}

/** Room for the longest name in one line, mm. */
const birdWidth = { least: 29, most: 44 } as const;

/** Least room for words at the end of a row, mm. */
const leastSeen = 14;

/** Room at both sides of a cell's words, mm. */
const sides = 2.6;

function nameWidth({ boxes }: WalkList, size: number): number {
  return Math.max(...boxes.map((box) => widthOf(birdName(box), size))) + sides;
}

/** What is wanted beyond the least, if there is so much to spare. */
function clamped(wanted: number, spare: number): number {
  return Math.max(0, Math.min(wanted, spare, birdWidth.most - birdWidth.least));
}

/** Bird and facing; a name too long for one line runs on into the second. */
function birdColumn({ stamp, style }: BookFacts, width: number): Column<PlannedBox> {
  return {
    head: 'Bird, faces',
    width,
    cell: (box) => {
      const [name, facing] = [birdName(box), facingWords(box, stamp.declination)];
      const room = width - sides;
      const rows = widthOf(name, style.small) <= room ? [name, facing] : wrap(`${name}, ${facing}`, room, style.small);
      return rows.map((words) => ({ words }));
    },
  };
}

/** Columns that fill `width` mm. */
export function columnsOf(facts: BookFacts, list: WalkList, width: number): Column<PlannedBox>[] {
  const { style } = facts;
  if (style.variant === 'large-print') return largeColumns(facts, list, width);
  const due = new Map((facts.visits ?? []).map((visit) => [visit.box, visit]));
  const dueColumn: Column<PlannedBox> = {
    head: 'Due',
    width: 16.5,
    cell: (box) => dueLines(due.get(box.number)),
  };
  const known: Column<PlannedBox>[] = [
    {
      head: 'Box',
      width: 11,
      align: 'middle',
      cell: (box) => [{ words: String(box.number), face: 'serifBold', size: style.number }],
    },
    birdColumn(facts, birdWidth.least),
    { head: 'Place', width: 20, cell: (box) => placeWords(box.position).map((words) => ({ words })) },
    { head: 'Next', width: 21, cell: (box) => legLines(facts, list, box) },
    ...(due.size > 0 ? [dueColumn] : []),
  ];
  const write: Column<PlannedBox>[] = [
    { head: 'Time', width: 12, thick: true, cell: () => [] },
    ...ticks.map(
      (tick, i): Column<PlannedBox> => ({
        head: tick,
        width: 8.8,
        thick: i === 0,
        align: 'middle',
        light: true,
        cell: () => tickCircle,
      }),
    ),
    { head: 'Eggs', width: 9.5, align: 'middle', thick: true, cell: () => [] },
    { head: 'Young', width: 11, align: 'middle', cell: () => [] },
  ];
  const spare = width - tableWidth([...known, ...write]) - leastSeen;
  known[1] = birdColumn(facts, birdWidth.least + clamped(nameWidth(list, style.small) - birdWidth.least, spare));
  const columns = [...known, ...write];
  const left = width - columns.reduce((sum, column) => sum + column.width, 0);
  if (left >= leastSeen)
    return [...columns, { head: left < 24 ? 'Seen, done' : 'Seen and done', width: left, thick: true, cell: () => [] }];
  const seen: Column<PlannedBox> = { head: 'Seen, done', width: 18, thick: true, cell: () => [] };
  return [...squeezed(known, width - 18 - write.reduce((sum, one) => sum + one.width, 0)), ...write, seen];
}

/** Room for what is known, in large print, mm: as much as the longest line of bird and facing wants. */
const known = { least: 78, most: 100 } as const;

/** Large letters: what is known stands in one cell, so that the columns to write in keep their width. */
function largeColumns(facts: BookFacts, list: WalkList, width: number): Column<PlannedBox>[] {
  const { style, stamp } = facts;
  const due = new Map((facts.visits ?? []).map((visit) => [visit.box, visit.due?.slice(5) ?? '']));
  const named = (box: PlannedBox) => `${birdName(box)}, ${facingWords(box, stamp.declination)}`;
  const longest = Math.max(...list.boxes.map((box) => widthOf(named(box), style.small))) + sides;
  const room = Math.min(known.most, Math.max(known.least, longest));
  const lines = (box: PlannedBox) => [
    named(box),
    placeWords(box.position).join(' '),
    [...legLines(facts, list, box).map((one) => one.words), due.get(box.number) ? `due ${due.get(box.number)}` : '']
      .filter(Boolean)
      .join(', '),
  ];
  const columns: Column<PlannedBox>[] = [
    {
      head: 'Box',
      width: 14,
      align: 'middle',
      cell: (box) => [{ words: String(box.number), face: 'serifBold', size: style.number }],
    },
    { head: 'Bird, faces, place, next', width: room, cell: (box) => lines(box).map((words) => ({ words })) },
    ...ticks.map(
      (tick, i): Column<PlannedBox> => ({
        head: tick,
        width: 18.4,
        thick: i === 0,
        align: 'middle',
        light: true,
        cell: () => tickCircle,
      }),
    ),
    { head: 'Eggs', width: 16, align: 'middle', thick: true, cell: () => [] },
    { head: 'Young', width: 20, align: 'middle', cell: () => [] },
  ];
  const left = width - columns.reduce((sum, column) => sum + column.width, 0);
  return [...columns, { head: left < 33 ? 'Seen' : 'Time, seen', width: left, thick: true, cell: () => [] }];
}

/** Columns made narrower by one share, so that a long row still fits. */
function squeezed(columns: readonly Column<PlannedBox>[], width: number): Column<PlannedBox>[] {
  const share = width / columns.reduce((sum, column) => sum + column.width, 0);
  return columns.map((column) => ({ ...column, width: column.width * share }));
}

function tickCircle(x: number, y: number, width: number, height: number): Item[] {
  return [path(circle(x + width / 2, y + height / 2, 2.2), { stroke: { width: 0.3, color: '#000000' } })];
}

function legLines({ units, stamp }: BookFacts, { round }: WalkList, box: PlannedBox): { words: string }[] {
  const leg = round?.legs.find((one) => one.from === box.number);
  if (!leg) return [];
  const to = leg.to === 'end' ? 'end' : String(leg.to);
  return [
    { words: `${walkWords(leg.metres, units)} to ${to}` },
    { words: `${windOf(leg.bearing)} ${degreeWords(compassOf(leg.bearing, stamp.declination))}` },
  ];
}

/** Month and day of the next look, and of the last one (or why now, in a few words). */
function dueLines(visit: DueVisit | undefined): { words: string }[] {
  if (!visit?.due) return [];
  const below = visit.last ? `last ${visit.last.slice(5)}` : visit.why;
  return [{ words: visit.due.slice(5) }, ...(below ? [{ words: below }] : [])];
}
