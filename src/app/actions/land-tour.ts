/** The first walk through the yard demo: offered once, played again at will. */
import { firstLand } from '../land-state.ts';
import type { Store } from '../store.ts';
import { setLand } from './land-state.ts';
import { openSite } from './open.ts';

const key = 'meadowpost walk seen';

/** Whether it was played or refused in this browser. Where nothing can be kept it is offered again. */
export function tourSeen(): boolean {
  try {
    return localStorage.getItem(key) === 'yes';
  } catch {
    return false;
  }
}

/** Opens the yard demo and its first card. */
export async function startTour(store: Store): Promise<void> {
  if (store.state.siteId !== 'yard') await openSite(store, 'yard');
  store.set({ place: 'land', selection: null, land: { ...firstLand, tour: 0 } });
}

/** Ends it, or says no to it. */
export function endTour(store: Store): void {
  try {
    localStorage.setItem(key, 'yes');
  } catch {
    // Nothing can be kept here: it will be offered again.
  }
  setLand(store, { tour: null });
  store.set({ land: { ...store.state.land } });
}
