/** Move a post, or another thing that is one point, to a place. */
import { shapeOf } from '../site/kinds.ts';
import { label } from '../site/label.ts';
import type { LonLat, Site } from '../site/types.ts';
import { type Edit, featureOf, rounded, settle, withGeometry } from './edit.ts';

/** Moves it there; a post listed without a place gets one. */
export function movePost(site: Site, id: string, to: LonLat): Edit {
  const feature = featureOf(site, id);
  if (shapeOf(feature.kind) !== 'point') throw new Error(`not a point: ${id}`);
  const old = feature.geometry?.type === 'Point' ? feature.geometry.coordinates.slice(2) : [];
  const geometry = { type: 'Point' as const, coordinates: rounded([to[0], to[1], ...old]) };
  return settle(site, [withGeometry(feature, geometry)], `Moved ${label(feature)}`);
}
