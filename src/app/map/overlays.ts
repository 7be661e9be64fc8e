/** What the program draws over the land, bottom first. A new overlay: its file in `overlays/` and its line here. */

import type { AppState } from '../state.ts';
import { drawing } from './drawing/drawing.ts';
import type { MapHost, Overlay } from './host.ts';
import { isBound } from './overlays/binding-shapes.ts';
import { boxes } from './overlays/boxes.ts';
import { hand } from './overlays/hand.ts';
import { leftOut } from './overlays/left-out.ts';
import { lie } from './overlays/lie.ts';
import { reasons } from './overlays/reasons.ts';
import { round } from './overlays/round.ts';

type Maker = (host: MapHost) => Overlay;

const onPhoto = (state: AppState) => state.ground === 'photo';
const isBeside = (state: AppState) => state.posts.beside !== null;
const inSeason = (state: AppState) => state.place === 'season';

const makers: readonly Maker[] = [
  late(onPhoto, async () => (await import('./overlays/pictures.ts')).pictures),
  lie,
  leftOut,
  late(isBound, async () => (await import('./overlays/binding.ts')).binding),
  reasons,
  round,
  late(inSeason, async () => (await import('./overlays/outcomes.ts')).outcomes),
  boxes,
  late(isBeside, async () => (await import('./overlays/beside.ts')).beside),
  hand,
  drawing,
  late(onPhoto, async () => (await import('./overlays/picture-tool.ts')).pictureTool),
];

/** One of each, for one map. */
export function makeOverlays(host: MapHost): Overlay[] {
  return makers.map((make) => make(host));
}

/** An overlay that few need is fetched when it is first wanted, and then told of every change like any other. */
function late(wanted: (state: AppState) => boolean, load: () => Promise<Maker>): Maker {
  return (host) => {
    let overlay: Overlay | null = null;
    let asked = false;
    let gone = false;
    const start = async () => {
      const make = await load();
      if (gone) return;
      overlay = make(host);
      overlay.update(host.store.state, null);
    };
    return {
      update(state, before) {
        if (overlay) overlay.update(state, before);
        else if (!asked && wanted(state)) {
          asked = true;
          void start();
        }
      },
      press: (press) => overlay?.press?.(press) ?? false,
      remove() {
        gone = true;
        overlay?.remove?.();
      },
    };
  };
}
