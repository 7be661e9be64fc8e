/** Sentences of the card that are put together from the plan's figures. */
import type { PostCard } from '../../../plan-types.ts';
import type { Words } from '../../words/en.ts';

/** The two best other birds with their own scores. Ours: under 20 a bird is not worth naming. */
export function alsoWords(card: PostCard, bird: string, posts: Words['posts']): string {
  const others = card.who.filter((w) => w.bird !== bird && w.score >= 20).slice(0, 2);
  if (others.length === 0) return card.who.length > 0 ? posts.alsoNone : '';
  return posts.also(others.map((w) => `${w.name} ${Math.round(w.score)} (${posts.hole(w.hole)})`).join(', '));
}

/** "afternoon sun, then brush." or null when too little was judged. */
export function weakestWords(card: PostCard, posts: Words['posts']): string | null {
  const titles = card.weakest.map((id) => card.rows.find((row) => row.id === id)?.title.toLowerCase() ?? id);
  return titles[0] ? posts.weakestList(titles[0], titles[1] ?? null) : null;
}
