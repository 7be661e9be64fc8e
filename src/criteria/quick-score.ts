import type { BirdGuide } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { Candidate } from './card-types.ts';
import { makeContext } from './context.ts';
import type { PostContext } from './criterion.ts';
import { criteria } from './index.ts';
import { type Combined, combine, judge, refusals, scoreOn, type Verdict } from './score.ts';
import { makeSpot, type Spot } from './spot.ts';
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

/** What a choice needs to know of a post for a bird: the card's score 0–100, null where nothing could be judged, and the hard rules that refuse it. */
export interface QuickVerdict {
  readonly score: number | null;
  readonly refused: readonly string[];
}

const cheapFirst = [...criteria].sort((a, b) => Number(a.costly ?? false) - Number(b.costly ?? false));

/**
 * The same verdict as the card's, with the cheap criteria asked first: one hopeless criterion makes the whole 0, so that nothing more need
 * be measured but what a hard rule asks.
 */
export function quickVerdict(spot: Spot, candidate: Candidate, bird: BirdGuide, suns: Suns): QuickVerdict {
  const context = makeContext(spot, candidate, bird, suns);
  const { floor } = scoreOn(context.site);
  const found = new Map<string, Verdict>();
  for (const criterion of cheapFirst) {
    const verdict = judge(criterion, context);
    found.set(criterion.id, verdict);
    const { weight, score, known = 1 } = verdict;
    if (weight > 0 && known > 0 && score !== null && Math.max(floor, score) <= 0)
      return { score: 0, refused: refusalsOf(found, context) };
  }
  const verdicts = criteria.map(({ id }) => found.get(id)!);
  const { score, judged } = scoreOf(verdicts, context);
  return { score: judged > 0 ? score : null, refused: refusals(verdicts, context) };
}

/** What the hard rules say; criteria not yet asked are measured for it. */
function refusalsOf(found: ReadonlyMap<string, Verdict>, context: PostContext): string[] {
  const ruled = criteria.filter(({ hard }) => hard);
  return refusals(
    ruled.map((criterion) => found.get(criterion.id) ?? judge(criterion, context)),
    context,
  );
}

/** The score of a post for a bird, 0–100, and nothing else: the same number as the card's, for thousands of posts. */
export function quickScore(ground: Ground, candidate: Candidate, bird: BirdGuide, suns: Suns): number {
  return quickVerdict(makeSpot(ground, candidate.at), candidate, bird, suns).score ?? 0;
}
