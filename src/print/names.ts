/** Names on the land: italic over a white halo, only where there is room. */
import type { Subject } from '../../layers/types.ts';
import { coverKinds } from '../site/types.ts';
import { clipLine, type Spot } from './clip.ts';
import type { Item } from './display.ts';
import type { Face } from './font-widths.ts';
import { centered, labelBox, type Taken } from './labels.ts';
import { type Layers, subjectOf, touches } from './land.ts';
import type { Thing } from './land-things.ts';
import { shorten, widthOf } from './measure.ts';
import { areaSpots, type Cover, coversOf } from './name-spots.ts';
import type { Style } from './style.ts';
import type { View } from './view.ts';
import { keyWord } from './words.ts';

/** Names are shortened to this many mm. */
const longest = 60;

/** An area smaller than this on paper goes without a name where only large land is named, mm² of its box (ours). */
const largeLand = 300;

/**
 * Names of things, biggest first; what finds no room is left out. Each name stands once, however many pieces its land has.
 * `large`: only starts and large land, and only where a name crosses nothing.
 */
export function drawNames(
  things: readonly Thing[],
  layers: Layers,
  view: View,
  style: Style,
  taken: Taken,
  large = false,
): Item[] {
  const seen = things.filter((thing) => touches(thing, view, 0));
  const named = seen
    .filter((thing) => !large || isLarge(thing, view))
    .map((thing) => called(thing, style))
    .filter((thing) => thing.name !== '');
  named.sort((a, b) => rank(b) - rank(a));
  const covers = coversOf(seen, view);
  const done = new Set<string>();
  return named.flatMap((thing) => {
    const print = subjectOf(thing.kind, layers)?.print.name;
    const key = style.patterns ? `${thing.kind} ${thing.name}` : thing.id;
    if (!print || done.has(key)) return [];
    const item = place(thing, covers, print, view, style, taken, large);
    if (!item) return [];
    done.add(key);
    return [item];
  });
}

/** Without patterns the kind of land is told in words, beside its name or instead of one. */
function called(thing: Thing, style: Style): Thing {
  const told = !style.patterns && (coverKinds as readonly string[]).includes(thing.kind) && thing.kind !== 'building';
  if (!told) return thing;
  const word = keyWord(thing.kind);
  return { ...thing, name: thing.name === '' ? word : `${thing.name} (${word})` };
}

function isLarge(thing: Thing, { scale }: View): boolean {
  const mm = 1000 / scale;
  const box = (thing.max.x - thing.min.x) * mm * (thing.max.y - thing.min.y) * mm;
  return thing.kind === 'trailhead' || (thing.areas.length > 0 && box >= largeLand);
}

/** Places first (they are what a tape starts from), then areas by size. */
function rank(thing: Thing): number {
  if (thing.at) return Number.MAX_VALUE;
  return (thing.max.x - thing.min.x) * (thing.max.y - thing.min.y) * (thing.areas.length > 0 ? 1 : 0.2);
}

function place(
  thing: Thing,
  covers: readonly Cover[],
  print: NonNullable<Subject['print']['name']>,
  view: View,
  style: Style,
  taken: Taken,
  clear: boolean,
): Item | null {
  const face: Face = print.face === 'italic' ? 'serifItalic' : 'serif';
  const size = Math.max(print.size, style.small);
  const words = shorten(thing.name, longest, size, face);
  const width = widthOf(words, size, face);
  const boxAt = ([x, y]: Spot) => labelBox(x, y, words, size, face);
  let second: Spot | null = null;
  let first: Spot | null = null;
  for (const { spot, good } of spotsFor(thing, covers, view, width)) {
    const box = boxAt(spot);
    if (!taken.free(box) || !good()) continue;
    second ??= spot;
    if (!taken.clear(box)) continue;
    first = spot;
    break;
  }
  const found = first ?? (clear ? null : second);
  if (!found) return null;
  taken.add(boxAt(found));
  return centered(...found, words, size, { face, halo: Math.max(print.halo, 0.8) });
}

/** A place to try for the middle of a name; `good` is asked only where the place is free, for it costs more. */
interface Try {
  readonly spot: Spot;
  good(): boolean;
}

/** Places to try, best first. */
function spotsFor(thing: Thing, covers: readonly Cover[], view: View, width: number): Try[] {
  if (thing.areas.length > 0) return areaSpots(thing, covers, width);
  return (thing.at ? besideSpots(view.toPaper(thing.at), width) : lineSpots(thing, view)).map((spot) => ({
    spot,
    good: () => true,
  }));
}

function besideSpots([x, y]: Spot, width: number): Spot[] {
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

function lineSpots(thing: Thing, view: View): Spot[] {
  return thing.lines
    .flatMap((run) => clipLine(run.map(view.toPaper), view.window))
    .flatMap((piece) => [0.5, 0.3, 0.7].map((t): Spot => along(piece, t)))
    .flatMap(([x, y]): Spot[] => [
      [x, y - 3.2],
      [x, y + 3.2],
    ]);
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
