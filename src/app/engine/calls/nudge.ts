/** Where a box would stand better a few steps away, without coming too near to its neighbors. */
import { isPair } from '../../../criteria/pairing.ts';
import { quickScore } from '../../../criteria/quick-score.ts';
import { distance, type Point } from '../../../geometry/point.ts';
import { nudge as bestNear, type Nudge } from '../../../placement/nudge.ts';
import type { Site } from '../../../site/types.ts';
import { guideOf, postAt, prepare } from '../prepared.ts';
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

export function nudge({ site, post, bird, x, y, reach, others, partner }: NudgeQuestion): Nudge | null {
  const prepared = prepare(site);
  const { ground, suns } = prepared;
  const here = { x, y };
  const guide = guideOf(bird);
  const free = (at: Point) =>
    ground.forbidden(at) === null &&
    others.every((other) => distance(at, other.at) >= Math.min(other.needed, distance(here, other.at))) &&
    (partner === null || isPair(distance(at, partner), site.settings));
  return bestNear(here, reach, (at) => (free(at) ? quickScore(ground, postAt(prepared, post, at), guide, suns) : null));
}
