/** A place found by numbers is put to use: the next corner of a shape, the place of the chosen thing or corner, or a new thing. */
import { addFeature } from '../../edits/add-feature.ts';
import { addPost } from '../../edits/add-post.ts';
import { movePost } from '../../edits/move-post.ts';
import { moveVertex } from '../../edits/move-vertex.ts';
import { shapeOf } from '../../site/kinds.ts';
import type { LonLat } from '../../site/types.ts';
import { draws } from '../map/drawing/sketch.ts';
import type { Store } from '../store.ts';
import { placeTrouble, putCorner } from './land-draw.ts';
import { change, chosenId, setLand } from './land-state.ts';
import { warnOfPlace } from './land-warn.ts';

/** What using a place would do now. */
export type PlaceUse = 'corner' | 'move-corner' | 'move' | 'new';

/** Half the target of an offered place, px. */
const reach = 26;

/** Which use it is: a shape in progress comes first, then a chosen corner, then a chosen point. */
export function placeUse(store: Store): PlaceUse {
  const { site, land } = store.state;
  if (draws(land.tool)) return 'corner';
  const chosen = site?.features.find(({ id }) => id === chosenId(store));
  if (chosen && land.corner) return 'move-corner';
  return chosen && shapeOf(chosen.kind) === 'point' ? 'move' : 'new';
}

/** Uses the place; true when it was done. The offers are then taken off the map. */
export function usePlace(store: Store, at: LonLat, extra: Readonly<Record<string, unknown>> = {}): boolean {
  const { site, land } = store.state;
  if (!site) return false;
  const wrong = placeTrouble(at, store);
  if (wrong) {
    setLand(store, { trouble: { sentence: wrong, at: null } });
    return false;
  }
  const use = placeUse(store);
  if (use === 'corner') {
    putCorner(store, at);
    setLand(store, { offers: [] });
    return true;
  }
  const id = chosenId(store);
  const answer =
    use === 'move-corner'
      ? moveVertex(site, id!, land.corner!, at, { shared: land.shared })
      : use === 'move'
        ? movePost(site, id!, at)
        : land.placed === 'post'
          ? addPost(site, at, extra)
          : addFeature(site, {
              kind: land.placed,
              geometry: { type: 'Point', coordinates: [...at] },
              properties: extra,
            });
  const done = change(store, answer);
  if (done) settle(store, use, id);
  return done;
}

function settle(store: Store, use: PlaceUse, id: string | null): void {
  setLand(store, { offers: [] });
  const touched = use === 'new' ? store.state.site?.features.at(-1)?.id : id;
  if (!touched) return;
  warnOfPlace(store, touched);
  if (use === 'new') store.set({ selection: { of: 'feature', id: touched } });
}

/** A press on the map near an offered place uses it; false when none is near. */
export function pressOffer(
  store: Store,
  press: { readonly x: number; readonly y: number },
  project: (at: LonLat) => { readonly x: number; readonly y: number },
): boolean {
  const near = store.state.land.offers.find(({ at }) => {
    const p = project(at);
    return Math.hypot(p.x - press.x, p.y - press.y) <= reach;
  });
  if (near) usePlace(store, near.at);
  return near !== undefined;
}
