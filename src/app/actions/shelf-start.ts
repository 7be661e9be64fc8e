/** What happens before anything is opened: where sites can be kept, whether they are whole, and what was left behind. */
import { startShelf } from '../storage/start-shelf.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { Keeper } from './shelf-keeper.ts';
import { lastOpenKey, reread, takeOver } from './shelf-open.ts';

/** Gives the store its shelf and its keeper. Never rejects. */
export async function startKeeping(store: Store): Promise<void> {
  const { shelf, why, findings, rescued } = await startShelf();
  store.shelf = shelf;
  store.keeper = new Keeper(store, {
    reread: (id) => void reread(store, id),
    takeOver: () => void takeOver(store),
  });
  const { keeping, words } = store.state;
  const page = findings.length > 0 ? 'recovery' : keeping.page;
  const where = why === null ? 'lasting' : 'window';
  store.set({ keeping: { ...keeping, where, why, findings, page, secondCopy: shelf.mirrorTrouble } });
  if (rescued.length > 0) say(store, 'tell', words.library.rescued(rescued.map((r) => r.name).join(', ')));
}

/** Id of the site that was open last and is still on the shelf; null when there is none or its copies differ. */
export async function lastOpen(store: Store): Promise<string | null> {
  try {
    const id = await store.shelf.vault.extra<string>(lastOpenKey);
    const known = (await store.shelf.list()).some((entry) => entry.id === id);
    return known && !store.state.keeping.findings.some(({ site }) => site === id) ? id : null;
  } catch {
    return null;
  }
}
