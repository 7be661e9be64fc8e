/** Where a post would stand better, a few steps away. */
import type { Point } from '../geometry/point.ts';
import { bearing, destination, distance } from '../geometry/point.ts';

export interface Nudge {
  readonly at: Point;
  /** From the post; 0 when it stands best where it is. */
  readonly metres: number;
  readonly bearing: number;
  /** Score there, 0–100, and how much more than here. */
  readonly score: number;
  readonly gain: number;
}

/** Rings looked at first, and places refined afterwards. */
const rings = 6;
const refined = 3;
/** Metres: finer than anyone drives a post. */
const finest = 0.25;

/** The best place within `reach` metres; null when no place there may hold a box. `score` gives 0–100, or null where no box may stand. */
export function nudge(post: Point, reach: number, score: (p: Point) => number | null): Nudge | null {
  const step = Math.max(finest, reach / rings);
  const found = [post, ...ringPlaces(post, reach, step)]
    .map((at) => ({ at, score: score(at) }))
    .filter((f): f is { at: Point; score: number } => f.score !== null)
    .sort((a, b) => b.score - a.score || distance(post, a.at) - distance(post, b.at));
  if (found.length === 0) return null;
  const starts = found.slice(0, refined).map((f) => climb(f, post, reach, step / 2, score));
  const best = starts.reduce((a, b) => (b.score > a.score + 1e-9 ? b : a));
  const here = score(post);
  const stays = here !== null && best.score <= here + 1e-9;
  const at = stays ? post : best.at;
  return {
    at,
    metres: distance(post, at),
    bearing: bearing(post, at),
    score: stays ? here : best.score,
    gain: (stays ? here : best.score) - (here ?? 0),
  };
}

function ringPlaces(post: Point, reach: number, step: number): Point[] {
  const places: Point[] = [];
  for (let ring = 1; ring * step <= reach + 1e-9; ring++) {
    for (let k = 0; k < 6 * ring; k++) places.push(destination(post, (60 * k) / ring, ring * step));
  }
  return places;
}

/** Eight directions, half the step when none gains. */
function climb(
  from: { at: Point; score: number },
  post: Point,
  reach: number,
  firstStep: number,
  score: (p: Point) => number | null,
): { at: Point; score: number } {
  let best = from;
  for (let step = firstStep; step >= finest; ) {
    let gained = false;
    for (let k = 0; k < 8; k++) {
      const at = destination(best.at, k * 45, step);
      if (distance(post, at) > reach) continue;
      const there = score(at);
      if (there === null || there <= best.score + 1e-9) continue;
      best = { at, score: there };
      gained = true;
    }
    if (!gained) step /= 2;
  }
  return best;
}
