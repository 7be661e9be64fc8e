/** Take a hole out of an area again. */
import { label } from '../site/label.ts';
import type { Site, SiteGeometry } from '../site/types.ts';
import { type Edit, featureOf, settle, withGeometry } from './edit.ts';

/** Fills the hole that is chain number `chain` of the area (see `chainsOf`). */
export function fillHole(site: Site, id: string, chain: number): Edit {
  const feature = featureOf(site, id);
  const { geometry } = feature;
  if (geometry?.type !== 'Polygon' && geometry?.type !== 'MultiPolygon')
    return { refused: `${label(feature)} is no area.` };
  const parts = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  let n = 0;
  const filled = parts.map((part) => part.filter((_ring, i) => n++ !== chain || i === 0));
  if (filled.flat().length === parts.flat().length) {
    return { refused: `That outline of ${label(feature)} is no hole. Choose a hole.` };
  }
  const [only] = filled;
  const next: SiteGeometry =
    geometry.type === 'Polygon' && only
      ? { type: 'Polygon', coordinates: only }
      : { type: 'MultiPolygon', coordinates: filled };
  return settle(site, [withGeometry(feature, next)], `Filled a hole in ${label(feature)}`);
}
