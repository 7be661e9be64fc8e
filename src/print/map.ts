/** A map on a sheet: land, round, boxes, names; true to scale and cut to its window. */
import type { Point } from '../geometry/point.ts';
import type { PlannedBox, Round } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { clipLine, type Spot } from './clip.ts';
import { type DiscLook, discRoom, drawDisc } from './disc.ts';
import { circle, group, type Item, path, rectangle } from './display.ts';
import { centered, labelBox, Taken } from './labels.ts';
import { drawLand, drawMarks, type Layers } from './land.ts';
import type { Thing } from './land-things.ts';
import { drawNames } from './names.ts';
import { drawLegs, drawLengths, drawTabs, type TabWords } from './route-line.ts';
import { spread } from './spread.ts';
import type { Style } from './style.ts';
import { grown, inside, type View } from './view.ts';

/** What every map of a book is drawn from. */
export interface MapFacts {
  readonly things: readonly Thing[];
  readonly layers: Layers;
  readonly boxes: readonly PlannedBox[];
  readonly rounds: readonly Round[];
  readonly units: Units;
  readonly style: Style;
}

/** What one map shows: discs of its `own` numbers; others in the window as small rings. */
export interface MapWish {
  readonly own: ReadonlySet<number>;
  readonly look: DiscLook;
  readonly lengths: boolean;
  readonly alt: string;
  /** Number → words after it on a tab ("sheet 2"); null = no tabs on this map. */
  readonly sheetOf: ((stop: number | 'start' | 'end') => string | null) | null;
  /** Bodies of detail sheets to show, on the ground, with their words. */
  readonly frames?: readonly MapFrame[];
}

/** The ground of a detail sheet, metres, and what is written in its corner. */
export interface MapFrame {
  readonly min: Point;
  readonly max: Point;
  readonly words: string;
}

/** The map with its frame line, as one picture with a text of its own. */
export function drawMap(view: View, facts: MapFacts, wish: MapWish): Item {
  const { style, rounds } = facts;
  const taken = new Taken(view.window);
  const land = drawLand(facts.things, facts.layers, view, style);
  const marks = drawMarks(facts.things, facts.layers, view);
  const discs = discsOf(facts.boxes, view, wish);
  for (const { x, y } of discs) taken.addDisc(x, y, wish.look.radius + 1.3);
  const rings = neighbors(facts.boxes, view, wish);
  const look = { radius: wish.look.radius, lengths: wish.lengths };
  const tabs = wish.sheetOf ? drawTabs(rounds, view, style, taken, tabWords(wish)) : [];
  const legs = drawLegs(rounds, view, look, taken);
  const frames = wish.frames ?? [];
  const words = frames.flatMap((frame) => frameWords(frame, view, style, taken));
  const lengths = wish.lengths ? drawLengths(rounds, view, look, facts.units, style, taken) : [];
  for (const thing of facts.things) if (thing.at) taken.addDisc(...view.toPaper(thing.at), 1.6);
  for (const thing of facts.things)
    for (const run of thing.lines)
      for (const piece of clipLine(run.map(view.toPaper), view.window))
        for (let i = 1; i < piece.length; i++) taken.addLine(...piece[i - 1]!, ...piece[i]!, true);
  // A map of frames is an overview: a name on a dashed line would be read as the frame's.
  for (const frame of frames) takeFrame(frame, view, taken);
  const names = drawNames(facts.things, facts.layers, view, style, taken, frames.length > 0);
  const items: Item[] = [
    land,
    group(
      frames.flatMap((frame) => frameLines(frame, view)),
      { clip: rectangle(view.window) },
    ),
    ...legs,
    marks,
    ...startMarks(facts, view),
    group([...rings, ...discs.flatMap((disc) => disc.stem), ...pairBars(facts.boxes, discs)], {
      clip: rectangle(view.window),
    }),
    ...names,
    ...words,
    ...lengths,
    group(
      discs.map((disc) => disc.item),
      { clip: rectangle(view.window) },
    ),
    ...tabs,
    path(rectangle(view.window), { stroke: { width: 0.5, color: '#000000' } }),
  ];
  return group(items, { tag: 'Figure', alt: wish.alt });
}

interface PlacedDisc {
  readonly number: number;
  readonly x: number;
  readonly y: number;
  readonly item: Item;
  readonly stem: Item[];
}

/** Discs pushed apart where they would touch; one pushed off its place keeps a stem to a dot there. */
function discsOf(boxes: readonly PlannedBox[], view: View, { own, look }: MapWish): PlacedDisc[] {
  const { mine, spots, placed } = placeDiscs(boxes, view, own, look);
  return mine.map((box, i) => {
    const [x, y] = placed[i]!;
    const [tx, ty] = spots[i]!;
    const { score, facing } = box.card;
    const facts = { number: box.number, score, facing: facing.used, standing: box.state === 'standing' };
    const far = Math.hypot(x - tx, y - ty) > look.radius + 0.8;
    return { number: box.number, x, y, item: drawDisc(x, y, facts, look), stem: far ? stem(x, y, tx, ty) : [] };
  });
}

/** Numbers of the boxes whose discs stand more than 1 mm off their place so that they can be read. */
export function pushedApart(
  boxes: readonly PlannedBox[],
  view: View,
  { own, look }: Pick<MapWish, 'own' | 'look'>,
): number[] {
  const { mine, spots, placed } = placeDiscs(boxes, view, own, look);
  const far = (i: number) => Math.hypot(placed[i]![0] - spots[i]![0], placed[i]![1] - spots[i]![1]) > 1;
  return mine.filter((_, i) => far(i)).map((box) => box.number);
}

function placeDiscs(boxes: readonly PlannedBox[], view: View, own: ReadonlySet<number>, look: DiscLook) {
  const mine = boxes.filter((box) => own.has(box.number));
  const spots = mine.map((box): Spot => view.toPaper(box.at));
  // A pair stands a little wider, so that the bar between its discs shows.
  const radii = mine.map((box) => discRoom(look, box.state === 'standing') + (box.pairedWith === null ? 0 : 0.9));
  return { mine, spots, placed: spread(spots, radii, grown(view.window, -(look.radius + 1.2))) };
}

function stem(x: number, y: number, tx: number, ty: number): Item[] {
  const shape = ['M', x, y, 'L', tx, ty];
  return [
    path(shape, { stroke: { width: 1.2, color: '#ffffff' } }),
    path(shape, { stroke: { width: 0.3, color: '#000000' } }),
    path(circle(tx, ty, 0.8), { fill: '#000000', stroke: { width: 0.5, color: '#ffffff' } }),
  ];
}

/** A sheet's body as dashes over white. */
function frameLines({ min, max }: MapFrame, view: View): Item[] {
  const [left, bottom] = view.toPaper(min);
  const [right, top] = view.toPaper(max);
  const shape = rectangle({ x: left, y: top, width: right - left, height: bottom - top });
  return [
    path(shape, { stroke: { width: 1.3, color: '#ffffff' } }),
    path(shape, { stroke: { width: 0.45, color: '#000000', dash: [2.4, 1.2] } }),
  ];
}

function takeFrame({ min, max }: MapFrame, view: View, taken: Taken): void {
  const [left, bottom] = view.toPaper(min);
  const [right, top] = view.toPaper(max);
  const corners = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
    [left, top],
  ] as const;
  for (const [i, [x, y]] of corners.slice(1).entries()) taken.addLine(...corners[i]!, x, y);
}

/** Its words, along its upper or lower edge where nothing is taken, else in its upper left corner. */
function frameWords({ min, max, words }: MapFrame, view: View, style: Style, taken: Taken): Item[] {
  const [left, bottom] = view.toPaper(min);
  const [right, top] = view.toPaper(max);
  const { window: w } = view;
  const size = labelBox(0, 0, words, style.small, 'sansBold');
  const x1 = Math.max(left, w.x) + size.width / 2 + 1;
  const x2 = Math.min(right, w.x + w.width) - size.width / 2 - 1;
  const ys = [Math.max(top, w.y) + size.height / 2 + 1, Math.min(bottom, w.y + w.height) - size.height / 2 - 1];
  const spots = ys.flatMap((y) => Array.from({ length: 13 }, (_, i): Spot => [x1 + ((x2 - x1) * i) / 12, y]));
  const boxAt = ([x, y]: Spot) => ({ ...size, x: x - size.width / 2, y: y - size.height / 2 });
  const free = spots.find((spot) => taken.free(boxAt(spot)));
  const spot = free ?? spots[0]!;
  taken.add(boxAt(spot));
  return [centered(...spot, words, style.small, { face: 'sansBold', halo: 0.8 })];
}

/** A thick bar ties the two discs of a pair. */
function pairBars(boxes: readonly PlannedBox[], discs: readonly PlacedDisc[]): Item[] {
  const at = new Map(discs.map((disc) => [disc.number, disc]));
  return boxes.flatMap(({ number, pairedWith }) => {
    const a = at.get(number);
    const b = pairedWith !== null && pairedWith > number ? at.get(pairedWith) : undefined;
    if (!a || !b) return [];
    const shape = ['M', a.x, a.y, 'L', b.x, b.y];
    return [
      path(shape, { stroke: { width: 3, color: '#ffffff' } }),
      path(shape, { stroke: { width: 2, color: '#000000' } }),
    ];
  });
}

/** Boxes of other sheets that this window shows too: a small ring without a number. */
function neighbors(boxes: readonly PlannedBox[], view: View, { own }: MapWish): Item[] {
  return boxes.flatMap(({ number, at }) => {
    const [x, y] = view.toPaper(at);
    if (own.has(number) || !inside(view.window, x, y)) return [];
    return [path(circle(x, y, 1.5), { fill: '#ffffff', stroke: { width: 0.45, color: '#000000' } })];
  });
}

/** A square with a dot where a round starts, unless a trailhead is drawn there. */
function startMarks({ rounds, things }: MapFacts, view: View): Item[] {
  return rounds.flatMap(({ start }) => {
    if (!start) return [];
    const near = things.some(
      (t) => t.kind === 'trailhead' && t.at && Math.hypot(t.at.x - start.x, t.at.y - start.y) < 5,
    );
    const [x, y] = view.toPaper(start);
    if (near || !inside(view.window, x, y, 2)) return [];
    const square = rectangle({ x: x - 1.7, y: y - 1.7, width: 3.4, height: 3.4 });
    return [
      path(square, { fill: '#ffffff', stroke: { width: 0.5, color: '#000000' } }),
      path(circle(x, y, 0.7), { fill: '#000000' }),
    ];
  });
}

function tabWords({ own, sheetOf }: MapWish) {
  const has = (stop: number | 'start' | 'end') => typeof stop === 'number' && own.has(stop);
  return (stop: number | 'start' | 'end', other: number | 'start' | 'end', going: boolean): TabWords | null => {
    if (has(stop) || !has(other)) return null;
    const where = sheetOf?.(stop) ?? null;
    if (where === null) return null;
    if (typeof stop !== 'number') return ['', going ? `to the end, ${where}` : `from the start, ${where}`];
    return [String(stop), `${going ? 'next' : 'before'}, ${where}`];
  };
}
