/** The five places in the order of the job: each is one element in `elements/place-*`, loaded when it is first opened. */
import type { KeepingState } from './keeping-state.ts';
import type { Place } from './state.ts';

export interface PlaceRow {
  readonly tag: string;
  readonly load: () => Promise<unknown>;
}

export const placeRows: Readonly<Record<Place, PlaceRow>> = {
  land: { tag: 'mp-place-land', load: () => import('./elements/place-land/place-land.ts') },
  posts: { tag: 'mp-place-posts', load: () => import('./elements/place-posts/place-posts.ts') },
  round: { tag: 'mp-place-round', load: () => import('./elements/place-round/place-round.ts') },
  paper: { tag: 'mp-place-paper', load: () => import('./elements/place-paper/place-paper.ts') },
  season: { tag: 'mp-place-season', load: () => import('./elements/place-season/place-season.ts') },
};

/** What can lie over the open place. */
export const overRows: Readonly<Record<KeepingState['page'], PlaceRow | null>> = {
  closed: null,
  library: { tag: 'mp-site-library', load: () => import('./elements/site-library/site-library.ts') },
  recovery: { tag: 'mp-recovery', load: () => import('./elements/recovery/recovery.ts') },
};
