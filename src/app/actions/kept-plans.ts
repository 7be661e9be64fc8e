/** Plans kept by name while the site is open, to be compared and taken up again. */
import type { KeptPlan } from '../posts-state.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { setPosts } from './posts-state.ts';

/** Keeps the plan on the screen; a name that is taken is replaced. */
export function keepPlan(store: Store, typed: string): void {
  const { plan, planOf, posts, words } = store.state;
  if (!plan || !planOf) return;
  const name = typed.trim() || words.posts.kept.usual(posts.kept.length + 1);
  const others = posts.kept.filter((one) => one.name !== name);
  setPosts(store, { kept: [...others, { name, plan, site: planOf }] });
}

/** Makes the site it was made from the open one again: one step, that can be undone. */
export function takeKept(store: Store, { name, site }: KeptPlan): void {
  edit(store, site, store.state.words.posts.kept.taken(name));
}

export function dropKept(store: Store, kept: KeptPlan): void {
  setPosts(store, { kept: store.state.posts.kept.filter((one) => one !== kept) });
}
