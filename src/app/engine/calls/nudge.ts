/** Where a box would stand better a few steps away, without coming too near to its neighbors. */
import { isPair } from '../../../criteria/pairing.ts';
import { quickScore } from '../../../criteria/quick-score.ts';
import { distance, type Point } from '../../../geometry/point.ts';
import { type Nudge, nudgeSteps } from '../../../placement/nudge.ts';
import type { Site } from '../../../site/types.ts';
import { guideOf, postAt, prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';
import { takeABreath } from '../take-a-breath.ts';
import type { PlacedPost } from './score-post.ts';

export interface NudgeQuestion extends PlacedPost {
  readonly site: Site;
  /** Meters looked around. */
  readonly reach: number;
  /** Boxes it must not come too near to, with the meters asked for. */
  readonly others: readonly { readonly at: Point; readonly needed: number }[];
  /** The other box of its pair: the two stay one site. */
  readonly partner: Point | null;
}

/** Places scored between two looks at the letterbox: a hand that takes a box meanwhile waits some 2 ms for its score (ours). */
const stride = 12;

export async function nudge(
  { site, post, bird, x, y, reach, others, partner }: NudgeQuestion,
  { signal }: Pick<CallTools, 'signal'>,
): Promise<Nudge | null> {
  const prepared = prepare(site);
  const { ground, suns } = prepared;
  const here = { x, y };
  const guide = guideOf(bird);
  const free = (at: Point) =>
    ground.forbidden(at) === null &&
    others.every((other) => distance(at, other.at) >= Math.min(other.needed, distance(here, other.at))) &&
    (partner === null || isPair(distance(at, partner), site.settings));
  const steps = nudgeSteps(here, reach, (at) =>
    free(at) ? quickScore(ground, postAt(prepared, post, at), guide, suns) : null,
  );
  for (let asked = 1; ; asked++) {
    const step = steps.next();
    if (step.done) return step.value;
    if (asked % stride === 0) await takeABreath();
    if (signal.aborted) return null;
  }
}
