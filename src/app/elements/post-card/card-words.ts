/** Sentences of the card that are put together from the plan's figures. */
import type { PostCard } from '../../../plan-types.ts';
import type { Words } from '../../words/en.ts';

/** The two best other birds with their own scores. Ours: under 20 a bird is not worth naming. */
export function alsoWords(card: PostCard, bird: string, posts: Words['posts']): string {
  const others = card.who.filter((w) => w.bird !== bird && w.score >= 20).slice(0, 2);
  if (others.length === 0) return card.who.length > 0 ? posts.alsoNone : '';
  return posts.also(others.map((w) => `${w.name} ${Math.round(w.score)} (${posts.hole(w.hole)})`).join(', '));
}

/** A reason is called weak under this, 0–1: of a post where all is well the least good one is not weak (ours). */
const weakUnder = 0.9;

/** Ids of the reasons called weak: of the two lowest those that fall short. */
export function weakRows(card: PostCard): readonly string[] {
  return card.weakest.filter((id) => (card.rows.find((row) => row.id === id)?.score ?? 1) < weakUnder);
}

/** "afternoon sun, then brush." or null when nothing is weak or too little was judged. */
export function weakestWords(card: PostCard, posts: Words['posts']): string | null {
  const titles = weakRows(card).map((id) => card.rows.find((row) => row.id === id)?.title.toLowerCase() ?? id);
  return titles[0] ? posts.weakestList(titles[0], titles[1] ?? null) : null;
}
