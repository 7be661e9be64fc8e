/** Boxes that would lie on each other are pushed apart for reading; a dot stays where the box stands. Nothing but the picture moves. */
import type { Plan, PlannedBox } from '../../plan-types.ts';
import { boxSizes, sizeAt } from './box-look.ts';
import { pixelsPerMetre22 } from './ground-scale.ts';

/** Zooms at which the push is worked out; between them the map goes straight. */
export const pushZooms = [12, 13, 14, 14.5, 15, 15.5, 16, 16.5, 17, 17.5, 18, 19, 20, 21, 22] as const;

/** px right and down for a picture of full size (the map shrinks push and picture alike), one for each of `pushZooms`. */
export type Push = readonly (readonly [number, number])[];

/** Least distance of two discs and of the two of a pair (their bar shows between), and the most a disc is moved, px. */
const near = 37;
const most = 64;
const rounds = 60;

/** Where the boxes of a plan are drawn, worked out once a plan, and once for all plans whose boxes stand in the same places. */
const worked = new WeakMap<Plan, ReadonlyMap<number, Push>>();
let last: Plan | null = null;

export function pushesOf(plan: Plan): ReadonlyMap<number, Push> {
  const found = worked.get(plan) ?? (last && samePlaces(last, plan) ? worked.get(last) : null) ?? pushes(plan);
  worked.set(plan, found);
  last = plan;
  return found;
}

function samePlaces(a: Plan, b: Plan): boolean {
  const same = (one: PlannedBox, other?: PlannedBox) =>
    one.number === other?.number &&
    one.at.x === other.at.x &&
    one.at.y === other.at.y &&
    one.pairedWith === other.pairedWith;
  return a.boxes.length === b.boxes.length && a.boxes.every((box, i) => same(box, b.boxes[i]));
}

/** Where each box is drawn, by number. */
export function pushes(plan: Plan): ReadonlyMap<number, Push> {
  const out = new Map<number, [number, number][]>(plan.boxes.map((box) => [box.number, []]));
  for (const zoom of pushZooms) for (const [number, push] of pushedAt(plan.boxes, zoom)) out.get(number)?.push(push);
  return out;
}

interface Disc {
  readonly box: PlannedBox;
  readonly homeX: number;
  readonly homeY: number;
  x: number;
  y: number;
}

/** Each overlapping couple steps back from each other, again and again; the same boxes always end the same way. */
function pushedAt(boxes: readonly PlannedBox[], zoom: number): [number, [number, number]][] {
  const perMetre = (pixelsPerMetre22(boxes[0]?.position[1] ?? 0) * 2 ** (zoom - 22)) / sizeAt(zoom);
  const discs = boxes.map((box): Disc => {
    const [x, y] = [box.at.x * perMetre, -box.at.y * perMetre];
    return { box, homeX: x, homeY: y, x, y };
  });
  const couples = couplesOf(discs);
  for (let i = 0; i < rounds; i++) {
    let moved = false;
    for (const [a, b] of couples) moved = stepBack(a, b) || moved;
    if (!moved) break;
  }
  return discs.map((d) => [d.box.number, held(d.x - d.homeX, d.y - d.homeY)]);
}

/** Couples that may come to touch. */
function couplesOf(discs: readonly Disc[]): [Disc, Disc][] {
  const reach = near + most;
  return discs.flatMap((a, i) =>
    discs
      .slice(i + 1)
      .flatMap((b): [Disc, Disc][] => (Math.abs(a.x - b.x) < reach && Math.abs(a.y - b.y) < reach ? [[a, b]] : [])),
  );
}

function stepBack(a: Disc, b: Disc): boolean {
  const wanted = a.box.pairedWith === b.box.number ? boxSizes.apart : near;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  // Asked half a million times a plan: the root is taken only where they overlap.
  const square = dx * dx + dy * dy;
  if (square >= (wanted - 0.1) ** 2) return false;
  const apart = Math.sqrt(square);
  const [ux, uy] = apart > 0.01 ? [dx / apart, dy / apart] : [1, 0];
  const step = (wanted - apart) / 2;
  a.x -= ux * step;
  a.y -= uy * step;
  b.x += ux * step;
  b.y += uy * step;
  return true;
}

function held(x: number, y: number): [number, number] {
  const far = Math.hypot(x, y);
  const share = far > most ? most / far : 1;
  return [round(x * share), round(y * share)];
}

function round(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}

/** The push at any zoom in px of the screen, as the map works it out. */
export function pushAt(push: Push, zoom: number): [number, number] {
  const size = sizeAt(zoom);
  const [x, y] = fullPush(push, zoom);
  return [x * size, y * size];
}

function fullPush(push: Push, zoom: number): [number, number] {
  const last = pushZooms.length - 1;
  const i = pushZooms.findIndex((z) => z >= zoom);
  if (i === 0 || push.length === 0) return [...(push[0] ?? [0, 0])];
  if (i < 0) return [...(push[last] ?? [0, 0])];
  const [from, to] = [pushZooms[i - 1] ?? 0, pushZooms[i] ?? 1];
  const t = (zoom - from) / (to - from);
  const [a, b] = [push[i - 1] ?? [0, 0], push[i] ?? [0, 0]];
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** The `icon-offset` expression that reads what `pushProperties` wrote. */
export const pushExpression = [
  'interpolate',
  ['linear'],
  ['zoom'],
  ...pushZooms.flatMap((zoom, i) => [zoom, ['get', `push${i}`]]),
] as const;

/** Properties of a map feature for the expression. */
export function pushProperties(push: Push): Record<string, readonly [number, number]> {
  return Object.fromEntries(pushZooms.map((_, i) => [`push${i}`, push[i] ?? [0, 0]]));
}

/** The push of something between two boxes. */
export function between(a: Push, b: Push): Push {
  return pushZooms.map((_, i) => {
    const [ax, ay] = a[i] ?? [0, 0];
    const [bx, by] = b[i] ?? [0, 0];
    return [(ax + bx) / 2, (ay + by) / 2];
  });
}

/** The push seen from a picture that is itself turned clockwise by `degrees`: the map turns offsets with the picture. */
export function turned(push: Push, degrees: number): Push {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  return push.map(([x, y]) => [x * cos + y * sin, -x * sin + y * cos]);
}
