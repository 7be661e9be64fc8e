/** Cards of posts asked for one by one: under the hand, and after the land has changed. */
import { scorePost as cardOf } from '../../../criteria/card.ts';
import type { PostCard } from '../../../plan-types.ts';
import type { Site } from '../../../site/types.ts';
import { guideOf, postAt, prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';
import { takeABreath } from '../take-a-breath.ts';

/** A post as if it stood at x, y (meters of the site's frame), for a bird. */
export interface PlacedPost {
  readonly post: string;
  readonly bird: string;
  readonly x: number;
  readonly y: number;
}

export interface PostQuestion extends PlacedPost {
  readonly site: Site;
  /** Whether the other birds are scored too: they cost more than all the rest, so not under the hand. */
  readonly who: boolean;
}

export interface PostAnswer {
  readonly card: PostCard;
  /** Why no box may stand there, or null. */
  readonly forbidden: string | null;
}

export function scorePost({ site, post, bird, x, y, who }: PostQuestion): PostAnswer {
  const prepared = prepare(site);
  const { ground, suns } = prepared;
  const at = { x, y };
  return {
    card: cardOf(ground, postAt(prepared, post, at), guideOf(bird), suns, { who }),
    forbidden: ground.forbidden(at)?.reason ?? null,
  };
}

/** Posts scored between two looks at the letterbox: some 2 ms (ours). */
const stride = 4;

export async function rescore(
  { site, posts }: { site: Site; posts: readonly PlacedPost[] },
  { signal }: Pick<CallTools, 'signal'>,
): Promise<PostCard[]> {
  const cards: PostCard[] = [];
  for (const post of posts) {
    cards.push(scorePost({ site, ...post, who: false }).card);
    if (cards.length % stride === 0) await takeABreath();
    if (signal.aborted) return [];
  }
  return cards;
}
