/** Move whole things. */
import type { LonLat, Site } from '../site/types.ts';
import { mapPositions } from './chains.ts';
import { type Edit, featuresOf, namesOf, rounded, settle, withGeometry } from './edit.ts';

/** Moves features by degrees of longitude and latitude. */
export function moveFeatures(site: Site, ids: readonly string[], [east, north]: LonLat): Edit {
  const features = featuresOf(site, ids);
  const placed = features.filter(({ geometry }) => geometry !== null);
  if (placed.length === 0) return { refused: 'Nothing that has a place is selected. Select what is to be moved.' };
  const moved = placed.map((feature) => {
    const geometry = mapPositions(feature.geometry!, (p) => rounded([p[0]! + east, p[1]! + north, ...p.slice(2)]));
    return withGeometry(feature, geometry);
  });
  return settle(site, moved, `Moved ${namesOf(placed)}`);
}
