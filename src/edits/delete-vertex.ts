/** Take a corner out of a line or outline, never below what it needs to be one. */
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import { samePlace } from '../site/positions.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { beside, type Corner, chainsOf, mapChains, positionAt } from './chains.ts';
import { type Edit, featureOf, type Sharing, settle, withGeometry } from './edit.ts';

/** Deletes a corner. Where a neighbour shares the border on both sides of it, it goes there too. */
export function deleteVertex(site: Site, id: string, corner: Corner, { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  const place = positionAt(feature.geometry, corner);
  const chain = chainsOf(feature.geometry)[corner.chain]!;
  const least = chain.closed ? 3 : 2;
  if (chain.corners.length <= least) {
    const what = chain.closed ? `needs at least ${least} corners` : `needs its ${least} ends`;
    return {
      refused: `${label(feature)} ${what}. Delete the whole ${chain.closed ? 'area or hole' : 'line'} instead.`,
    };
  }
  const own = mapChains(feature.geometry!, (corners, n) =>
    n === corner.chain ? corners.toSpliced(corner.corner, 1) : corners,
  );
  const follow = shared ? neighboursWithout(site.features, feature, place, beside(chain, corner.corner)) : [];
  return settle(site, [withGeometry(feature, own), ...follow], `Deleted a corner of ${label(feature)}`);
}

function neighboursWithout(
  features: readonly SiteFeature[],
  feature: SiteFeature,
  place: Position,
  [before, after]: readonly [Position | undefined, Position | undefined],
): SiteFeature[] {
  if (!before || !after) return [];
  return features.flatMap((other) => {
    const chains = other === feature ? [] : chainsOf(other.geometry);
    const at = chains.map((chain) => {
      const i = chain.corners.findIndex((corner) => samePlace(corner, place));
      const [p, q] = i < 0 ? [] : beside(chain, i);
      const along =
        p && q && ((samePlace(p, before) && samePlace(q, after)) || (samePlace(p, after) && samePlace(q, before)));
      return along && chain.corners.length > 3 ? i : -1;
    });
    if (at.every((i) => i < 0)) return [];
    const geometry = mapChains(other.geometry!, (corners, n) => (at[n]! < 0 ? corners : corners.toSpliced(at[n]!, 1)));
    return [withGeometry(other, geometry)];
  });
}
