/** Every candidate scored for every bird it may serve. */
import type { BirdGuide } from '../birds/guide.ts';
import { quickVerdict } from '../criteria/quick-score.ts';
import { passingSpot } from '../criteria/spot.ts';
import type { Suns } from '../criteria/suns.ts';
import type { Ground } from '../ground/types.ts';
import type { BirdScore, ScoredPost } from '../placement/choose.ts';
import type { Candidate } from '../plan-types.ts';

/**
 * `birds` are guides with the site's own figures. A standing box of another bird is scored for that bird too. `known` holds scores of the same
 * land and settings and is added to.
 */
export function scoredPost(
  ground: Ground,
  candidate: Candidate,
  birds: readonly BirdGuide[],
  suns: Suns,
  known?: Map<string, ScoredPost['scores']>,
): ScoredPost {
  const forbidden = candidate.state === 'candidate' ? (ground.forbidden(candidate.at)?.reason ?? null) : null;
  const idle = forbidden !== null || candidate.state === 'retired';
  if (idle) return { candidate, forbidden, scores: {} };
  const key = known ? keyOf(candidate, birds) : '';
  const scores = known?.get(key) ?? scoresAt(ground, candidate, birds, suns);
  known?.set(key, scores);
  return { candidate, forbidden, scores };
}

/** Everything of a candidate that its scores depend on. */
function keyOf({ at, bird, facing, holeHeight }: Candidate, birds: readonly BirdGuide[]): string {
  return `${at.x} ${at.y} ${bird} ${facing} ${holeHeight} ${birds.map(({ id }) => id)}`;
}

function scoresAt(
  ground: Ground,
  candidate: Candidate,
  birds: readonly BirdGuide[],
  suns: Suns,
): Record<string, BirdScore> {
  const spot = passingSpot(ground, candidate.at);
  return Object.fromEntries(
    birds
      .filter((bird) => candidate.bird === null || candidate.bird === bird.id)
      .map((bird) => [bird.id, quickVerdict(spot, candidate, bird, suns)]),
  );
}
