/** Put a post on the land. */
import type { LonLat, Site } from '../site/types.ts';
import { addFeature } from './add-feature.ts';
import type { Edit } from './edit.ts';

/** Adds a post at a place: a candidate, unless the properties say otherwise. */
export function addPost(site: Site, at: LonLat, properties: Readonly<Record<string, unknown>> = {}): Edit {
  const geometry = { type: 'Point' as const, coordinates: [...at] };
  return addFeature(site, { kind: 'post', geometry, properties: { state: 'candidate', ...properties } });
}
