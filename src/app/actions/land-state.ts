/** Small changes of what the Land place is at: pages, switches, the chosen thing and corner. */
import type { Corner } from '../../edits/chains.ts';
import type { Edit } from '../../edits/edit.ts';
import { eachPosition } from '../../ground/frame.ts';
import type { LonLat, SiteGeometry } from '../../site/types.ts';
import type { LandPage, LandState } from '../land-state.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';

/** Changes members of the Land place's state. */
export function setLand(store: Store, change: Partial<LandState>): void {
  store.set({ land: { ...store.state.land, ...change } });
}

/** Opens a page; a shape in progress and a chosen thing are put away. */
export function openPage(store: Store, page: LandPage): void {
  const put = { page, tool: null, corners: [], takenBack: [], corner: null, trouble: null, offers: [] };
  store.set({ selection: null, land: { ...store.state.land, ...put } });
}

/** Chooses a thing of the land, or nothing. */
export function choose(store: Store, id: string | null): void {
  const put = { tool: null, corners: [], takenBack: [], corner: null, trouble: null, offers: [] };
  store.set({ selection: id === null ? null : { of: 'feature', id }, land: { ...store.state.land, ...put } });
}

/** Chooses a corner of the chosen thing, or none. */
export function chooseCorner(store: Store, corner: Corner | null): void {
  setLand(store, { corner, trouble: null });
}

/** The id of the chosen thing, also when it was chosen as a post elsewhere; null when nothing of the land is chosen. */
export function chosenId(store: Store): string | null {
  const { selection } = store.state;
  return selection?.of === 'feature' || selection?.of === 'post' ? selection.id : null;
}

/** Makes an edit's answer the open site, or says why not. True when it was done; a chosen corner then stays chosen. */
export function change(store: Store, answer: Edit, at: LonLat | null = null): boolean {
  if ('refused' in answer) {
    setLand(store, { trouble: { sentence: answer.refused, at } });
    return false;
  }
  const { land, site } = store.state;
  const { corner } = land;
  edit(store, answer.site, answer.sentence);
  if (store.state.site === site) return false;
  setLand(store, { corner, trouble: null });
  return true;
}

/** Has the map look at a place, or at a thing with some room around it. */
export function lookAt(store: Store, geometry: SiteGeometry | LonLat): void {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  const grow = (lon: number, lat: number) => {
    box[0] = Math.min(box[0], lon);
    box[1] = Math.min(box[1], lat);
    box[2] = Math.max(box[2], lon);
    box[3] = Math.max(box[3], lat);
  };
  if (Array.isArray(geometry)) grow(geometry[0], geometry[1]);
  else eachPosition(geometry, grow);
  if (box.every(Number.isFinite)) setLand(store, { look: box });
}
