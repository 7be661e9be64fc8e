/** How a plan is cut into map sheets: a round scale at which no two numbers touch, and windows that overlap. */
import type { Point } from '../geometry/point.ts';
import type { PlannedBox } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { boundsOf } from './land-things.ts';
import { spread } from './spread.ts';

/** Scales of detail sheets, largest drawing first: 1 in = 50, 100, 200 ft in the US row, then metric ones. */
export const detailScales: Readonly<Record<Units, readonly number[]>> = {
  us: [600, 1200, 2400, 5000],
  metric: [500, 1000, 2000, 2500, 5000],
};

/** Share of a window that it has in common with its neighbor, across and down: half of it on each side. */
export const overlapShare = 0.1;

/** Mean length of a leg on paper below which lengths and arrows crowd, mm (ours). */
const comfortableLeg = 28;

/** A disc pushed by at most so many mm counts as standing in its place; `near` is taken where nothing else keeps the sheets few (ours). */
const exact = 1;
const near = 3;

/** An unasked-for scale puts at least this many boxes on a sheet on average, so that nobody walks with a pile of near-empty paper (ours). */
const boxesPerSheet = 4;

/** A detail sheet's ground: `centre` of the window and the numbers in its body. Rows and columns count from the top left. */
export interface Frame {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly centre: Point;
  readonly numbers: readonly number[];
}

export interface Book {
  readonly scale: number;
  readonly frames: readonly Frame[];
  /** Window on the ground, metres. */
  readonly across: number;
  readonly down: number;
}

/** What a page offers: the map window in mm, and the room a box's disc takes (see `discRoom`). */
export interface WindowFacts {
  readonly width: number;
  readonly height: number;
  room(box: PlannedBox): number;
}

/** Cuts the plan at the scale given, or at one chosen by `chooseScale`. No boxes: no frames. */
export function makeBook(boxes: readonly PlannedBox[], window: WindowFacts, units: Units, scale: number | null): Book {
  const used = scale ?? chooseScale(boxes, window, units);
  const across = (window.width * used) / 1000;
  const down = (window.height * used) / 1000;
  return { scale: used, across, down, frames: cut(boxes, across, down) };
}

/**
 * The largest drawing that shows everything on one sheet, if numbers keep apart there and legs are comfortably long; else, of the
 * drawings that keep numbers apart on few sheets, the smallest with comfortable legs or the largest of them; else the smallest that
 * keeps numbers apart; else (boxes too close at every scale) the largest drawing there is.
 */
export function chooseScale(boxes: readonly PlannedBox[], window: WindowFacts, units: Units): number {
  const scales = detailScales[units];
  const first = scales[0] ?? 1000;
  const push = new Map(scales.map((one) => [one, pushed(boxes, window, one)]));
  const sheets = new Map(scales.map((one) => [one, makeBook(boxes, window, units, one).frames.length]));
  const within = (most: number) => scales.filter((one) => push.get(one)! <= most);
  const single = scales.find((one) => sheets.get(one)! <= 1);
  if (single !== undefined && (single === first || within(exact).includes(single)) && !legsCrowd(boxes, single))
    return single;
  const most = Math.max(1, Math.ceil(boxes.length / boxesPerSheet));
  for (const limit of [exact, near]) {
    const few = within(limit).filter((one) => sheets.get(one)! <= most);
    const roomy = few.filter((one) => !legsCrowd(boxes, one));
    const found = roomy[roomy.length - 1] ?? few[0];
    if (found !== undefined) return found;
  }
  const apart = within(exact);
  return apart[apart.length - 1] ?? first;
}

/** How far the most-moved disc is pushed at this scale, mm; the boxes of a pair may be pushed apart freely, they stand as one. */
function pushed(boxes: readonly PlannedBox[], window: WindowFacts, scale: number): number {
  const mm = 1000 / scale;
  const spots = boxes.map(({ at }): [number, number] => [at.x * mm, at.y * mm]);
  const placed = spread(spots, boxes.map(window.room));
  const shifts = boxes.map((box, i) =>
    Math.max(
      0,
      Math.hypot(placed[i]![0] - spots[i]![0], placed[i]![1] - spots[i]![1]) -
        (box.pairedWith === null ? 0 : window.room(box)),
    ),
  );
  return Math.max(0, ...shifts);
}

/** Median distance to the nearest other box (a pair's own partner left out) on paper below the comfortable leg. */
function legsCrowd(boxes: readonly PlannedBox[], scale: number): boolean {
  const nearest = boxes
    .map((box) => {
      const others = boxes.filter((one) => one.number !== box.number && one.number !== box.pairedWith);
      return Math.min(...others.map((one) => Math.hypot(one.at.x - box.at.x, one.at.y - box.at.y)));
    })
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const median = nearest[Math.floor(nearest.length / 2)];
  return median !== undefined && (median * 1000) / scale < comfortableLeg;
}

interface Offset {
  readonly x: number;
  readonly y: number;
}

/** Positions of the net tried each way. */
const tries = 6;

/** A net of bodies laid so that few sheets are needed and boxes stand clear of the seams. Every box lies in exactly one body. */
function cut(boxes: readonly PlannedBox[], across: number, down: number): Frame[] {
  const places = anchors(boxes);
  const bounds = boundsOf(places.map((box) => box.at));
  if (!bounds) return [];
  const width = across * (1 - overlapShare);
  const height = down * (1 - overlapShare);
  const columns = Math.max(1, Math.ceil((bounds.max.x - bounds.min.x + 1e-6) / width));
  const rows = Math.max(1, Math.ceil((bounds.max.y - bounds.min.y + 1e-6) / height));
  const spareX = columns * width - (bounds.max.x - bounds.min.x);
  const spareY = rows * height - (bounds.max.y - bounds.min.y);
  let best: { cells: Map<string, Cell>; cost: number } | null = null;
  for (let i = 1; i < tries; i++)
    for (let j = 1; j < tries; j++) {
      const offset = { x: bounds.min.x - (spareX * i) / tries, y: bounds.max.y + (spareY * j) / tries };
      const cells = cellsOf(places, offset, width, height);
      const cost = cells.size + seamCost(places, offset, width, height) + (Math.abs(i - 3) + Math.abs(j - 3)) * 0.001;
      if (!best || cost < best.cost - 1e-9) best = { cells, cost };
    }
  const cells = [...(best?.cells.values() ?? [])].sort((a, b) => a.row - b.row || a.column - b.column);
  return cells.map((cell, i) => ({ sheet: i + 1, ...cell }));
}

interface Place {
  readonly number: number;
  readonly at: Point;
}

/** Boxes of a pair closer than this many metres go on one sheet together (ours). */
const together = 15;

/** Where each box counts when sheets are cut: a pair's two boxes at their middle. */
function anchors(boxes: readonly PlannedBox[]): Place[] {
  const byNumber = new Map(boxes.map((box) => [box.number, box]));
  return boxes.map(({ number, at, pairedWith }) => {
    const other = pairedWith === null ? undefined : byNumber.get(pairedWith);
    if (!other || Math.hypot(other.at.x - at.x, other.at.y - at.y) > together) return { number, at };
    return { number, at: { x: (at.x + other.at.x) / 2, y: (at.y + other.at.y) / 2 } };
  });
}

interface Cell {
  readonly row: number;
  readonly column: number;
  readonly centre: Point;
  readonly numbers: number[];
}

function cellsOf(boxes: readonly Place[], offset: Offset, width: number, height: number): Map<string, Cell> {
  const cells = new Map<string, Cell>();
  for (const { at, number } of boxes) {
    const column = Math.floor((at.x - offset.x) / width);
    const row = Math.floor((offset.y - at.y) / height);
    const key = `${row} ${column}`;
    const centre = { x: offset.x + (column + 0.5) * width, y: offset.y - (row + 0.5) * height };
    const cell = cells.get(key) ?? { row, column, centre, numbers: [] };
    cell.numbers.push(number);
    cells.set(key, cell);
  }
  return cells;
}

/** Under half a sheet: more when boxes stand near a seam. */
function seamCost(boxes: readonly Place[], offset: Offset, width: number, height: number): number {
  const near = (value: number, size: number) => {
    const part = value / size - Math.floor(value / size);
    return Math.max(0, 0.06 - Math.min(part, 1 - part)) / 0.06;
  };
  const sum = boxes.reduce((s, { at }) => s + near(at.x - offset.x, width) + near(offset.y - at.y, height), 0);
  return (0.49 * sum) / (1 + sum);
}
