/** The back of the check sheet: whose nest is it, what the ticks mean, when to leave a box shut, cautions, and the round as a QR code. */
import type { BirdGuide, Region } from '../../birds/guide.ts';
import { admits } from '../../birds/hole.ts';
import { birdsOf } from '../../birds/index.ts';
import { lawOf } from '../../visits/law.ts';
import { fieldCautions, openingRules } from '../cautions.ts';
import { type Item, text } from '../display.ts';
import { type BookFacts, type Draft, guideOf } from '../facts.ts';
import { type Block, heading, paragraph, tableBlocks } from '../flow.ts';
import { columnWidth, flowSheets } from '../flow-sheet.ts';
import { headHeight } from '../layout.ts';
import { wrap, wrapAtMost } from '../measure.ts';
import { belowClamp } from '../paper.ts';
import { qrCode } from '../qr.ts';
import { encodeRound } from '../round-code.ts';
import { point } from '../style.ts';
import type { Column } from '../table.ts';
import type { WalkList } from './check-columns.ts';

/** Side of the QR code with its quiet zone, mm. */
const codeSide = 40;

const tickWords: readonly (readonly [string, string])[] = [
  ['empty', 'nothing, or a bare box'],
  ['nest', 'material brought in, no eggs'],
  ['eggs', 'count them, do not touch'],
  ['young', 'count; note how old (bare, quills, feathered)'],
  ['flown', 'nest flat and dirty after the due day: they are out'],
];

/** One page, or more in large print. */
export function checkBack(facts: BookFacts, list: WalkList, index: number): Draft[] {
  const { page, style } = facts;
  const area = belowClamp(page);
  const columns = style.variant === 'large-print' ? 1 : area.width > area.height ? 3 : 2;
  const shape = { area, columns } as const;
  const width = columnWidth(shape);
  const blocks: Block[] = [
    heading('Whose nest is it?', style),
    ...nestKey(facts, width, area.height - headHeight(style) - 14),
    paragraph('Where nest and eggs do not agree, do not guess: photograph both and write “unsure”.', width, style),
    heading('Ticks', style),
    ...tickWords.map(([tick, words]) => paragraph(words, width, style, `${tick}:`)),
    heading('Leave it shut', style),
    ...openingRules.map(({ about, sentence, source }) =>
      paragraph(`${sentence} (${source})`, width, style, `${about}:`),
    ),
    heading('Take care', style),
    ...fieldCautions.map(({ about, sentence, source }) =>
      paragraph(`${sentence} (${source})`, width, style, `${about}:`),
    ),
    heading('The law', style),
    paragraph(lawWords(facts), width, style),
    ...roundCode(facts, list, width),
  ];
  return flowSheets(
    facts,
    {
      id: `check-${index + 1}-back`,
      kind: 'check-back',
      what: `${list.name}, back`,
      below: 'Local rules and licensed practice go first.',
      ...shape,
      numbers: [],
    },
    blocks,
  );
}

/** General words for the region; an unknown region gets the strictest reading. */
function lawWords({ site }: BookFacts): string {
  const law = lawOf[site.settings.region as Region] ?? lawOf.europe;
  return `${law.sentence} Never remove a nest you cannot name.`;
}

/** Birds that fit through the holes of this plan, and mice. */
function nestKey(facts: BookFacts, width: number, room: number): Block[] {
  const { style } = facts;
  const size = style.small;
  const columns: Column<NestRow>[] = [
    { head: 'Bird', width: width * 0.27, cell: (row) => lines(row.bird, width * 0.27, size) },
    { head: 'Nest', width: width * 0.37, cell: (row) => lines(row.nest, width * 0.37, size) },
    { head: 'Eggs', width: width * 0.36, cell: (row) => lines(row.eggs, width * 0.36, size) },
  ];
  const rows = nestRows(facts);
  const deepest = Math.max(
    ...[1, ...rows.map((row) => Math.max(...columns.map((column) => (column.cell(row) as unknown[]).length)))],
  );
  const look = { size, row: deepest * size * point * 1.16 + 1, head: size * point * 1.2 + 1.6 };
  return tableBlocks(columns, rows, look, Math.floor((room - look.head) / look.row));
}

interface NestRow {
  readonly bird: string;
  readonly nest: string;
  readonly eggs: string;
}

function nestRows({ plan, site }: BookFacts): NestRow[] {
  const planned = new Set(plan.boxes.flatMap((box) => guideOf(box) ?? []));
  const holes = [...planned].map((guide) => guide.box.hole.value);
  const region = birdsOf(site.settings.region as Region, { pests: true });
  const able = (bird: BirdGuide) => planned.has(bird) || holes.some((hole) => admits(hole, bird));
  const birds = region.filter(able);
  const missing = [...planned].filter((bird) => !birds.includes(bird));
  return [
    ...[...missing, ...birds].map((bird) => ({
      bird: bird.name,
      nest: bird.nest.value,
      eggs: `${bird.eggs.count.value.join('–')} ${bird.eggs.text.value}`,
    })),
    { bird: 'Mouse', nest: 'ball of shredded grass, no cup, droppings', eggs: 'none: see Take care' },
  ];
}

function lines(words: string, width: number, size: number): { words: string }[] {
  return wrapAtMost(4, words, width - 2.4, size).map((row) => ({ words: row }));
}

/** What to do with the code. Printed where no phone could reach the app, it holds no address: any copy of the app opens it. */
function codeWords(address: string | null | undefined): string {
  const inside = 'The positions are in the code itself; nothing is sent anywhere.';
  return address
    ? `Scan to have this round on a phone. ${inside}`
    : `Scan, and put what it reads (#round=…) behind the address of Meadowpost on the phone. ${inside}`;
}

/** The round's positions, readable by the phone in the field without any network. */
function roundCode({ plan, stamp, style }: BookFacts, { boxes }: WalkList, width: number): Block[] {
  if (boxes.length === 0 || boxes.length > 500) return [];
  const stops = boxes.map(({ number, position }) => ({ number, position }));
  const payload = `${stamp.address ?? ''}#round=${encodeRound({ hash: stamp.hash, stops })}`;
  const code = qrCode(0, 0, codeSide, payload, `QR code with the positions of ${plan.siteName}’s round`);
  if (!code) return [paragraph('This round is too long for a QR code: open the site file on the phone.', width, style)];
  const words = wrap(codeWords(stamp.address), width - codeSide - 3, style.small);
  return [
    {
      height: codeSide,
      draw: (x, y) => {
        const drawn = qrCode(x, y, codeSide, payload, `QR code with the positions of ${plan.siteName}’s round`);
        const rows: Item[] = words.map((row, i) =>
          text(x + codeSide + 2, y + 8 + i * style.smallLine, row, style.small),
        );
        return [...(drawn ? [drawn] : []), ...rows];
      },
    },
  ];
}
