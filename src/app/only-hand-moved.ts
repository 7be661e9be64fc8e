/** A pointer tells of a move many times a picture: most of the page waits for the score that follows. */
import type { AppState } from './state.ts';

/** Whether nothing changed but the place of the post in the hand: its card is still the one shown. */
export function onlyHandMoved(state: AppState, before: AppState): boolean {
  const now = state.posts.hand;
  const then = before.posts.hand;
  if (!now || !then || now === then) return false;
  const sameCard = now.card === then.card && now.cardAt === then.cardAt && now.forbidden === then.forbidden;
  return sameCard && now.post === then.post && same(state, before, 'posts') && same(state.posts, before.posts, 'hand');
}

function same<T extends object>(a: T, b: T, but: keyof T): boolean {
  return (Object.keys(a) as (keyof T)[]).every((key) => key === but || a[key] === b[key]);
}
