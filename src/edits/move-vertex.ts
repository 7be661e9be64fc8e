/** Move a corner; borders that neighbours share follow. */
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import { samePlace } from '../site/positions.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { type Corner, chainsOf, mapChains, positionAt } from './chains.ts';
import { type Edit, featureOf, rounded, type Sharing, settle, withGeometry } from './edit.ts';

/** Moves a corner of a line or area to `to`. Corners of other lines and areas at exactly the same position go with it. */
export function moveVertex(site: Site, id: string, corner: Corner, to: LonLat, { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  const from = positionAt(feature.geometry, corner);
  const target = rounded([to[0], to[1], ...from.slice(2)]);
  const own = movedCorner(feature, corner, target);
  const others = shared ? site.features.filter((other) => other !== feature && hasCorner(other, from)) : [];
  const follow = others.map((other) => movedPlace(other, from, target));
  const with_ = follow.length > 0 ? ` with ${follow.length === 1 ? 'its neighbor' : `${follow.length} neighbors`}` : '';
  return settle(site, [own, ...follow], `Moved a corner of ${label(feature)}${with_}`);
}

/** Whether a line or area has a corner at exactly this position. */
export function hasCorner({ geometry }: SiteFeature, place: Position): boolean {
  return chainsOf(geometry).some(({ corners }) => corners.some((corner) => samePlace(corner, place)));
}

function movedCorner(feature: SiteFeature, { chain, corner }: Corner, to: Position): SiteFeature {
  const geometry = mapChains(feature.geometry!, (corners, n) => (n === chain ? corners.with(corner, to) : corners));
  return withGeometry(feature, geometry);
}

function movedPlace(feature: SiteFeature, from: Position, to: Position): SiteFeature {
  const geometry = mapChains(feature.geometry!, (corners) =>
    corners.map((corner) => (samePlace(corner, from) ? [to[0]!, to[1]!, ...corner.slice(2)] : corner)),
  );
  return withGeometry(feature, geometry);
}
