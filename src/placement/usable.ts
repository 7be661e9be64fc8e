/** Which posts may serve which bird. */
import type { FullChooseInput, ScoredPost } from './choose.ts';

/** The score of a post for a bird when it may be chosen for it, else null. */
export function usableScore(input: FullChooseInput, post: ScoredPost, bird: string): number | null {
  const found = post.scores[bird];
  if (!found || found.score === null || found.refused.length > 0 || post.forbidden || post.unreachable) return null;
  if (post.candidate.bird && post.candidate.bird !== bird) return null;
  return found.score >= input.minimumScore ? found.score : null;
}
