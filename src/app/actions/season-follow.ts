/** What the Season shows belongs to one site: it goes along when that site gets another id, and is put away when another is opened. Loaded first: nothing of the review comes with it. */
import { firstSeason } from '../season-state.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';

/** Follows the open site until the returned function is called. */
export function followSeason(store: Store): () => void {
  return store.subscribe((state, before) => {
    if (state.siteId === before.siteId) return;
    if (isRenamed(state, before)) carry(store, before.siteId!, state.siteId!);
    else store.set({ season: { ...firstSeason, invented: state.season.invented } });
  });
}

/** A demo that was changed, or what two windows did to one site: the very same land under another id. */
export function isRenamed(state: AppState, before: AppState): boolean {
  return state.site !== null && state.site === before.site && before.siteId !== null && state.siteId !== null;
}

function carry(store: Store, from: string, to: string): void {
  const { season } = store.state;
  const { invented } = season;
  if (invented?.siteId === from) store.set({ season: { ...season, invented: { ...invented, siteId: to } } });
}
