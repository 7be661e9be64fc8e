/** Choosing a box or a thing, going to a place, setting theme, unit and ground. */
import type { ThemeName } from '../../../layers/types.ts';
import type { Units } from '../../site/types.ts';
import type { GroundLook, Place, Selection } from '../state.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';

/** Shows a box, post or thing; null closes the card. A box or post opens the Posts place unless the Round or the Season is open. */
export function select(store: Store, selection: Selection | null): void {
  const { place } = store.state;
  const stays = !selection || selection.of === 'feature' || place === 'round' || place === 'season';
  store.set({ selection, place: stays ? place : 'posts' });
}

export function goTo(store: Store, place: Place): void {
  store.set({ place });
}

export function setTheme(store: Store, theme: ThemeName): void {
  store.set({ theme });
}

/** The unit is the site's own: every sentence of the plan is written in it, so the plan is made again. */
export function setUnits(store: Store, units: Units): void {
  const { site, words } = store.state;
  if (site && site.settings.units !== units)
    edit(store, { ...site, settings: { ...site.settings, units } }, words.shell.unitsChanged(words.shell.units[units]));
}

export function setGround(store: Store, ground: GroundLook): void {
  store.set({ ground });
}
