/** Opens a site of the shelf with its undo steps, and takes it over from another window. */
import { isReadOnly } from '../../site/migrate.ts';
import { readSiteText } from '../read-site-text.ts';
import { schema } from '../storage/revision.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { keptHistory } from './shelf-history.ts';
import { showSite } from './show-site.ts';

/** Opens a kept site; throws when there is none of that id or it holds no site. */
export async function openKept(store: Store, id: string): Promise<void> {
  const { shelf, keeper } = store;
  const writes = (await keeper?.claim(id)) ?? true;
  try {
    const text = await shelf.open(id);
    if (text === null) throw new Error('no site of that name is kept here');
    const { site, issues } = await readSiteText(text, `${id}.geojson`);
    if (!site) throw new Error(issues.find((i) => i.severity === 'error')?.sentence ?? 'it holds no site');
    const head = await shelf.head(id);
    const sentence = store.state.words.library.noSentence;
    const history = await keptHistory(shelf, id, text, () => ({ site, sentence }));
    const exported = await shelf.vault.extra<number>(exportedKey(id)).catch(() => null);
    const newer = isReadOnly(issues) || (head?.schema ?? 0) > schema;
    const differ = store.state.keeping.findings.some((finding) => finding.site === id);
    const mode = newer ? 'newer' : differ ? 'differ' : writes ? 'write' : 'other-window';
    const time = head?.saved ?? Date.now();
    showSite(store, id, site, issues, { history, saved: { at: 'saved', time }, mode, exported });
    void shelf.vault.setExtra(lastOpenKey, id).catch(() => undefined);
  } catch (error) {
    keeper?.drop();
    throw error;
  }
}

/** Where the time of the last download is kept. */
export const exportedKey = (id: string) => `exported:${id}`;
/** Where the id of the site last open is kept. */
export const lastOpenKey = 'last-open';

/** Reads the open site again after another window changed it. */
export async function reread(store: Store, id: string): Promise<void> {
  try {
    await openKept(store, id);
  } catch {
    // The other window is in the midst of something (deleting it, say): what is on the screen stays.
  }
}

/** Asks the other window to save and let go, then writes here. */
export async function takeOver(store: Store): Promise<void> {
  const { siteId, words } = store.state;
  if (!siteId || !store.keeper) return;
  if (!(await store.keeper.takeOver())) return void say(store, 'trouble', words.library.notTakenOver);
  await openKept(store, siteId);
  say(store, 'tell', words.library.tookOver);
}
