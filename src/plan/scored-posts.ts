/** Every candidate scored for every bird it may serve. */
import type { BirdGuide } from '../birds/guide.ts';
import { quickVerdict } from '../criteria/quick-score.ts';
import { makeSpot } from '../criteria/spot.ts';
import type { Suns } from '../criteria/suns.ts';
import type { Ground } from '../ground/types.ts';
import type { BirdScore, ScoredPost } from '../placement/choose.ts';
import type { Candidate } from '../plan-types.ts';

/** `birds` are guides with the site's own figures. A standing box of another bird is scored for that bird too. */
export function scoredPost(ground: Ground, candidate: Candidate, birds: readonly BirdGuide[], suns: Suns): ScoredPost {
  const forbidden = candidate.state === 'candidate' ? (ground.forbidden(candidate.at)?.reason ?? null) : null;
  const idle = forbidden !== null || candidate.state === 'retired';
  return { candidate, forbidden, scores: idle ? {} : scoresAt(ground, candidate, birds, suns) };
}

function scoresAt(
  ground: Ground,
  candidate: Candidate,
  birds: readonly BirdGuide[],
  suns: Suns,
): Record<string, BirdScore> {
  const spot = makeSpot(ground, candidate.at);
  return Object.fromEntries(
    birds
      .filter((bird) => candidate.bird === null || candidate.bird === bird.id)
      .map((bird) => [bird.id, quickVerdict(spot, candidate, bird, suns)]),
  );
}
