/** Small changes of what lies under the drawing, and keeping them on this device. */
import type { GroundPicture, PictureState } from '../picture-state.ts';
import { type PictureShelf, pictureShelf } from '../storage/picture-shelf.ts';
import type { Store } from '../store.ts';

const shelves = new WeakMap<Store, PictureShelf>();

/** The shelf of this window; another may be given (tests). */
export function picturesOf(store: Store): PictureShelf {
  const found = shelves.get(store) ?? pictureShelf();
  shelves.set(store, found);
  return found;
}

export function usePictureShelf(store: Store, shelf: PictureShelf): void {
  shelves.set(store, shelf);
}

export function setPictures(store: Store, change: Partial<PictureState>): void {
  store.set({ pictures: { ...store.state.pictures, ...change } });
}

/** Opens or closes the panel; the list of the open site is read the first time. */
export function openPictures(store: Store, open: boolean): void {
  setPictures(store, open ? { open } : { open, tool: null });
  if (open) void readPictures(store);
}

/** Reads the list kept for the open site; does nothing when it is there. */
export async function readPictures(store: Store): Promise<void> {
  const { siteId, pictures } = store.state;
  if (siteId === null || pictures.of === siteId) return;
  setPictures(store, { of: siteId, list: [], tool: null, trouble: null, woods: null });
  const kept = await picturesOf(store)
    .list(siteId)
    .catch(() => []);
  const { of, list } = store.state.pictures;
  if (of === siteId && list.length === 0) setPictures(store, { list: kept });
}

/** The site has got another id (a demo that was changed is kept as the person's own): its pictures go along. */
export async function carryPictures(store: Store, from: string, to: string): Promise<void> {
  const shelf = picturesOf(store);
  const { of, list } = store.state.pictures;
  if (of === from) setPictures(store, { of: to });
  try {
    const kept = of === from ? list : await shelf.list(from);
    if (kept.length === 0) return;
    await shelf.setList(to, kept);
    await shelf.setList(from, []);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setPictures(store, { trouble: store.state.words.pictures.notKept(why) });
  }
}

/** Keeps the list; where the device cannot, the pictures stay in this window and that is said. */
async function keep(store: Store): Promise<void> {
  const { of, list } = store.state.pictures;
  if (of === null) return;
  try {
    await picturesOf(store).setList(of, list);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setPictures(store, { trouble: store.state.words.pictures.notKept(why) });
  }
}

/** Puts a picture on top. */
export function addPicture(store: Store, picture: GroundPicture): void {
  setPictures(store, { list: [...store.state.pictures.list, picture], working: null, trouble: null });
  store.set({ ground: 'photo' });
  void keep(store);
}

/** Changes one picture; `last` = false while a hand is still moving it. */
export function changePicture<P extends GroundPicture>(
  store: Store,
  id: string,
  change: Partial<P>,
  last = true,
): void {
  const list = store.state.pictures.list.map((one) => (one.id === id ? ({ ...one, ...change } as GroundPicture) : one));
  setPictures(store, { list });
  if (last) void keep(store);
}

export function removePicture(store: Store, id: string): void {
  const { list, tool } = store.state.pictures;
  setPictures(store, { list: list.filter((one) => one.id !== id), tool: tool?.id === id ? null : tool });
  void keep(store);
  void picturesOf(store)
    .remove(id)
    .catch(() => undefined);
}

/** Credits of the pictures that are shown now, each once; '' when there is none. */
export function creditOf({ list }: PictureState): string {
  const shown = list.filter((one) => one.shown && (one.kind !== 'served' || one.agreed));
  return [...new Set(shown.map((one) => one.credit).filter((credit) => credit !== ''))].join(' · ');
}
