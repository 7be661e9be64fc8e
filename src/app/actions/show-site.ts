/** Puts a site that was read on the screen. */
import { type History, present } from '../../edits/history.ts';
import type { Issue, Site } from '../../site/types.ts';
import type { KeepingState } from '../keeping-state.ts';
import { firstPosts } from '../posts-state.ts';
import type { Saved } from '../state.ts';
import type { Store } from '../store.ts';
import { stepsOf } from './edit.ts';
import { replan } from './plan.ts';

/** How a site comes. */
export interface Coming {
  /** Its undo steps, whose present then stands for the site; null = none. */
  readonly history: History | null;
  /** `never` has it saved; a kept site says when it was; a demo is saved only once it is changed. */
  readonly saved: Saved;
  readonly mode?: KeepingState['mode'];
  readonly exported?: number | null;
}

export function showSite(store: Store, id: string, read: Site, issues: readonly Issue[], coming: Coming): void {
  const { history, saved, mode = 'write', exported = null } = coming;
  const site = history ? present(history) : read;
  const steps = history ? stepsOf(history) : { past: [], future: [] };
  const units = site.settings.units;
  const keeping = { ...store.state.keeping, mode, exported };
  store.set({
    siteId: id,
    site,
    issues,
    history,
    ...steps,
    plan: null,
    planOf: null,
    posts: firstPosts,
    units,
    saved,
    keeping,
  });
  void replan(store);
}
