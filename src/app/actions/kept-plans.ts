/** Plans kept by name in the site file: kept, compared, taken up again, forgotten. */
import { dropPlan, keepPlan as keep } from '../../edits/keep-plan.ts';
import { takePlan } from '../../edits/take-plan.ts';
import { keptPlan } from '../../plan/kept.ts';
import type { Store } from '../store.ts';
import { applied } from './applied.ts';
import { setPosts } from './posts-state.ts';

/** Keeps the plan on the screen; a name that is taken is replaced. Only a finished plan of the site as it is now can be kept. */
export function keepPlan(store: Store, typed: string): void {
  const { plan, planOf, site, engine, words } = store.state;
  if (!plan || !site || planOf !== site || engine.at === 'work') return;
  const name = typed.trim() || words.posts.kept.usual(site.settings.plans.length + 1);
  applied(store, keep(site, keptPlan(site, plan, name)));
}

/** Makes the site the kept plan was made of: one step, that can be undone. */
export function takeKept(store: Store, name: string): void {
  const { site } = store.state;
  if (site) applied(store, takePlan(site, name));
}

export function dropKept(store: Store, name: string): void {
  const { site, posts } = store.state;
  if (!site) return;
  if (posts.beside === name) setPosts(store, { beside: null });
  applied(store, dropPlan(site, name));
}
