/** Move whole things. */
import type { Position } from 'geojson';
import { samePlace } from '../site/positions.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { chainsOf, mapChains, mapPositions } from './chains.ts';
import { type Edit, featuresOf, namesOf, rounded, type Sharing, settle, withGeometry } from './edit.ts';

/**
 * Moves features by degrees of longitude and latitude. With `shared`, corners of other lines and areas at exactly the same positions go
 * along, so that no gap opens; without (the rule of a plain move) the neighbors stay as they are.
 */
export function moveFeatures(
  site: Site,
  ids: readonly string[],
  [east, north]: LonLat,
  { shared = false }: Sharing = {},
): Edit {
  const features = featuresOf(site, ids);
  const placed = features.filter(({ geometry }) => geometry !== null);
  if (placed.length === 0) return { refused: 'Nothing that has a place is selected. Select what is to be moved.' };
  const step = (p: Position) => rounded([p[0]! + east, p[1]! + north, ...p.slice(2)]);
  const moved = placed.map((feature) => withGeometry(feature, mapPositions(feature.geometry!, step)));
  const follow = shared ? followers(site, placed, step) : [];
  const with_ = follow.length > 0 ? ` with the border of ${namesOf(follow)}` : '';
  return settle(site, [...moved, ...follow], `Moved ${namesOf(placed)}${with_}`);
}

/** Other lines and areas that have a corner where one of the moved things has one, that corner moved along. */
function followers(site: Site, placed: readonly SiteFeature[], step: (p: Position) => Position): SiteFeature[] {
  const key = (p: Position) => `${p[0]},${p[1]}`;
  const places = new Map<string, Position>();
  for (const { geometry } of placed)
    for (const { corners } of chainsOf(geometry)) for (const corner of corners) places.set(key(corner), corner);
  const goes = (p: Position) => {
    const own = places.get(key(p));
    return own !== undefined && samePlace(own, p);
  };
  return site.features
    .filter((other) => !placed.includes(other) && chainsOf(other.geometry).some(({ corners }) => corners.some(goes)))
    .map((other) =>
      withGeometry(
        other,
        mapChains(other.geometry!, (corners) => corners.map((p) => (goes(p) ? step(p) : p))),
      ),
    );
}
