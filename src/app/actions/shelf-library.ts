/** What a person does with the sites of the shelf: new, duplicate, rename, delete, put back, go back to an earlier state. */
import { replaceSite } from '../../edits/replace-site.ts';
import { newSite } from '../../site/new-site.ts';
import type { Site } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';
import { readSiteText } from '../read-site-text.ts';
import type { ShelfEntry } from '../storage/site-shelf.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { openSite } from './open.ts';
import { say } from './say.ts';
import { freeName } from './shelf-file.ts';
import { mayWrite } from './shelf-may-write.ts';
import { freshId, named } from './shelf-name.ts';
import { showPage } from './shelf-page.ts';

/** Makes an empty site, keeps it and opens it at the land. */
export async function makeSite(store: Store): Promise<void> {
  await tried(store, async () => {
    const { words, units } = store.state;
    const name = await freeName(store, words.library.newName);
    const site = newSite(name, { units, date: new Date().toISOString().slice(0, 10) });
    const id = freshId(name);
    await store.shelf.save(id, name, writeSite(site), words.library.newSite);
    await openSite(store, id);
    store.set({ place: 'land' });
    showPage(store, 'closed');
  });
}

export async function duplicateSite(store: Store, { id, name }: ShelfEntry): Promise<void> {
  await tried(store, async () => {
    const { library } = store.state.words;
    await store.keeper?.flush();
    const site = await siteOf(store, id);
    const to = await freeName(store, library.copyName(name));
    await store.shelf.save(freshId(to), to, writeSite(named(site, to)), library.duplicate);
    shelfChanged(store);
    say(store, 'tell', library.duplicated(to));
  });
}

/** Renames the open site as a change that can be undone, any other as a new revision. */
export async function renameSite(store: Store, { id, name }: ShelfEntry, wanted: string): Promise<void> {
  const to = wanted.replace(/\s+/g, ' ').trim().slice(0, 120);
  if (!to || to === name) return;
  await tried(store, async () => {
    const { state } = store;
    const { library } = state.words;
    if (id === state.siteId && state.site) {
      if (!mayWrite(store)) return;
      edit(store, named(state.site, to), library.renamed(to));
      await store.keeper?.flush();
    } else {
      const site = await siteOf(store, id);
      await store.shelf.save(id, to, writeSite(named(site, to)), library.renamed(to));
      say(store, 'tell', library.renamed(to));
    }
    shelfChanged(store);
  });
}

/** Puts a site in the bin; the message takes it out again. The open one stays on the screen until another is opened. */
export async function removeSite(store: Store, { id, name }: ShelfEntry): Promise<void> {
  await tried(store, async () => {
    const { library } = store.state.words;
    if (id === store.state.siteId) {
      if (!mayWrite(store)) return;
      await store.keeper?.flush();
      store.set({
        siteId: null,
        site: null,
        issues: [],
        history: null,
        past: [],
        future: [],
        plan: null,
        planOf: null,
      });
    }
    await store.shelf.remove(id);
    shelfChanged(store);
    say(store, 'undo', library.removed(name), {
      word: library.undoRemove,
      run: () => void putBack(store, { id, name }),
    });
  });
}

/** Takes a site out of the bin; opens it when nothing is open. */
export async function putBack(store: Store, { id, name }: Pick<ShelfEntry, 'id' | 'name'>): Promise<void> {
  await tried(store, async () => {
    await store.shelf.restore(id);
    shelfChanged(store);
    say(store, 'tell', store.state.words.library.restored(name));
    if (!store.state.site) await openSite(store, id);
  });
}

/** Makes an earlier state of the open site its newest, as a change that can be undone. */
export async function goBackTo(store: Store, rev: number): Promise<void> {
  await tried(store, async () => {
    const { siteId, site, words } = store.state;
    if (!siteId || !site || !mayWrite(store)) return;
    await store.keeper?.flush();
    const text = await store.shelf.openRevision(siteId, rev);
    const read = text === null ? null : await readSiteText(text, `${siteId}.geojson`);
    if (!read?.site) return void say(store, 'trouble', words.library.revisionGone);
    const back = replaceSite(site, read.site, words.library.wentBack(rev));
    if ('refused' in back) return void say(store, 'trouble', back.refused);
    edit(store, back.site, back.sentence);
    await store.keeper?.flush();
    say(store, 'tell', words.library.tookRevision(rev));
  });
}

async function siteOf(store: Store, id: string): Promise<Site> {
  if (id === store.state.siteId && store.state.site) return store.state.site;
  const text = await store.shelf.open(id);
  const read = text === null ? null : await readSiteText(text, `${id}.geojson`);
  if (!read?.site) throw new Error('It cannot be read.');
  return read.site;
}

/** Has the list of sites read again. */
export function shelfChanged(store: Store): void {
  const { keeping } = store.state;
  store.set({ keeping: { ...keeping, turn: keeping.turn + 1 } });
}

async function tried(store: Store, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(store, 'trouble', store.state.words.library.recovery.failed(why));
  }
}
