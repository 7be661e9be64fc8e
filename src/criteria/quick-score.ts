import type { BirdGuide } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { Candidate } from './card-types.ts';
import { makeContext } from './context.ts';
import type { PostContext } from './criterion.ts';
import { criteria } from './index.ts';
import { type Combined, combine, judge, measureIn, refusals, scoreOn, type Verdict } from './score.ts';
import { passingSpot, type Spot } from './spot.ts';
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

/** Places in `criteria`, the cheap ones first. */
const cheapFirst = [...criteria.keys()].sort(
  (a, b) => Number(criteria[a]!.costly ?? false) - Number(criteria[b]!.costly ?? false) || a - b,
);

/**
 * The same verdict as the card's, with the cheap criteria asked first: one hopeless criterion makes the whole 0, so that nothing more need
 * be measured but what a hard rule asks.
 */
export function quickVerdict(spot: Spot, candidate: Candidate, bird: BirdGuide, suns: Suns): QuickVerdict {
  const context = makeContext(spot, candidate, bird, suns);
  const { floor } = scoreOn(context.site);
  const found: (Verdict | null)[] = criteria.map(() => null);
  for (const k of cheapFirst) {
    const verdict = judge(criteria[k]!, context);
    found[k] = verdict;
    const { weight, score, known = 1 } = verdict;
    if (weight > 0 && known > 0 && score !== null && Math.max(floor, score) <= 0)
      return { score: 0, refused: refusalsOf(found, context) };
  }
  const verdicts = found as Verdict[];
  const { score, judged } = combine(verdicts, floor);
  const refused = refusals(verdicts, context);
  return { score: judged === 0 ? null : refused.length > 0 ? 0 : score, refused };
}

/** What the hard rules say; criteria not yet asked are measured for it, and not scored. */
function refusalsOf(found: readonly (Verdict | null)[], context: PostContext): string[] {
  const ruled = found.flatMap((verdict, k) => {
    const criterion = criteria[k]!;
    return criterion.hard ? [{ criterion, measured: verdict?.measured ?? measureIn(criterion, context) }] : [];
  });
  return refusals(ruled, context);
}

/** The score of a post for a bird, 0–100, and nothing else: the same number as the card's, for thousands of posts. */
export function quickScore(ground: Ground, candidate: Candidate, bird: BirdGuide, suns: Suns): number {
  return quickVerdict(passingSpot(ground, candidate.at), candidate, bird, suns).score ?? 0;
}
