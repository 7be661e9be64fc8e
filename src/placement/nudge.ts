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

type Score = (p: Point) => number | null;

/** The best place within `reach` metres; null when no place there may hold a box. `score` gives 0–100, or null where no box may stand. */
export function nudge(post: Point, reach: number, score: Score): Nudge | null {
  const steps = nudgeSteps(post, reach, score);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, yielding before each place that is scored, so that whoever runs it can listen in between. */
export function* nudgeSteps(post: Point, reach: number, score: Score): Generator<void, Nudge | null, void> {
  const step = Math.max(finest, reach / rings);
  const found: Scored[] = [];
  for (const at of [post, ...ringPlaces(post, reach, step)]) {
    yield;
    const there = score(at);
    if (there !== null) found.push({ at, score: there });
  }
  if (found.length === 0) return null;
  found.sort((a, b) => b.score - a.score || distance(post, a.at) - distance(post, b.at));
  const starts: Scored[] = [];
  for (const from of found.slice(0, refined)) starts.push(yield* climb(from, post, reach, step / 2, score));
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

interface Scored {
  readonly at: Point;
  readonly score: number;
}

function ringPlaces(post: Point, reach: number, step: number): Point[] {
  const places: Point[] = [];
  for (let ring = 1; ring * step <= reach + 1e-9; ring++) {
    for (let k = 0; k < 6 * ring; k++) places.push(destination(post, (60 * k) / ring, ring * step));
  }
  return places;
}

/** Eight directions, half the step when none gains. */
function* climb(
  from: Scored,
  post: Point,
  reach: number,
  firstStep: number,
  score: Score,
): Generator<void, Scored, void> {
  let best = from;
  for (let step = firstStep; step >= finest; ) {
    let gained = false;
    for (let k = 0; k < 8; k++) {
      const at = destination(best.at, k * 45, step);
      if (distance(post, at) > reach) continue;
      yield;
      const there = score(at);
      if (there === null || there <= best.score + 1e-9) continue;
      best = { at, score: there };
      gained = true;
    }
    if (!gained) step /= 2;
  }
  return best;
}
