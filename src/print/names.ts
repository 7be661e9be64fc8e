/** Names on the land: italic over a white halo, only where there is room. */
import type { Subject } from '../../layers/types.ts';
import type { Point } from '../geometry/point.ts';
import { coverKinds } from '../site/types.ts';
import { clipLine, clipRing, type Spot } from './clip.ts';
import type { Item } from './display.ts';
import type { Face } from './font-widths.ts';
import { centered, labelBox, type Taken } from './labels.ts';
import { type Layers, subjectOf } from './land.ts';
import type { Thing } from './land-things.ts';
import { shorten, widthOf } from './measure.ts';
import type { Style } from './style.ts';
import type { View } from './view.ts';

/** Names are shortened to this many mm. */
const longest = 60;

/** Names of things, biggest first; what finds no room is left out. Each name stands once, however many pieces its land has. */
export function drawNames(things: readonly Thing[], layers: Layers, view: View, style: Style, taken: Taken): Item[] {
  const named = things.filter((thing) => thing.name !== '').sort((a, b) => rank(b) - rank(a));
  const done = new Set<string>();
  return named.flatMap((thing) => {
    const print = subjectOf(thing.kind, layers)?.print.name;
    const key = `${thing.kind} ${thing.name}`;
    if (!print || done.has(key)) return [];
    const item = place(thing, things, print, view, style, taken);
    if (!item) return [];
    done.add(key);
    return [item];
  });
}

/** Places first (they are what a tape starts from), then areas by size. */
function rank(thing: Thing): number {
  if (thing.at) return Number.MAX_VALUE;
  return (thing.max.x - thing.min.x) * (thing.max.y - thing.min.y) * (thing.areas.length > 0 ? 1 : 0.2);
}

function place(
  thing: Thing,
  things: readonly Thing[],
  print: NonNullable<Subject['print']['name']>,
  view: View,
  style: Style,
  taken: Taken,
): Item | null {
  const face: Face = print.face === 'italic' ? 'serifItalic' : 'serif';
  const size = Math.max(print.size, style.small);
  const words = shorten(thing.name, longest, size, face);
  const boxAt = ([x, y]: Spot) => labelBox(x, y, words, size, face);
  const free = spotsFor(thing, things, view, widthOf(words, size, face)).filter((spot) => taken.free(boxAt(spot)));
  const spot = free.find((one) => taken.clear(boxAt(one))) ?? free[0];
  if (!spot) return null;
  taken.add(boxAt(spot));
  return centered(...spot, words, size, { face, halo: Math.max(print.halo, 0.8) });
}

/** Places to try for the middle of a name, best first. */
function spotsFor(thing: Thing, things: readonly Thing[], view: View, width: number): Spot[] {
  if (thing.at) {
    const [x, y] = view.toPaper(thing.at);
    const away = width / 2 + 3.2;
    return [
      [x + away, y],
      [x - away, y],
      [x, y + 5],
      [x, y - 5],
      [x + away, y + 4],
      [x - away, y - 4],
    ];
  }
  if (thing.areas.length > 0) {
    const over = finerThan(thing, things);
    const clear = ([x, y]: Spot) => !over.some((rings) => insideGround(view.toGround(x, y), rings));
    const ends = ([x, y]: Spot): Spot[] => [
      [x - width / 2, y],
      [x, y],
      [x + width / 2, y],
    ];
    return thing.areas.flatMap((rings) => {
      const paper = rings.map((ring) => ring.map(view.toPaper));
      const spots = areaSpots(paper, view).filter(clear);
      const whole = spots.filter((spot) => ends(spot).every((end) => clear(end) && insideRings(end, paper)));
      return [...whole, ...(thing.kind === 'building' ? [] : spots.filter((spot) => ends(spot).every(clear)))];
    });
  }
  return thing.lines
    .flatMap((run) => clipLine(run.map(view.toPaper), view.window))
    .flatMap((piece) => [0.5, 0.3, 0.7].map((t): Spot => along(piece, t)))
    .flatMap(([x, y]): Spot[] => [
      [x, y - 3.2],
      [x, y + 3.2],
    ]);
}

/** Places of a net inside the shown part of an area, nearest to its middle first. */
function areaSpots(rings: readonly (readonly Spot[])[], view: View): Spot[] {
  const outer = clipRing(rings[0] ?? [], view.window);
  if (outer.length < 3) return [];
  const xs = outer.map((p) => p[0]);
  const ys = outer.map((p) => p[1]);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const spots: Spot[] = [];
  for (let i = 1; i < 12; i++)
    for (let j = 1; j < 12; j++) spots.push([left + ((right - left) * i) / 12, top + ((bottom - top) * j) / 12]);
  const middle: Spot = [(left + right) / 2, (top + bottom) / 2];
  const far = ([x, y]: Spot) => Math.hypot(x - middle[0], y - middle[1]);
  return spots.filter((spot) => insideRings(spot, [outer, ...rings.slice(1)])).sort((a, b) => far(a) - far(b));
}

/** Rings of the areas that are drawn over this one. */
function finerThan(thing: Thing, things: readonly Thing[]): (readonly (readonly Point[])[])[] {
  const rank = (kind: string) => (coverKinds as readonly string[]).indexOf(kind);
  const own = rank(thing.kind);
  const over = things.filter((one) => rank(one.kind) >= 0 && rank(one.kind) < own);
  const meets = (one: Thing) =>
    one.min.x < thing.max.x && one.max.x > thing.min.x && one.min.y < thing.max.y && one.max.y > thing.min.y;
  return over.filter(meets).flatMap((one) => one.areas);
}

function insideGround({ x, y }: Point, rings: readonly (readonly Point[])[]): boolean {
  return insideRings(
    [x, y],
    rings.map((ring) => ring.map((p): Spot => [p.x, p.y])),
  );
}

function insideRings([x, y]: Spot, rings: readonly (readonly Spot[])[]): boolean {
  let odd = false;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[(i + 1) % ring.length]!;
      if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) odd = !odd;
    }
  return odd;
}

/** The place a share of the way along a line. */
export function along(line: readonly Spot[], share: number): Spot {
  const lengths = line.slice(1).map((p, i) => Math.hypot(p[0] - line[i]![0], p[1] - line[i]![1]));
  let left = lengths.reduce((sum, one) => sum + one, 0) * share;
  for (const [i, length] of lengths.entries()) {
    const [a, b] = [line[i]!, line[i + 1]!];
    if (left <= length && length > 0)
      return [a[0] + ((b[0] - a[0]) * left) / length, a[1] + ((b[1] - a[1]) * left) / length];
    left -= length;
  }
  return line[line.length - 1] ?? [0, 0];
}
