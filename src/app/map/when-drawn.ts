/** Waits for the map's picture: what stood in for a thing on the map is put away when the thing itself is there. */
import type { Map as MapLibre } from 'maplibre-gl';

/** Runs `act` once a picture with the newest data of `sources` was painted; the answer forgets it. A change of the map must be on its way. */
export function whenDrawn(map: MapLibre, sources: readonly string[], act: () => void): () => void {
  const look = () => {
    if (!sources.every((id) => !map.getSource(id) || map.isSourceLoaded(id))) return;
    forget();
    act();
  };
  const forget = () => map.off('render', look);
  map.on('render', look);
  return forget;
}
