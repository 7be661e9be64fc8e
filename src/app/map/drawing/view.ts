/** Where the map looks while land is drawn. */
import type { Map as MapLibre } from 'maplibre-gl';
import type { Offer } from '../../land-state.ts';

/** Room around what is looked at, px, and how near the map goes by itself. */
const padding = 60;
const nearest = 19.5;

/** Offered places out of sight are brought into sight; the map stays where it is when all can be seen. */
export function showOffers(map: MapLibre, offers: readonly Offer[]): void {
  const seen = map.getBounds();
  if (offers.every(({ at }) => seen.contains(at))) return;
  const [lons, lats] = [offers.map(({ at }) => at[0]), offers.map(({ at }) => at[1])];
  const maxZoom = Math.min(map.getZoom(), nearest);
  map.fitBounds([Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)], {
    padding,
    maxZoom,
    duration: 0,
  });
}

/** Looks at west, south, east, north. */
export function lookAt(map: MapLibre, [west, south, east, north]: readonly [number, number, number, number]): void {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  map.fitBounds([west, south, east, north], { padding, maxZoom: nearest, duration: still ? 0 : 300 });
}
