/** Put a corner into a line or outline; a border that a neighbour shares gets it too. */
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import { samePlace } from '../site/positions.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { beside, type Chain, type Corner, chainsOf, mapChains, positionAt } from './chains.ts';
import { type Edit, featureOf, rounded, type Sharing, settle, withGeometry } from './edit.ts';

/** Adds a corner at `at` after the given one. */
export function addVertex(site: Site, id: string, after: Corner, at: LonLat, { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  const place = rounded(at);
  const a = positionAt(feature.geometry, after);
  const [, b] = beside(chainsOf(feature.geometry)[after.chain]!, after.corner);
  if (!b) return { refused: `${label(feature)} ends at that corner. Choose a corner before its end.` };
  if (samePlace(a, place) || samePlace(b, place)) {
    return { refused: `${label(feature)} already has a corner there. Choose a place between two corners.` };
  }
  const own = mapChains(feature.geometry!, (corners, n) =>
    n === after.chain ? corners.toSpliced(after.corner + 1, 0, place) : corners,
  );
  const follow = shared ? insertedIntoNeighbours(site.features, feature, [a, b], place) : [];
  return settle(site, [withGeometry(feature, own), ...follow], `Added a corner to ${label(feature)}`);
}

/** The other features that have the very edge a–b, each with `place` put into it. */
export function insertedIntoNeighbours(
  features: readonly SiteFeature[],
  feature: SiteFeature,
  edge: readonly [Position, Position],
  place: Position,
): SiteFeature[] {
  return features.flatMap((other) => {
    if (other === feature || !chainsOf(other.geometry).some((chain) => edgeIn(chain, edge) >= 0)) return [];
    const geometry = mapChains(other.geometry!, (corners, _n, closed) => {
      const i = edgeIn({ corners, closed }, edge);
      return i < 0 ? corners : corners.toSpliced(i + 1, 0, place);
    });
    return [withGeometry(other, geometry)];
  });
}

/** The corner after which the edge runs, in either direction; -1 when the chain has no such edge. */
function edgeIn(chain: Chain, [a, b]: readonly [Position, Position]): number {
  return chain.corners.findIndex((corner, i) => {
    const [, next] = beside(chain, i);
    if (!next) return false;
    return (samePlace(corner, a) && samePlace(next, b)) || (samePlace(corner, b) && samePlace(next, a));
  });
}
