/** A file of the person's own that the open site is read from and written back to, where the browser has File System Access. */
import { sha256 } from '../digest.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { exported, fileName, openFile, sealedText } from './shelf-file.ts';

/** TypeScript's own library lists neither the pickers nor the asking for leave. */
interface FileOnDisk extends FileSystemFileHandle {
  queryPermission?(wish: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission?(wish: { mode: 'readwrite' }): Promise<PermissionState>;
}
const pickers = globalThis as unknown as {
  showSaveFilePicker?(options: object): Promise<FileOnDisk>;
  showOpenFilePicker?(options: object): Promise<FileOnDisk[]>;
};

/** Kept beside the site: which file is its own, and the SHA-256 of what it held when last read or written here. */
interface OwnFile {
  readonly handle: FileOnDisk;
  readonly hash: string;
}
const ownKey = (id: string) => `own-file:${id}`;

/** Whether the browser can write a file the person chooses. */
export function canWriteFiles(): boolean {
  return typeof pickers.showSaveFilePicker === 'function';
}

/** Whether the browser can open a file so that it can be written back. */
export function canOpenFiles(): boolean {
  return canWriteFiles() && typeof pickers.showOpenFilePicker === 'function';
}

/** Lets the window know which file is the open site's own; a file is remembered from one visit to the next. */
export async function lookForOwnFile(store: Store): Promise<void> {
  const { siteId, keeping } = store.state;
  if (!siteId || !canWriteFiles() || keeping.ownFile?.site === siteId) return;
  const own = await kept(store, siteId);
  if (own && store.state.siteId === siteId) show(store, siteId, own.handle.name, false);
}

/** Lets the person choose a site file, opens it as a site of its own and keeps hold of it, so that Save writes back to it. */
export async function chooseSiteFile(store: Store): Promise<void> {
  const { library } = store.state.words;
  try {
    const [handle] = (await pickers.showOpenFilePicker?.({ types: [fileType(library.fileKind)] })) ?? [];
    if (!handle) return;
    const text = await openFile(store, await handle.getFile());
    // A damaged file or one of a newer program must not be written over by what could be read of it.
    if (text !== null && store.state.keeping.mode === 'write') await keep(store, handle, text);
  } catch (error) {
    if (!gaveUp(error)) say(store, 'trouble', library.openTrouble(library.fileKind, wordsOf(error)));
  }
}

/**
 * Writes the open site to its own file, or to one the person chooses where it has none or `another` is wanted, and reads it back.
 * A file that was changed by something else since is left alone unless `over` is said.
 */
export async function saveToFile(store: Store, { another = false, over = false } = {}): Promise<void> {
  const { site, siteId, words } = store.state;
  if (!site || !siteId) return;
  const { library } = words;
  const own = another ? null : await kept(store, siteId);
  try {
    if (own && !(await mayWrite(own.handle))) return void say(store, 'trouble', library.own.refused(own.handle.name));
    if (own && !over && (await sha256(await textOf(own.handle))) !== own.hash) {
      show(store, siteId, own.handle.name, true);
      return void say(store, 'trouble', library.own.changed(own.handle.name));
    }
    const handle =
      own?.handle ??
      (await pickers.showSaveFilePicker?.({
        suggestedName: fileName(site.settings.name),
        types: [fileType(library.fileKind)],
      }));
    if (!handle) return;
    const text = await sealedText(site);
    const stream = await handle.createWritable();
    await stream.write(text);
    await stream.close();
    if ((await textOf(handle)) !== text) throw new Error('it reads back differently');
    await exported(store);
    if (store.state.siteId === siteId) await keep(store, handle, text);
    say(store, 'tell', library.writtenTo(handle.name));
  } catch (error) {
    if (gaveUp(error)) return;
    if (own && isGone(error)) await forget(store, siteId);
    say(
      store,
      'trouble',
      own && isGone(error) ? library.own.gone(own.handle.name) : library.notWritten(wordsOf(error)),
    );
  }
}

async function kept(store: Store, id: string): Promise<OwnFile | null> {
  return store.shelf.vault.extra<OwnFile>(ownKey(id)).catch(() => null);
}

async function keep(store: Store, handle: FileOnDisk, text: string): Promise<void> {
  const { siteId } = store.state;
  if (!siteId) return;
  await store.shelf.vault.setExtra(ownKey(siteId), { handle, hash: await sha256(text) }).catch(() => undefined);
  show(store, siteId, handle.name, false);
}

async function forget(store: Store, siteId: string): Promise<void> {
  await store.shelf.vault.removeExtra(ownKey(siteId)).catch(() => undefined);
  store.set({ keeping: { ...store.state.keeping, ownFile: null } });
}

function show(store: Store, site: string, name: string, changed: boolean): void {
  store.set({ keeping: { ...store.state.keeping, ownFile: { site, name, changed } } });
}

/** After a new visit the browser asks again, once a visit. */
async function mayWrite(handle: FileOnDisk): Promise<boolean> {
  const wish = { mode: 'readwrite' } as const;
  if ((await handle.queryPermission?.(wish)) === 'granted') return true;
  return ((await handle.requestPermission?.(wish)) ?? 'granted') === 'granted';
}

const textOf = async (handle: FileOnDisk): Promise<string> => (await handle.getFile()).text();
const gaveUp = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';
const isGone = (error: unknown): boolean => error instanceof DOMException && error.name === 'NotFoundError';
const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function fileType(description: string) {
  return { description, accept: { 'application/geo+json': ['.geojson', '.json'] } };
}
