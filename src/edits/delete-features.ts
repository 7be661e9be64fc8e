/** Take things away. */
import { postPair } from '../site/properties.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { type Edit, featuresOf, namesOf, withFeatures } from './edit.ts';

/** Deletes features, and what pointed at them: the pair of the other post, the start of the round. */
export function deleteFeatures(site: Site, ids: readonly string[]): Edit {
  const gone = featuresOf(site, ids);
  if (gone.length === 0) return { refused: 'Nothing is selected. Select what is to be deleted.' };
  const without = new Set(ids);
  const features = site.features.filter(({ id }) => !without.has(id)).map((feature) => unpaired(feature, without));
  const start = site.settings.start;
  const settings = start !== null && without.has(start) ? { ...site.settings, start: null } : site.settings;
  return { site: withFeatures({ ...site, settings }, features), sentence: `Deleted ${namesOf(gone)}` };
}

function unpaired(feature: SiteFeature, without: ReadonlySet<string>): SiteFeature {
  const pair = postPair(feature);
  if (pair === null || !without.has(pair)) return feature;
  const { pair: _gone, ...properties } = feature.properties;
  return { ...feature, properties };
}
