/** Set what is known of a thing: height, sprayed, name … */

import { label } from '../site/label.ts';
import { hasProperty, type PropertyName, propertyRows } from '../site/property-table.ts';
import { propertyTrouble } from '../site/property-trouble.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { type Edit, featuresOf, namesOf, withFeatures } from './edit.ts';

/** Sets a property of features; undefined takes it away. Unknown names are allowed, bad values of known ones refused. */
export function setProperty(site: Site, ids: readonly string[], name: string, value: unknown): Edit {
  if (name === 'kind' || name === '__proto__') throw new Error(`not a property to set: ${name}`);
  const features = featuresOf(site, ids);
  const refused = features.map((feature) => refusal(feature, name, value)).find((reason) => reason !== null);
  if (refused) return { refused };
  const chosen = new Set(features);
  const changed = site.features.map((feature) => (chosen.has(feature) ? withProperty(feature, name, value) : feature));
  const did = value === undefined ? `Took ${name} from` : `Set ${name} of`;
  return { site: withFeatures(site, changed), sentence: `${did} ${namesOf(features)}` };
}

/** The feature with the property set, or taken away when undefined. */
export function withProperty(feature: SiteFeature, name: string, value: unknown): SiteFeature {
  const { [name]: _old, ...others } = feature.properties;
  return { ...feature, properties: value === undefined ? others : { ...feature.properties, [name]: value } };
}

/** Why the value cannot be used for the feature; null when it can. */
export function refusal(feature: SiteFeature, name: string, value: unknown): string | null {
  if (!Object.hasOwn(propertyRows, name)) return null;
  const row = propertyRows[name as PropertyName];
  if (!hasProperty(feature.kind, name as PropertyName)) return `${label(feature)} has no ${name}.`;
  const trouble = propertyTrouble(row, value);
  if (!trouble) return null;
  const wanted =
    row.words?.join(', ') ?? (row.range ? `${row.range[0]} to ${row.range[1]} ${row.unit ?? ''}`.trim() : row.type);
  return `${name} of ${label(feature)} cannot be ${JSON.stringify(value)}. Give ${wanted}.`;
}
