/** The land on a sheet: areas with their patterns, then lines, then single things; black on white, cut to the window. */
import type { Pattern, Subject } from '../../layers/types.ts';
import { coverKinds, type Kind, lineKinds, ruleKinds } from '../site/types.ts';
import { clipLine, clipRing, type Spot } from './clip.ts';
import { type Box, group, type Item, type Path, path, rectangle } from './display.ts';
import { drawParts } from './drawing.ts';
import type { Thing } from './land-things.ts';
import { fillWithPattern, type PreparedPattern, preparePattern } from './pattern-fill.ts';
import type { Style } from './style.ts';
import { grown, type View } from './view.ts';

/** The map subjects of `layers/`, bottom first (`subjects` of layers/all.ts). */
export type Layers = readonly Subject[];

/** Patterns made ready while one map is drawn. */
type PreparedPatterns = Map<Pattern, PreparedPattern>;

/** Finer kinds are drawn over coarser ones, as the ground itself is read; rules over cover. */
const areaOrder: readonly Kind[] = [...[...coverKinds].reverse(), ...ruleKinds];

/** How far past the window a shape is kept, mm, so that its cut edge does not show. */
const overhang = 4;

/** The subject that draws a kind: the first of its name, else the first that lists it and draws something. */
export function subjectOf(kind: Kind, layers: Layers): Subject | null {
  const draws = (one: Subject) => one.print.lines.length > 0 || one.print.icon !== null || one.print.fill !== null;
  return layers.find((one) => one.id === kind) ?? layers.find((one) => one.kinds.includes(kind) && draws(one)) ?? null;
}

/** Everything drawn on the land that the window shows. */
export function drawLand(things: readonly Thing[], layers: Layers, view: View, style: Style): Item {
  const seen = things.filter((thing) => touches(thing, view));
  const items: Item[] = [];
  const prepared: PreparedPatterns = new Map();
  for (const kind of areaOrder)
    for (const thing of seen.filter((one) => one.kind === kind))
      items.push(...drawArea(thing, layers, view, style, prepared));
  for (const kind of lineKinds)
    for (const thing of seen.filter((one) => one.kind === kind)) items.push(...drawLine(thing, layers, view));
  for (const thing of seen) if (thing.at && isPlant(thing)) items.push(...drawPlace(thing, layers, view));
  return group(items, { clip: rectangle(view.window) });
}

/** Trailheads, landmarks, feeders and the like: drawn over the round, which must not hide them. */
export function drawMarks(things: readonly Thing[], layers: Layers, view: View): Item {
  const marks = things.filter((thing) => thing.at && !isPlant(thing) && touches(thing, view));
  return group(
    marks.flatMap((thing) => drawPlace(thing, layers, view)),
    { clip: rectangle(view.window) },
  );
}

function isPlant({ kind }: Thing): boolean {
  return kind === 'tree' || kind === 'shrub';
}

/** Whether a thing's box comes within `margin` mm of the window. */
export function touches(thing: Thing, view: View, margin = overhang): boolean {
  const [left, bottom] = view.toPaper(thing.min);
  const [right, top] = view.toPaper(thing.max);
  const box = grown(view.window, margin);
  const reach = (thing.crown * 1000) / view.scale;
  const across = right + reach >= box.x && left - reach <= box.x + box.width;
  return across && bottom + reach >= box.y && top - reach <= box.y + box.height;
}

function drawArea(thing: Thing, layers: Layers, view: View, style: Style, prepared: PreparedPatterns): Item[] {
  const subject = subjectOf(thing.kind, layers);
  if (!subject) return [];
  return thing.areas.flatMap((rings) => {
    const cut = rings.map((ring) => clipRing(openRing(ring.map(view.toPaper)), grown(view.window, overhang)));
    const shown = cut.filter((ring) => ring.length > 2);
    return shown.length === 0 ? [] : paintArea(shown, subject, view, style, prepared);
  });
}

/** A shape on paper in a subject's print style. Also used for the legend's swatches. */
export function paintArea(
  rings: readonly (readonly Spot[])[],
  subject: Subject,
  view: View,
  style: Style,
  prepared: PreparedPatterns = new Map(),
): Item[] {
  const { print, pattern } = subject;
  const shape = ringsPath(rings);
  const isCover = (coverKinds as readonly string[]).includes(subject.id);
  const items: Item[] = [];
  if (print.fill && style.patterns) items.push(path(shape, { fill: print.fill }));
  else if (isCover) items.push(path(shape, { fill: '#ffffff' }));
  // Keep-out hatching is a warning, not decoration: an ink saver has it too.
  if (pattern && print.pattern && (style.patterns || !isCover)) {
    const origin = view.toPaper({ x: 0, y: 0 });
    const ready = prepared.get(pattern) ?? preparePattern(pattern);
    prepared.set(pattern, ready);
    const marks = fillWithPattern(ready, print.pattern, rings, boxOf(rings, grown(view.window, overhang)), origin);
    items.push(group(marks, { clip: shape }));
  }
  for (const { width, color, dash } of linesOf(subject, style))
    items.push(path(shape, { stroke: { width, color, dash } }));
  return items;
}

/** A filled kind printed without its fill still needs an edge. */
function linesOf({ print }: Subject, style: Style): Subject['print']['lines'] {
  return print.fill && !style.patterns ? [...print.lines, { width: 0.6, color: '#000000' }] : print.lines;
}

function drawLine(thing: Thing, layers: Layers, view: View): Item[] {
  const subject = subjectOf(thing.kind, layers);
  if (!subject) return [];
  const runs = [...thing.lines, ...thing.areas.flat()];
  const pieces = runs.flatMap((run) => clipLine(run.map(view.toPaper), grown(view.window, overhang)));
  return pieces.length === 0 ? [] : paintLine(pieces, subject);
}

/** Lines on paper in a subject's print style: casing first, then ink, then what stands along it. */
export function paintLine(pieces: readonly (readonly Spot[])[], { print, along }: Subject): Item[] {
  const shape = pieces.flatMap((piece) => linePath(piece));
  const items: Item[] = print.lines.map(({ width, color, dash }) => path(shape, { stroke: { width, color, dash } }));
  if (along && print.along)
    for (const piece of pieces)
      for (const at of stepsAlong(piece, Math.max(0.8, print.along.every)))
        items.push(...drawParts(along.parts, { ...at, scale: print.along.scale }, 0.2));
  return items;
}

function drawPlace(thing: Thing, layers: Layers, view: View): Item[] {
  const subject = subjectOf(thing.kind, layers);
  if (!subject?.icon || !subject.print.icon || !thing.at) return [];
  const [x, y] = view.toPaper(thing.at);
  // A wide crown is drawn with the same pen as a narrow one.
  return drawParts(
    subject.icon.parts,
    { x, y, scale: iconScale(thing, subject, view.scale) },
    0.2,
    subject.print.icon.scale,
  );
}

/** mm per px of a thing's drawing; a crown fills 0.4 of its picture's side. */
export function iconScale(thing: Pick<Thing, 'crown'>, { icon, print }: Subject, scale: number): number {
  const least = print.icon?.scale ?? 0;
  if (!print.icon?.crown || !icon) return least;
  return Math.max(least * 0.6, (thing.crown * 1000) / scale / (icon.size * 0.4));
}

/** Places every `every` mm along a line, from half a step in, with the line's direction in degrees. */
function stepsAlong(line: readonly Spot[], every: number): { x: number; y: number; turn: number }[] {
  const out: { x: number; y: number; turn: number }[] = [];
  let wait = every / 2;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
    while (wait <= length && length > 0) {
      const t = wait / length;
      out.push({ x: a[0] + t * (b[0] - a[0]), y: a[1] + t * (b[1] - a[1]), turn });
      wait += every;
    }
    wait -= length;
  }
  return out;
}

/** A ring without its repeated last point. */
function openRing(ring: readonly Spot[]): readonly Spot[] {
  const [first, last] = [ring[0], ring[ring.length - 1]];
  const closed = ring.length > 1 && first && last && first[0] === last[0] && first[1] === last[1];
  return closed ? ring.slice(0, -1) : ring;
}

function ringsPath(rings: readonly (readonly Spot[])[]): Path {
  return rings.flatMap((ring) => [...linePath(ring), 'Z']);
}

/** A line as drawing commands. */
export function linePath(points: readonly Spot[]): (string | number)[] {
  return points.flatMap(([x, y], i) => [i === 0 ? 'M' : 'L', x, y]);
}

/** The smallest upright box around rings, at most `within`. */
function boxOf(rings: readonly (readonly Spot[])[], within: Box): Box {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings)
    for (const [x, y] of ring) {
      x1 = Math.min(x1, x);
      y1 = Math.min(y1, y);
      x2 = Math.max(x2, x);
      y2 = Math.max(y2, y);
    }
  const x = Math.max(x1, within.x);
  const y = Math.max(y1, within.y);
  return {
    x,
    y,
    width: Math.min(x2, within.x + within.width) - x,
    height: Math.min(y2, within.y + within.height) - y,
  };
}
