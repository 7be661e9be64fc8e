/** The key of a sheet, drawn from the layer files' own print styles, so that a swatch cannot differ from the map. */
import type { Subject } from '../../layers/types.ts';
import type { Round } from '../plan-types.ts';
import { type DiscLook, drawDisc } from './disc.ts';
import { type Box, circle, group, type Item, path, rectangle, text } from './display.ts';
import { drawParts } from './drawing.ts';
import { iconScale, type Layers, paintArea, paintLine } from './land.ts';
import type { Thing } from './land-things.ts';
import { shorten, widthOf } from './measure.ts';
import { point, type Style } from './style.ts';
import { spanWords } from './units.ts';
import { grown, viewOf } from './view.ts';
import { swatchDash, walkerInk, walkerLine } from './walker-line.ts';
import { type KeyWords, keyWord } from './words.ts';

const swatch = { width: 8.5, height: 4.6 } as const;

/** Between two columns of the key, mm. */
const gap = 2;

/** More walkers than this are told in short words, several to a line (ours: so that the land finds room). */
const walkersInFull = 6;

/** Marks in a swatch are drawn smaller, so that it holds enough of them to be known. */
const swatchMarks = 0.62;

/** One row of the key. */
export interface KeyRow {
  readonly words: string;
  /** One of many walkers, in short words: these share lines. */
  readonly walker?: true;
  draw(box: Box): Item[];
}

/** Rows for the kinds the site has, in the layers' order, top of the drawing last. */
export function landRows(things: readonly Thing[], layers: Layers, style: Style, words: KeyWords): KeyRow[] {
  const kinds = new Set<string>(things.map((thing) => thing.kind));
  return (
    layers
      // Without patterns all areas look alike; the map says what they are in words.
      .filter((subject) => style.patterns || !subject.pattern || subject.id === 'off-limits')
      .filter(
        (subject) => subject.legend.length > 0 && subject.id !== 'posts' && subject.kinds.some((k) => kinds.has(k)),
      )
      .map((subject) => ({
        words: keyWord(subject.legend[0]!.word, words),
        draw: (box) => drawSwatch(subject, box, style),
      }))
  );
}

function drawSwatch(subject: Subject, box: Box, style: Style): Item[] {
  const middle = box.y + box.height / 2;
  if (subject.icon && subject.print.icon) {
    const at = { x: box.x + box.width / 2, y: middle, scale: Math.min(iconScale({ crown: 0 }, subject, 1000), 0.17) };
    return drawParts(subject.icon.parts, at, 0.2);
  }
  if (subject.legend[0]?.swatch === 'line') {
    return paintLine(
      [
        [
          [box.x, middle],
          [box.x + box.width, middle],
        ],
      ],
      smaller(subject),
    );
  }
  const { x, y, width, height } = box;
  const ring = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ] as const;
  const view = viewOf(1000, { x: 0, y: 0 }, box);
  return [group(paintArea([ring], smaller(subject), view, style), { clip: rectangle(grown(box, 0.5)) })];
}

function smaller(subject: Subject): Subject {
  const { pattern, along } = subject.print;
  const less = pattern && { ...pattern, scale: pattern.scale * swatchMarks };
  const closer = along && { ...along, every: Math.min(along.every, swatch.width / 2) };
  return { ...subject, print: { ...subject.print, pattern: less, along: closer } };
}

export interface BoxKey {
  readonly standing: boolean;
  readonly pair: boolean;
  /** The rounds the map shows. */
  readonly rounds: readonly Round[];
  /** Whether the plan has more than one: then each is named. */
  readonly several: boolean;
  readonly others: boolean;
}

/** Rows for the boxes, the rounds (each walker's by name where there are several) and the way other sheets' boxes are shown. */
export function boxRows(has: BoxKey): KeyRow[] {
  const look: DiscLook = { size: 7.5, radius: 2.5 };
  const facts = { number: 4, score: 75, facing: 90 };
  const disc = (standing: boolean) => (box: Box) => [
    drawDisc(box.x + box.width / 2 - 0.6, box.y + box.height / 2, { ...facts, standing }, look),
  ];
  const rows: (KeyRow | false)[] = [
    { words: 'box: beak = hole, ring = score', draw: disc(false) },
    has.standing && { words: 'standing box', draw: disc(true) },
    has.pair && { words: 'pair, pushed apart to read', draw: drawPair },
    has.others && { words: 'box of another sheet', draw: drawOther },
    ...roundRows(has),
  ];
  return rows.filter((row): row is KeyRow => row !== false);
}

function drawPair(box: Box): Item[] {
  const y = box.y + box.height / 2;
  const [a, b] = [box.x + 2, box.x + box.width - 2];
  const disc = (x: number) => path(circle(x, y, 1.7), { fill: '#ffffff', stroke: { width: 0.5, color: '#000000' } });
  return [path(['M', a, y, 'L', b, y], { stroke: { width: 1.6, color: '#000000' } }), disc(a), disc(b)];
}

function roundRows({ rounds, several }: BoxKey): KeyRow[] {
  const walked = rounds.filter((round) => round.legs.length > 0);
  if (!several)
    return walked.map(({ walker }) => ({ words: 'round, the way to walk', draw: (box) => drawRound(box, walker) }));
  const line = (walker: number) => (box: Box) => swatchLine(box, walker);
  if (walked.length <= walkersInFull)
    return walked.map(({ walker, boxes }) => ({
      words: `walker ${walker}: boxes ${spanWords(boxes)}`,
      draw: line(walker),
    }));
  return [
    { words: 'walker: boxes', draw: () => [] },
    ...walked.map(
      ({ walker, boxes }): KeyRow => ({ words: `${walker}: ${spanWords(boxes)}`, walker: true, draw: line(walker) }),
    ),
  ];
}

function drawRound(box: Box, walker: number): Item[] {
  const y = box.y + box.height / 2;
  const x = box.x + box.width * 0.62;
  const head = path(['M', x + 1.6, y, 'L', x - 1.6, y - 1.15, 'L', x - 1.6, y + 1.15, 'Z'], {
    fill: walkerInk(walker),
  });
  return [...swatchLine(box, walker), head];
}

function swatchLine({ x, y, width, height }: Box, walker: number): Item[] {
  const middle = y + height / 2;
  return walkerLine(
    [
      [x, middle],
      [x + width, middle],
    ],
    walker,
    swatchDash,
  );
}

function drawOther(box: Box): Item[] {
  const middle = circle(box.x + box.width / 2, box.y + box.height / 2, 1.5);
  return [path(middle, { fill: '#ffffff', stroke: { width: 0.45, color: '#000000' } })];
}

/** At most `room` rows; the last says how many found no room. */
function withRest(rows: readonly KeyRow[], room: number): readonly KeyRow[] {
  if (rows.length <= room) return rows;
  const rest = { words: `and ${rows.length - room + 1} more`, draw: () => [] };
  return [...rows.slice(0, Math.max(0, room - 1)), rest];
}

/** Parts of a key one under the other. Where walkers are told in short they are a part of their own, laid side by side. */
export function drawKeys(parts: readonly (readonly KeyRow[])[], box: Box, style: Style): Item[] {
  const split = parts.flatMap((rows) => [rows.filter((row) => !row.walker), rows.filter((row) => row.walker)]);
  let y = box.y;
  return split
    .filter((rows) => rows.length > 0)
    .map((rows) => {
      const room = { ...box, y, height: box.y + box.height - y };
      const key = drawKey(rows, room, style, rows[0]!.walker || box.width > 80);
      y += key.height;
      return key.item;
    });
}

/** Lays rows out in one column, or in as many as they need and the width allows (`wide`: always as many as that); `left` counts the rows that found no room. */
export function drawKey(
  rows: readonly KeyRow[],
  box: Box,
  style: Style,
  wide = box.width > 80,
): { item: Item; height: number; left: number } {
  const step = Math.max(swatch.height + 0.9, style.smallLine + 1);
  const longest = Math.max(...[10, ...rows.map((row) => widthOf(row.words, style.small))]);
  const most = Math.max(1, Math.floor((box.width + gap) / (swatch.width + 1.5 + longest + gap)));
  const fitting = Math.max(1, Math.floor((box.height + 0.9) / step));
  const columns = wide ? most : Math.min(most, Math.max(1, Math.ceil(rows.length / fitting)));
  const width = (box.width - gap * (columns - 1)) / columns;
  const perColumn = Math.min(fitting, Math.max(1, Math.ceil(rows.length / columns)));
  const shown = withRest(rows, perColumn * columns);
  const items = shown.flatMap((row, i) => {
    const x = box.x + Math.floor(i / perColumn) * (width + gap);
    const y = box.y + (i % perColumn) * step;
    const words = shorten(row.words, width - swatch.width - 1.5, style.small);
    const base = y + swatch.height / 2 + style.small * point * 0.34;
    return [...row.draw({ x, y, ...swatch }), text(x + swatch.width + 1.5, base, words, style.small)];
  });
  const alt = `Key: ${shown.map((row) => row.words).join('; ')}`;
  return { item: group(items, { tag: 'Figure', alt }), height: perColumn * step, left: rows.length - shown.length };
}
