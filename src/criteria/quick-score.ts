import type { BirdGuide } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { Candidate } from './card-types.ts';
import { makeContext } from './context.ts';
import type { PostContext } from './criterion.ts';
import { criteria } from './index.ts';
import { type Combined, combine, judge, refusals, scoreOn, type Verdict } from './score.ts';
import { makeSpot } from './spot.ts';
import type { Suns } from './suns.ts';

/** All criteria's verdicts in a context, in display order. */
export function verdictsIn(context: PostContext): Verdict[] {
  return criteria.map((criterion) => judge(criterion, context));
}

/** One number from the verdicts: 0 where a hard rule refuses the post for this bird. */
export function scoreOf(verdicts: readonly Verdict[], context: PostContext): Combined {
  const { score, judged } = combine(verdicts, scoreOn(context.site).floor);
  return { score: refusals(verdicts, context).length ? 0 : score, judged };
}

/** The score of a post for a bird, 0–100, and nothing else: the same number as the card's, for thousands of posts. */
export function quickScore(ground: Ground, candidate: Candidate, bird: BirdGuide, suns: Suns): number {
  const context = makeContext(makeSpot(ground, candidate.at), candidate, bird, suns);
  return scoreOf(verdictsIn(context), context).score;
}
