/** The shopping list of the whole plan, with the arithmetic shown. */
import { boards } from '../boards.ts';
import type { BookFacts, Draft } from '../facts.ts';
import { type Block, heading, paragraph, tableBlocks } from '../flow.ts';
import { flowSheets } from '../flow-sheet.ts';
import { headHeight } from '../layout.ts';
import { type BoardNeed, type Build, cutWords, type Materials, materialsOf, type Need, waste } from '../materials.ts';
import { wrapAtMost } from '../measure.ts';
import { point } from '../style.ts';
import type { Column } from '../table.ts';
import { spanWords, trim } from '../units.ts';

/** As many pages as it takes. */
export function materialsSheets(facts: BookFacts): Draft[] {
  const { page, plan, style, units } = facts;
  const area = page.safe;
  const list = materialsOf(plan.boxes, units);
  const blocks: Block[] = [
    heading('Boxes by hole', style),
    ...table(facts, list.builds, buildColumns(facts, area.width)),
    ...list.builds.flatMap((build) => cutParagraphs(facts, build, area.width)),
    ...leftOut(facts, list, area.width),
    heading('Boards', style),
    ...table(facts, list.boards, boardColumns(facts, area.width)),
    paragraph(boardWords(facts), area.width, style),
    heading('Poles, guards, plates, screws', style),
    ...table(facts, list.needs, needColumns(facts, area.width)),
    paragraph(
      'Untreated wood at least 3/4 in (19 mm) thick (TXMN; 15 mm in Europe, BTO). No metal or thin plastic boxes. Call the utility-locating service before any pole is driven.',
      area.width,
      style,
    ),
  ];
  const shape = { area, columns: 1 } as const;
  const count = list.builds.reduce((sum, build) => sum + build.boxes.length, 0);
  return flowSheets(
    facts,
    {
      id: 'materials',
      kind: 'materials',
      what: 'materials',
      below: `${count} new boxes to build`,
      ...shape,
      numbers: [],
    },
    blocks,
  );
}

function table<Row>({ style, page }: BookFacts, rows: readonly Row[], columns: readonly Column<Row>[]): Block[] {
  if (rows.length === 0) return [paragraph('None.', 60, style)];
  const size = style.small;
  const deepest = Math.max(
    ...rows.map((row) => Math.max(...columns.map((column) => (column.cell(row) as unknown[]).length))),
  );
  const look = { size, row: deepest * size * point * 1.16 + 1.6, head: size * point * 1.2 + 2 };
  // In pieces that fit a page under its head and the table's heading; where rows are deep, in small ones, so that no page stays half empty.
  const room = page.safe.height - headHeight(style) - style.head * point * 1.7 - 4 - look.head;
  const fitting = Math.max(1, Math.floor(room / look.row));
  return tableBlocks(columns, rows, look, fitting < 12 ? Math.ceil(fitting / 3) : 12);
}

function column<Row>(facts: BookFacts, head: string, width: number, words: (row: Row) => string): Column<Row> {
  const { small } = facts.style;
  return { head, width, cell: (row) => wrapAtMost(4, words(row), width - 2.4, small).map((one) => ({ words: one })) };
}

function buildColumns(facts: BookFacts, width: number): Column<Build>[] {
  const { units } = facts;
  const unit = units === 'us' ? 'in' : 'mm';
  return [
    column(facts, 'Hole', width * 0.15, (build) => build.hole),
    column(facts, 'Count', width * 0.1, (build) => String(build.boxes.length)),
    column(facts, 'For', width * 0.25, (build) => build.birds.join(', ')),
    column(
      facts,
      'Inside',
      width * 0.22,
      (build) =>
        `${build.floor.map((one) => cutWords(one, units)).join(' × ')} × ${cutWords(build.depth, units)} ${unit} deep`,
    ),
    column(facts, 'Boxes', width * 0.28, (build) => spanWords(build.boxes)),
  ];
}

/** Pieces of one box in words: "front 5 × 8 from 1x6". */
function cutParagraphs({ units, style }: BookFacts, build: Build, width: number): Block[] {
  const unit = units === 'us' ? 'inches' : 'mm';
  const pieces = build.cuts.map((cut) => {
    const joined = cut.strips > 1 ? ` (${cut.strips} strips joined)` : '';
    return `${cut.part} ${cutWords(cut.across, units)} × ${cutWords(cut.along, units)} from ${cut.board.name}${joined}`;
  });
  return [paragraph(`${pieces.join('; ')}. Width × length, ${unit}.`, width, style, `One box, ${build.hole}:`)];
}

function boardColumns(facts: BookFacts, width: number): Column<BoardNeed>[] {
  const { units } = facts;
  const long = (mm: number) => (units === 'us' ? `${trim(mm / 304.8, 1)} ft` : `${trim(mm / 1000, 1)} m`);
  const one = long(boards[units].length);
  return [
    column(facts, 'Board', width * 0.2, (need) => need.board),
    column(facts, 'Buy', width * 0.2, (need) => `${need.buy} of ${one}`),
    column(
      facts,
      'How',
      width * 0.6,
      (need) =>
        `pieces and cuts ${long(need.used)}, laid into ${need.boards} of ${one}; ${need.boards} × ${trim(1 + waste, 2)} = ${trim(need.boards * (1 + waste), 2)}, up to ${need.buy}`,
    ),
  ];
}

function boardWords({ units }: BookFacts): string {
  const { thick, source } = boards[units];
  const thickness = units === 'us' ? '3/4 in' : `${thick} mm`;
  return `All ${thickness} thick. ${trim(waste * 100)} % on top for knots and miscuts, 5 mm a cut for the saw. Sides are cut level; slope their tops for the roof. Source: ${source}.`;
}

function needColumns(facts: BookFacts, width: number): Column<Need>[] {
  return [
    column(facts, 'What', width * 0.38, (need) => need.what),
    column(facts, 'Count', width * 0.14, (need) => need.count),
    column(facts, 'How', width * 0.48, (need) => need.how),
  ];
}

function leftOut({ style }: BookFacts, { unknown, standing }: Materials, width: number): Block[] {
  const rows: Block[] = [];
  if (standing > 0)
    rows.push(
      paragraph(
        `${standing} standing ${standing === 1 ? 'box needs' : 'boxes need'} no new wood: check hole, roof, guard and screws.`,
        width,
        style,
      ),
    );
  if (unknown.length > 0)
    rows.push(paragraph(`No guide for the bird of ${spanWords(unknown)}: not counted in boards.`, width, style));
  return rows;
}
