/** Draw a new thing. */
import { label } from '../site/label.ts';
import type { Kind, Site, SiteGeometry } from '../site/types.ts';
import { mapPositions } from './chains.ts';
import { type Edit, freeIds, rounded, settle } from './edit.ts';

/** What is drawn. */
export interface NewFeature {
  readonly kind: Kind;
  readonly geometry: SiteGeometry | null;
  /** Without `kind`, which is added. */
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** Adds a feature at the end with an id of its own; the new feature is the last of the new site. */
export function addFeature(site: Site, { kind, geometry, properties = {} }: NewFeature): Edit {
  const feature = {
    id: freeIds(site).free(kind),
    kind,
    geometry: geometry && mapPositions(geometry, rounded),
    properties: { kind, ...properties },
  };
  return settle(site, [feature], `Added ${label(feature)}`);
}
