/** Where an area's name may stand: inside it, and not on finer land that is drawn over it. */
import { coverKinds, type Kind } from '../site/types.ts';
import { clipRing, type Spot } from './clip.ts';
import type { Thing } from './land-things.ts';
import type { View } from './view.ts';

type Rings = readonly (readonly Spot[])[];

/** A piece of land on paper, cut to the window. A lower `rank` is drawn over a higher one. */
export interface Cover {
  readonly thing: Thing;
  readonly rank: number;
  readonly rings: Rings;
  readonly box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
}

/** Every area that the window shows; rules (off-limits, boundary) cover nothing. */
export function coversOf(things: readonly Thing[], view: View): Cover[] {
  return things.flatMap((thing) =>
    thing.areas.flatMap((rings) => {
      const cut = rings.map((ring) => clipRing(ring.map(view.toPaper), view.window)).filter((ring) => ring.length > 2);
      const outer = cut[0];
      if (!outer) return [];
      const [xs, ys] = [outer.map((p) => p[0]), outer.map((p) => p[1])];
      const box = { left: least(xs), right: most(xs), top: least(ys), bottom: most(ys) };
      return [{ thing, rank: rankOf(thing.kind), rings: cut, box }];
    }),
  );
}

function rankOf(kind: Kind): number {
  const i = (coverKinds as readonly string[]).indexOf(kind);
  return i < 0 ? coverKinds.length : i;
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b));
}

function most(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b));
}

/** Lines of the net laid over an area to find places. */
const net = 12;

/** Places inside an area, nearest to its middle first; those where the whole name fits come before those where only its middle does. */
export function areaSpots(thing: Thing, covers: readonly Cover[], width: number): { spot: Spot; good(): boolean }[] {
  const own = covers.filter((cover) => cover.thing.id === thing.id);
  return own.flatMap((cover) => {
    const over = covers.filter((one) => one.rank < cover.rank && meets(one, cover));
    const clear = (spot: Spot) => !over.some((one) => isIn(spot, one));
    const ends = ([x, y]: Spot): Spot[] => [
      [x - width / 2, y],
      [x + width / 2, y],
    ];
    const spots = netOver(cover);
    const whole = spots.map((spot) => ({
      spot,
      good: () => [spot, ...ends(spot)].every((one) => clear(one) && isIn(one, cover)),
    }));
    // A name may stick out of a small area, but not into a finer one; a building's would hide the wall.
    const loose =
      thing.kind === 'building'
        ? []
        : spots.map((spot) => ({ spot, good: () => isIn(spot, cover) && [spot, ...ends(spot)].every(clear) }));
    return [...whole, ...loose];
  });
}

function meets(a: Cover, b: Cover): boolean {
  return a.box.left < b.box.right && a.box.right > b.box.left && a.box.top < b.box.bottom && a.box.bottom > b.box.top;
}

function netOver({ box: { left, right, top, bottom } }: Cover): Spot[] {
  const spots: Spot[] = [];
  for (let i = 1; i < net; i++)
    for (let j = 1; j < net; j++) spots.push([left + ((right - left) * i) / net, top + ((bottom - top) * j) / net]);
  const far = ([x, y]: Spot) => Math.hypot(x - (left + right) / 2, y - (top + bottom) / 2);
  return spots.sort((a, b) => far(a) - far(b));
}

/** Even-odd: in an outer ring and in no hole. */
function isIn([x, y]: Spot, { rings, box }: Cover): boolean {
  if (x < box.left || x > box.right || y < box.top || y > box.bottom) return false;
  let odd = false;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[(i + 1) % ring.length]!;
      if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) odd = !odd;
    }
  return odd;
}
