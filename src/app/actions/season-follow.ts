/** What the Season shows belongs to one site: it goes along when that site gets another id, and is put away when another is opened. */
import { firstSeason } from '../season-state.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { setSeason } from './season-review.ts';

/** Follows the open site until the returned function is called. */
export function followSeason(store: Store): () => void {
  return store.subscribe((state, before) => {
    if (state.siteId === before.siteId) return;
    if (isRenamed(state, before)) carry(store, before.siteId!, state.siteId!);
    else setSeason(store, { ...firstSeason, invented: state.season.invented });
  });
}

/** A demo that was changed, or what two windows did to one site: the very same land under another id. */
export function isRenamed(state: AppState, before: AppState): boolean {
  return state.site !== null && state.site === before.site && before.siteId !== null && state.siteId !== null;
}

function carry(store: Store, from: string, to: string): void {
  const { invented } = store.state.season;
  if (invented?.siteId === from) setSeason(store, { invented: { ...invented, siteId: to } });
}
