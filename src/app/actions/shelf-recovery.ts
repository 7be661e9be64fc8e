/** Choosing between two copies of a site that differ. Neither is ever deleted. */
import { readSiteText } from '../read-site-text.ts';
import type { Finding } from '../storage/compare-copies.ts';
import type { Store } from '../store.ts';
import { openSite } from './open.ts';
import { say } from './say.ts';
import { downloadText } from './shelf-file.ts';
import { showPage } from './shelf-page.ts';

export type Copy = 'database' | 'mirror';

/** How much a copy holds; null when it cannot be read. */
export async function countsOf(
  store: Store,
  id: string,
  copy: Copy,
): Promise<{ things: number; posts: number } | null> {
  const text = await store.shelf.copyText(id, copy).catch(() => null);
  const site = text === null ? null : (await readSiteText(text, `${id}.geojson`)).site;
  return site && { things: site.features.length, posts: site.features.filter((f) => f.kind === 'post').length };
}

/** Makes one copy the newest state and opens it. */
export async function takeCopy(store: Store, { site: id, name }: Finding, copy: Copy): Promise<void> {
  const { recovery } = store.state.words.library;
  try {
    await store.shelf.take(id, copy);
    await store.shelf.copied();
    const { keeping } = store.state;
    const findings = keeping.findings.filter((f) => f.site !== id);
    store.set({ keeping: { ...keeping, findings, turn: keeping.turn + 1 } });
    if (findings.length === 0) showPage(store, 'closed');
    await openSite(store, id);
    say(store, 'tell', recovery.taken(name));
  } catch (error) {
    say(store, 'trouble', recovery.failed(error instanceof Error ? error.message : String(error)));
  }
}

/** Gives one copy to the browser as a download. */
export async function downloadCopy(store: Store, { site: id, name }: Finding, copy: Copy): Promise<void> {
  const { recovery } = store.state.words.library;
  const text = await store.shelf.copyText(id, copy).catch(() => null);
  if (text === null) say(store, 'trouble', recovery.failed(recovery.nothing));
  else await downloadText(`${name} (${recovery[copy].toLowerCase()})`, text);
}
