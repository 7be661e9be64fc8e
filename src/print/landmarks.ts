/** From which two fixed things a post is taped: the pair whose lines cross best. */
import { bearing, distance, type Point } from '../geometry/point.ts';
import type { Thing } from './land-things.ts';
import { windOf } from './units.ts';

/** A fixed thing a tape can start from. */
export interface Mark {
  readonly at: Point;
  readonly words: string;
}

/** Two tape lengths to a post. `crossing` is the angle between the two lines at the post, 0–90 degrees. */
export interface Tapes {
  readonly marks: readonly [Mark, Mark];
  readonly metres: readonly [number, number];
  readonly crossing: number;
}

/** A long tape (ours; 200 ft and 50 m are sold, two pulls reach this). */
const tapeReach = 100;

/** Crossing flatter than this many degrees fixes nothing (ours; surveyors avoid under 30). */
const flattest = 25;

/** Marks looked at, nearest first. */
const mostMarks = 24;

/** Landmarks, trailheads, named trees and corners of buildings. */
export function marksOf(things: readonly Thing[]): Mark[] {
  return things.flatMap((thing): Mark[] => {
    const { kind, name, at } = thing;
    if (at && kind === 'landmark') return [{ at, words: name || 'landmark' }];
    if (at && (kind === 'trailhead' || (kind === 'tree' && name !== ''))) return [{ at, words: name || 'trailhead' }];
    return kind === 'building' ? corners(thing) : [];
  });
}

/** Corners of a building's outer walls, named by the side they lie on. Round outlines have no corners to tape from. */
function corners({ areas, name }: Thing): Mark[] {
  return areas.flatMap(([outer]) => {
    const ring = (outer ?? []).slice(0, -1);
    if (ring.length < 3 || ring.length > 12) return [];
    const middle = {
      x: ring.reduce((sum, p) => sum + p.x, 0) / ring.length,
      y: ring.reduce((sum, p) => sum + p.y, 0) / ring.length,
    };
    return ring.map((at) => ({ at, words: `${windOf(bearing(middle, at))} corner of ${name || 'the building'}` }));
  });
}

/** The best pair for a post, or null when no two marks in reach of a tape cross well enough. */
export function tapesTo(post: Point, marks: readonly Mark[]): Tapes | null {
  const near = marks
    .map((mark) => ({ mark, metres: distance(mark.at, post), from: bearing(post, mark.at) }))
    .filter(({ metres }) => metres <= tapeReach && metres > 0.5)
    .sort((a, b) => a.metres - b.metres)
    .slice(0, mostMarks);
  let best: { tapes: Tapes; value: number } | null = null;
  for (let i = 0; i < near.length; i++)
    for (let j = i + 1; j < near.length; j++) {
      const [a, b] = [near[i]!, near[j]!];
      const turn = Math.abs(a.from - b.from) % 180;
      const crossing = turn > 90 ? 180 - turn : turn;
      // A right angle is best; a long tape sags: 100 m costs as much as crossing at 30° (ours).
      const value = Math.sin((crossing * Math.PI) / 180) - (a.metres + b.metres) / (4 * tapeReach);
      if (crossing < flattest || (best && value <= best.value)) continue;
      best = { tapes: { marks: [a.mark, b.mark], metres: [a.metres, b.metres], crossing }, value };
    }
  return best?.tapes ?? null;
}

/** The two marks in words; two of one name are told apart by the way they lie from the post. */
export function markWords(post: Point, { marks: [a, b] }: Tapes): readonly [string, string] {
  if (a.words !== b.words) return [a.words, b.words];
  const told = (mark: Mark) => `${mark.words} (${windOf(bearing(post, mark.at))})`;
  return [told(a), told(b)];
}
