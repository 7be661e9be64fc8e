/** The second box of a pair: two boxes a few yards apart are used as one site (handbook §3). */
import type { Point } from '../geometry/point.ts';
import { destination, distance } from '../geometry/point.ts';
import type { FullChooseInput, ScoredPost } from './choose.ts';
import type { PostIndex } from './post-index.ts';
import { usableScore } from './usable.ts';

/** Metres between the boxes of a pair: 15–25 ft takes in every source (`TWRA` within 25, Berner 5–25, `WBB` 5–15; handbook §3). */
export const pairNearest = 4.572;
export const pairFarthest = 7.62;
/** Beyond this a drawn pair is two sites too close together: ends of a pair never lie farther apart (Berner, handbook §3). */
const ringAt = 6.096;
/** Directions tried around a post that has no candidate at the right distance. */
const directions = 12;

export interface Partner {
  readonly id: string;
  readonly at: Point;
  readonly score: number;
  /** Index of the input post it stands at; null for a place of its own. */
  readonly index: number | null;
}

/** The best partner of `post` for `bird`: the one drawn with it, else the best candidate 15–25 ft off, else the best place on a ring 20 ft off; null when there is none. */
export function findPartner(input: FullChooseInput, post: ScoredPost, bird: string, index: PostIndex): Partner | null {
  return (
    drawnPartner(input, post, bird, index.byId) ??
    nearCandidate(input, post, bird, index) ??
    placeOnRing(input, post, bird)
  );
}

function asPartner(input: FullChooseInput, index: number, bird: string): Partner | null {
  const other = input.posts[index];
  if (other.candidate.state !== 'candidate') return null;
  const score = usableScore(input, other, bird);
  return score === null ? null : { id: other.candidate.id, at: other.candidate.at, score, index };
}

function drawnPartner(
  input: FullChooseInput,
  post: ScoredPost,
  bird: string,
  indexOf: ReadonlyMap<string, number>,
): Partner | null {
  const index = post.candidate.pair === null ? undefined : indexOf.get(post.candidate.pair);
  if (index === undefined) return null;
  const partner = asPartner(input, index, bird);
  const metres = partner ? distance(post.candidate.at, partner.at) : 0;
  return partner && metres >= 1.524 && metres <= pairFarthest + 0.005 ? partner : null;
}

function nearCandidate(input: FullChooseInput, post: ScoredPost, bird: string, index: PostIndex): Partner | null {
  let best: Partner | null = null;
  for (const i of index.near(post.candidate.at)) {
    const other = input.posts[i].candidate;
    const metres = distance(post.candidate.at, other.at);
    if (metres < pairNearest || metres > pairFarthest || other.id === post.candidate.id) continue;
    const partner = asPartner(input, i, bird);
    if (partner && (!best || partner.score > best.score)) best = partner;
  }
  return best;
}

function placeOnRing(input: FullChooseInput, post: ScoredPost, bird: string): Partner | null {
  if (!input.scoreAt) return null;
  let best: Partner | null = null;
  for (let d = 0; d < directions; d++) {
    const at = destination(post.candidate.at, (d * 360) / directions, ringAt);
    const found = input.scoreAt(at, bird);
    if (!found || found.score === null || found.refused.length > 0 || found.score < input.minimumScore) continue;
    if (!best || found.score > best.score)
      best = { id: `${post.candidate.id}-pair`, at, score: found.score, index: null };
  }
  return best;
}
