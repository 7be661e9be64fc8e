/** The door of the drawing tools in the map: loads them with the Land place and puts them away with it. */
import type { MapHost, Overlay } from '../host.ts';
import type { Desk } from './desk.ts';

export function drawing(host: MapHost): Overlay {
  let desk: Desk | null = null;
  let gone = false;
  let loading = false;
  const wanted = () => !gone && host.store.state.place === 'land';
  const load = async () => {
    loading = true;
    const part = await import('./desk.ts');
    loading = false;
    if (!wanted()) return;
    desk = new part.Desk(host);
    desk.update(host.store.state, null);
  };
  return {
    update(state, before) {
      if (!wanted()) {
        desk?.remove();
        desk = null;
      } else if (desk) desk.update(state, before);
      else if (!loading) void load();
    },
    press: () => wanted(),
    remove() {
      gone = true;
      desk?.remove();
      desk = null;
    },
  };
}
