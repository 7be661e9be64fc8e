/** The lie of the land: the score over the whole site for one bird, passed on from coarse to fine. */
import { quickScore } from '../../../criteria/quick-score.ts';
import type { Point } from '../../../geometry/point.ts';
import { placeCandidate } from '../../../placement/candidates.ts';
import { type LandScores, lieOfTheLand } from '../../../placement/lie-of-the-land.ts';
import type { Site } from '../../../site/types.ts';
import { guideOf, prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';
import { takeABreath } from '../take-a-breath.ts';

/** Cells of 10 m, at least so many on a small site and at most so many on a large one (ours). */
const cellArea = 100;
const fewest = 2500;
const most = 20_000;

/** Places scored between two looks at the letterbox: some 5 ms (ours). */
const stride = 24;

export async function lie(
  { site, bird }: { site: Site; bird: string },
  tools: Pick<CallTools, 'partial' | 'signal'>,
): Promise<LandScores | null> {
  const { ground, suns } = prepare(site);
  const { bounds } = ground;
  if (!bounds) return null;
  const guide = guideOf(bird);
  const score = (at: Point) =>
    ground.coverAt(at) === null || ground.forbidden(at) !== null
      ? null
      : quickScore(ground, placeCandidate('place', at), guide, suns);
  const area = (bounds.max.x - bounds.min.x) * (bounds.max.y - bounds.min.y);
  const cells = Math.max(fewest, Math.min(most, Math.round(area / cellArea)));
  let last: LandScores | null = null;
  let passed = 0;
  for (const scores of lieOfTheLand(bounds, score, cells, stride)) {
    if (scores.coarse > 0 && scores.coarse !== passed) {
      passed = scores.coarse;
      if (passed > 1) tools.partial(scores);
      last = scores;
    }
    await takeABreath();
    if (tools.signal.aborted) return null;
  }
  return last;
}
