/** Pushes discs apart on paper so that no two touch; the true places stay known. */
import type { Spot } from './clip.ts';
import type { Box } from './display.ts';

/** Rounds of pushing; enough for dozens of boxes heaped on one spot. */
const rounds = 400;

/**
 * Places for discs of the given `radii` (mm, gap included) that do not touch, each near where it belongs, inside `room` where given.
 * Discs already apart do not move. Deterministic; heaps on one very spot fan out by their order.
 */
export function spread(spots: readonly Spot[], radii: readonly number[], room?: Box): Spot[] {
  const at = spots.map(([x, y]): [number, number] => [x, y]);
  const widest = 2 * Math.max(0, ...radii);
  for (let round = 0; round < rounds; round++) {
    const moved = pushOnce(at, radii, widest);
    if (room) for (const p of at) keepIn(p, room);
    if (!moved) break;
  }
  return at;
}

/** One pass over all close pairs; false when none was too close. Sorted by x, so far pairs are never looked at. */
function pushOnce(at: [number, number][], radii: readonly number[], widest: number): boolean {
  const order = at.map((_, i) => i).sort((a, b) => at[a]![0] - at[b]![0] || a - b);
  let moved = false;
  for (let m = 0; m < order.length; m++)
    for (let n = m + 1; n < order.length; n++) {
      const a = at[order[m]!]!;
      const b = at[order[n]!]!;
      if (b[0] - a[0] > 2 * widest) break;
      const apart = radii[order[m]!]! + radii[order[n]!]!;
      const far = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (far >= apart - 1e-6) continue;
      const [ux, uy] = far > 1e-6 ? [(b[0] - a[0]) / far, (b[1] - a[1]) / far] : fan(order[m]! + order[n]!);
      const push = (apart - far) / 2 + 1e-4;
      a[0] -= ux * push;
      a[1] -= uy * push;
      b[0] += ux * push;
      b[1] += uy * push;
      moved = true;
    }
  return moved;
}

/** A direction for two discs on one spot (the golden angle, so that many of them fan out). */
function fan(i: number): [number, number] {
  const turn = i * 2.399963;
  return [Math.cos(turn), Math.sin(turn)];
}

function keepIn(p: [number, number], room: Box): void {
  p[0] = Math.min(Math.max(p[0], room.x), room.x + Math.max(0, room.width));
  p[1] = Math.min(Math.max(p[1], room.y), room.y + Math.max(0, room.height));
}
