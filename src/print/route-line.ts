/** The round on a map: legs with arrowheads and lengths, and tabs where a leg leaves the sheet. */
import type { Leg, Round } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { clipLine, type Spot } from './clip.ts';
import { group, type Item, path, rectangle, text } from './display.ts';
import { centered, labelBox, type Taken } from './labels.ts';
import { linePath } from './land.ts';
import { widthOf } from './measure.ts';
import { along } from './names.ts';
import { sideBySide } from './side-by-side.ts';
import { point, type Style } from './style.ts';
import { walkWords } from './units.ts';
import type { View } from './view.ts';
import { walkerInk, walkerLine } from './walker-line.ts';

/** How far from its stops a leg is hidden under discs, mm, and what is drawn on it. */
export interface LegLook {
  readonly radius: number;
  readonly lengths: boolean;
}

/** Lines and arrowheads of every leg the window shows, taking their room. */
export function drawLegs(rounds: readonly Round[], view: View, look: LegLook, taken: Taken): Item[] {
  const halos: Item[] = [];
  const lines: Item[] = [];
  const walked = rounds.map(({ walker, legs }) => ({ walker, pieces: legs.flatMap((leg) => piecesOf(leg, view)) }));
  for (const { walker, pieces } of sideBySide(walked))
    for (const piece of pieces) {
      halos.push(path(linePath(piece), { stroke: { width: 1.9, color: '#ffffff' } }));
      lines.push(...walkerLine(piece, walker), ...arrowhead(piece, look.radius, walkerInk(walker)));
      for (let i = 1; i < piece.length; i++) taken.addLine(...piece[i - 1]!, ...piece[i]!);
    }
  return [group([...halos, ...lines], { clip: rectangle(view.window) })];
}

/** Lengths beside the legs, where there is room; a length that finds none is left out (the check sheet has it). */
export function drawLengths(
  rounds: readonly Round[],
  view: View,
  look: LegLook,
  units: Units,
  style: Style,
  taken: Taken,
): Item[] {
  return rounds
    .flatMap((round) => round.legs)
    .flatMap((leg) => {
      const [longest] = piecesOf(leg, view).sort((a, b) => lengthOf(b) - lengthOf(a));
      return longest ? lengthLabel(longest, walkWords(leg.metres, units), look.radius, style, taken) : [];
    });
}

function lengthLabel(piece: readonly Spot[], words: string, radius: number, style: Style, taken: Taken): Item[] {
  const length = lengthOf(piece);
  if (length - 2 * radius < style.leg * point * 1.5) return [];
  const half = labelBox(0, 0, words, style.leg, 'sansBold');
  for (const share of [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8])
    for (const side of [1, -1]) {
      const [x, y] = along(piece, share);
      const [nx, ny] = normalAt(piece, share);
      const away = (Math.abs(nx) * half.width) / 2 + (Math.abs(ny) * half.height) / 2 + 0.9;
      const box = labelBox(x + side * nx * away, y + side * ny * away, words, style.leg, 'sansBold');
      if (!taken.free(box)) continue;
      taken.add(box);
      const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
      return [centered(...middle, words, style.leg, { face: 'sansBold', halo: 0.8 })];
    }
  return [];
}

/** The leg inside the window, in order of walking. */
export function piecesOf(leg: Leg, view: View): Spot[][] {
  return clipLine(leg.line.map(view.toPaper), view.window);
}

function arrowhead(piece: readonly Spot[], radius: number, color: string): Item[] {
  const length = lengthOf(piece);
  if (length - 2 * radius < 4) return [];
  const share = 0.5 + 1.6 / length;
  const [x, y] = along(piece, share);
  const [nx, ny] = normalAt(piece, share);
  // The normal is the direction of walking turned a quarter to the right.
  const [dx, dy] = [ny, -nx];
  const tip = [x + dx * 1.7, y + dy * 1.7];
  const back = (side: number) => [x - dx * 1.5 + side * nx * 1.15, y - dy * 1.5 + side * ny * 1.15];
  const shape = ['M', ...tip, 'L', ...back(1), 'L', ...back(-1), 'Z'];
  return [path(shape, { fill: color, stroke: { width: 0.2, color } })];
}

function normalAt(piece: readonly Spot[], share: number): Spot {
  const a = along(piece, Math.max(0, share - 0.02));
  const b = along(piece, Math.min(1, share + 0.02));
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

function lengthOf(piece: readonly Spot[]): number {
  return piece.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - piece[i]![0], p[1] - piece[i]![1]), 0);
}

/** What a tab says, such as ["8", "next, sheet 2"]. */
export type TabWords = readonly [number: string, rest: string];

/** Tabs at the places where legs leave this sheet for another; each takes its room. `wordsFor` is null where a leg stays. */
export function drawTabs(
  rounds: readonly Round[],
  view: View,
  style: Style,
  taken: Taken,
  wordsFor: (stop: Leg['from'] | Leg['to'], other: Leg['from'] | Leg['to'], going: boolean) => TabWords | null,
): Item[] {
  return rounds
    .flatMap((round) => round.legs)
    .flatMap((leg) => {
      const pieces = piecesOf(leg, view);
      const out = wordsFor(leg.to, leg.from, true);
      const into = wordsFor(leg.from, leg.to, false);
      const first = pieces[0];
      const last = pieces[pieces.length - 1];
      return [
        ...(out && first ? tab(first[first.length - 1]!, out, view, style, taken) : []),
        ...(into && last ? tab(last[0]!, into, view, style, taken) : []),
      ];
    });
}

function tab([x, y]: Spot, [number, rest]: TabWords, view: View, style: Style, taken: Taken): Item[] {
  const numberWidth = number === '' ? 0 : widthOf(number, style.leg + 1, 'serifBold') + 1.2;
  const width = numberWidth + widthOf(rest, style.small, 'sans') + 2.6;
  const height = style.small * point * 1.35 + 1;
  const { window: w } = view;
  for (const [dx, dy] of tabShifts(width, height)) {
    const left = Math.min(Math.max(x + dx - width / 2, w.x + 0.6), w.x + w.width - width - 0.6);
    const top = Math.min(Math.max(y + dy - height / 2, w.y + 0.6), w.y + w.height - height - 0.6);
    const box = { x: left, y: top, width, height };
    if (!taken.free(box)) continue;
    taken.add(box);
    const base = top + height / 2 + style.small * point * 0.34;
    return [
      path(rectangle(box), { fill: '#ffffff', stroke: { width: 0.3, color: '#000000' } }),
      ...(number === '' ? [] : [text(left + 1.3, base + 0.1, number, style.leg + 1, { face: 'serifBold' })]),
      text(left + 1.3 + numberWidth, base, rest, style.small),
    ];
  }
  return [];
}

/** Where a tab is tried around the place a leg ends: on it, then beside it, farther and farther. */
function tabShifts(width: number, height: number): Spot[] {
  const near: Spot[] = [[0, 0]];
  for (const far of [1, 1.6, 2.4, 3.4])
    for (const turn of [0, 90, 180, 270, 45, 135, 225, 315]) {
      const a = (turn * Math.PI) / 180;
      near.push([Math.cos(a) * far * (width / 2 + 1), Math.sin(a) * far * (height + 0.8)]);
    }
  return near;
}
