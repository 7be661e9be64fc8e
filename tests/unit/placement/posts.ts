/** Made-up scored posts for the tests of choosing. */
import loadHighs from 'highs';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { BirdScore, ChooseInput, ScoredPost } from '../../../src/placement/choose.ts';
import { solverLoader } from '../../../src/placement/solver.ts';
import type { Candidate } from '../../../src/plan-types.ts';

export const loadSolver = solverLoader(() => loadHighs());

export function candidate(id: string, x: number, y: number, over: Partial<Candidate> = {}): Candidate {
  const empty = { bird: null, facing: null, holeHeight: null, number: null, pair: null, name: null };
  return { id, at: { x, y }, state: 'candidate', ...empty, ...over };
}

export function scored(
  id: string,
  x: number,
  y: number,
  scores: Record<string, number | BirdScore>,
  over: Partial<Candidate> = {},
  rest: Partial<ScoredPost> = {},
): ScoredPost {
  const full = Object.entries(scores).map(([bird, s]) => [bird, typeof s === 'number' ? { score: s, refused: [] } : s]);
  return { candidate: candidate(id, x, y, over), forbidden: null, scores: Object.fromEntries(full), ...rest };
}

/** `count` posts in a square of `side` metres, scored for bluebird and chickadee, a few refused, retired, forbidden or fixed. */
export function randomPosts(count: number, side: number, seed: number): ScoredPost[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, k) => {
    const draw = random();
    const refused = draw > 0.9 ? ['15 m from woods'] : [];
    const state = draw < 0.04 ? 'fixed' : draw < 0.08 ? 'retired' : 'candidate';
    return scored(
      `p${k}`,
      side * random(),
      side * random(),
      { bluebird: { score: 100 * random(), refused }, chickadee: 100 * random() },
      { state, bird: state === 'fixed' ? 'bluebird' : null },
      { forbidden: draw > 0.08 && draw < 0.12 ? 'in water' : null },
    );
  });
}

/** 91.44 m among bluebirds, 40 m among chickadees, 20 m between them. */
export function spacing(a: string, b: string): number {
  if (a !== b) return 20;
  return a === 'bluebird' ? 91.44 : 40;
}

export function input(posts: ScoredPost[], over: Partial<ChooseInput> = {}): ChooseInput {
  return {
    posts,
    wanted: [{ bird: 'bluebird', sites: 8 }],
    spacing,
    minimumScore: 30,
    seed: 1,
    proof: 'none',
    ...over,
  };
}
