/** Rounds that share a way are drawn beside each other there, so that none hides another; elsewhere they stay in their place. */
import type { Spot } from './clip.ts';

/** The walked lines of one walker on the paper, mm. */
export interface WalkedLines {
  readonly walker: number;
  readonly pieces: readonly (readonly Spot[])[];
}

/** From middle to middle of two lines side by side, mm. */
const step = 1.1;

/** Lines closer than this are on one way, mm. */
const shared = 1;

/** A line is looked at every `grain` mm and steps aside over `ramp` such pieces on both sides. */
const grain = 1;
const ramp = 4;

/** Which way is "aside" must not hang on the way of walking; it turns over where a line runs at this angle, which few paths do. */
const turnsOver = (50 * Math.PI) / 180;

/** The same lines, moved aside by at most half their number of steps where they share a way. */
export function sideBySide(rounds: readonly WalkedLines[]): WalkedLines[] {
  if (rounds.length < 2) return [...rounds];
  return rounds.map((round) => ({ ...round, pieces: round.pieces.map((piece) => aside(piece, round.walker, rounds)) }));
}

function aside(piece: readonly Spot[], walker: number, rounds: readonly WalkedLines[]): readonly Spot[] {
  const spots = cutFine(piece);
  const shifts = spots.map((spot, i): Spot => {
    const [nx, ny] = normalAt(spots, i);
    const far = shiftAt(spot, walker, rounds);
    return [nx * far, ny * far];
  });
  if (shifts.every(([x, y]) => x === 0 && y === 0)) return piece;
  return spots.map(([x, y], i) => {
    const near = shifts.slice(Math.max(0, i - ramp), i + ramp + 1);
    const mean = (axis: 0 | 1) => near.reduce((sum, shift) => sum + shift[axis], 0) / near.length;
    return [x + mean(0), y + mean(1)];
  });
}

/** How far to go aside: a place of one's own among the walkers who come by here. */
function shiftAt(spot: Spot, walker: number, rounds: readonly WalkedLines[]): number {
  const here = rounds
    .filter((one) => one.walker === walker || one.pieces.some((piece) => gapTo(spot, piece) < shared))
    .map((one) => one.walker);
  return (here.indexOf(walker) - (here.length - 1) / 2) * step;
}

function cutFine(piece: readonly Spot[]): Spot[] {
  const out: Spot[] = piece.slice(0, 1);
  for (let i = 1; i < piece.length; i++) {
    const [a, b] = [piece[i - 1]!, piece[i]!];
    const parts = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / grain));
    for (let j = 1; j <= parts; j++) out.push([a[0] + ((b[0] - a[0]) * j) / parts, a[1] + ((b[1] - a[1]) * j) / parts]);
  }
  return out;
}

/** Length 1, square to the line, on the same side for both ways of walking it. */
function normalAt(spots: readonly Spot[], i: number): Spot {
  const a = spots[Math.max(0, i - 1)]!;
  const b = spots[Math.min(spots.length - 1, i + 1)]!;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [nx, ny] = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
  const side = nx * Math.cos(turnsOver) + ny * Math.sin(turnsOver) < 0 ? -1 : 1;
  return [nx * side, ny * side];
}

function gapTo([x, y]: Spot, piece: readonly Spot[]): number {
  let least = Infinity;
  for (let i = 1; i < piece.length; i++) {
    const [a, b] = [piece[i - 1]!, piece[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const along = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1);
    const t = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y));
  }
  return least;
}
