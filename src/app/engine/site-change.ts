/** A site as what it changes of another: after a drag one post crosses to the worker, not the whole drawing. */
import type { Site, SiteFeature } from '../../site/types.ts';

/** Null or a number stands for what the other site has: its settings, its feature in that place, the rest of its members. */
export interface SiteChange {
  readonly settings: Site['settings'] | null;
  readonly features: readonly (SiteFeature | number)[];
  readonly rest: Omit<Site, 'settings' | 'features'> | null;
}

/** What `to` changes of `from`; whatever is the very same object in both is left out. */
export function changeBetween(from: Site, to: Site): SiteChange {
  const places = new Map(from.features.map((feature, place) => [feature, place]));
  const { settings, features, ...rest } = to;
  const same = from.extra === to.extra && from.kept === to.kept && from.readFrom === to.readFrom;
  return {
    settings: settings === from.settings ? null : settings,
    features: features.map((feature) => places.get(feature) ?? feature),
    rest: same ? null : rest,
  };
}

/** The changed site. What was not changed is the very same object as in `from`, so that it can be told at a glance. */
export function changedSite(from: Site, { settings, features, rest }: SiteChange): Site {
  const { settings: before, features: old, ...others } = from;
  return {
    ...(rest ?? others),
    settings: settings ?? before,
    features: features.map((feature) => (typeof feature === 'number' ? old[feature]! : feature)),
  };
}
