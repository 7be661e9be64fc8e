/** Bring in features from elsewhere: one edit, however many. */
import type { Ids } from '../site/ids.ts';
import { postPair } from '../site/properties.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { mapPositions } from './chains.ts';
import { type Edit, freeIds, rounded, settle } from './edit.ts';
import { withProperty } from './set-property.ts';

/** Adds read features (see `readSite`). Ids that are taken are changed, and pairs among them follow. `from` is the file's name. */
export function importFeatures(site: Site, incoming: readonly SiteFeature[], from: string): Edit {
  if (incoming.length === 0) return { refused: `${from} holds nothing that can be used here.` };
  const ids = freeIds(site);
  const renamed = new Map(incoming.map(({ id, kind }) => [id, ids.has(id) ? ids.free(kind) : taken(ids, id)]));
  const features = incoming.map((feature) => landed(feature, renamed));
  const count = features.length === 1 ? '1 feature' : `${features.length} features`;
  return settle(site, features, `Brought in ${count} from ${from}`);
}

function taken(ids: Ids, id: string): string {
  ids.take(id);
  return id;
}

function landed(feature: SiteFeature, renamed: ReadonlyMap<string, string>): SiteFeature {
  const { numberId, ...rest } = feature;
  const id = renamed.get(feature.id) ?? feature.id;
  const geometry = feature.geometry && mapPositions(feature.geometry, rounded);
  const pair = postPair(feature);
  const own = { ...rest, id, geometry, ...(numberId && id === feature.id ? { numberId } : {}) };
  return pair !== null && renamed.has(pair) ? withProperty(own, 'pair', renamed.get(pair)) : own;
}
