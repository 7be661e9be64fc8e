/** What lies over the open place: nothing, the list of sites, or the two copies that differ. */
import type { KeepingState } from '../keeping-state.ts';
import type { Store } from '../store.ts';

export function showPage(store: Store, page: KeepingState['page']): void {
  const { keeping } = store.state;
  if (keeping.page !== page) store.set({ keeping: { ...keeping, page } });
}
