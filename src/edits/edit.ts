/** What an edit is and gives: a pure function from a site to a site with a sentence for the menu, or the reason why not. */
import type { Position } from 'geojson';
import { tooWide } from '../site/check-site.ts';
import { Ids } from '../site/ids.ts';
import { member } from '../site/json.ts';
import { label } from '../site/label.ts';
import { firstPlace } from '../site/positions.ts';
import { readGeometry } from '../site/read-geometry.ts';
import type { Site, SiteFeature, SiteGeometry } from '../site/types.ts';

/** `sentence` is what was done, for "Undo: …" and the status line. `refused` says why nothing was done and what to do instead. */
export type Edit = { readonly site: Site; readonly sentence: string } | { readonly refused: string };

/** Whether borders that neighbours share follow. On unless switched off. */
export interface Sharing {
  readonly shared?: boolean;
}

/** The site with other features. Drops what would be stale: the text it was read from, and bounding boxes. */
export function withFeatures(site: Site, features: readonly SiteFeature[]): Site {
  const { readFrom: _text, extra, ...rest } = site;
  const { bbox: _box, ...others } = extra ?? {};
  return { ...rest, features, ...(Object.keys(others).length > 0 ? { extra: others } : {}) };
}

/** The feature of this id. Asking for one that is not there is the caller's mistake. */
export function featureOf(site: Site, id: string): SiteFeature {
  const found = site.features.find((feature) => feature.id === id);
  if (!found) throw new Error(`no such feature: ${id}`);
  return found;
}

/** Several of them, in the order of the ids, each once. */
export function featuresOf(site: Site, ids: readonly string[]): SiteFeature[] {
  return [...new Set(ids)].map((id) => featureOf(site, id));
}

/** Gives out ids that neither a used nor a kept feature has. */
export function freeIds(site: Site): Ids {
  const kept = (site.kept ?? []).map(({ feature }) => String(member(feature, 'id') ?? ''));
  const ids = new Ids([]);
  for (const id of [...site.features.map((feature) => feature.id), ...kept]) ids.take(id);
  return ids;
}

/** The feature with another geometry; stale bounding boxes go. */
export function withGeometry(feature: SiteFeature, geometry: SiteGeometry): SiteFeature {
  const { extra, ...rest } = feature;
  const { bbox: _box, ...others } = extra ?? {};
  const { bbox: _inner, ...bare } = geometry;
  return { ...rest, geometry: bare, ...(Object.keys(others).length > 0 ? { extra: others } : {}) };
}

/** `value` rounded to 7 decimals of a degree, about a centimetre. */
function round7(value: number): number {
  return Math.round(value * 1e7) / 1e7 + 0;
}

/** A position as it is written: longitude and latitude to 7 decimals; a height stays. */
export function rounded(position: Position): Position {
  return [round7(position[0]!), round7(position[1]!), ...position.slice(2)];
}

/** The feature through the same gate as a file's: tidied, or refused with place and fix. */
export function checked(feature: SiteFeature): SiteFeature | { readonly refused: string } {
  const { geometries, issues } = readGeometry(feature.geometry, feature.kind, {
    id: feature.id,
    label: label(feature),
  });
  const [geometry] = geometries;
  if (geometry !== undefined) return { ...feature, geometry };
  const issue = issues.find(({ severity }) => severity === 'error');
  return { refused: `${issue?.sentence ?? `${label(feature)} cannot be drawn so.`} ${issue?.fix ?? ''}`.trim() };
}

/** Puts changed features in place of those with their ids, and new ones at the end, all checked. */
export function settle(site: Site, changed: readonly SiteFeature[], sentence: string): Edit {
  const byId = new Map<string, SiteFeature>();
  for (const feature of changed) {
    const good = checked(feature);
    if ('refused' in good) return good;
    byId.set(good.id, good);
  }
  const old = site.features.map((feature) => byId.get(feature.id) ?? feature);
  const known = new Set(site.features.map(({ id }) => id));
  const features = [...old, ...[...byId.values()].filter(({ id }) => !known.has(id))];
  const wide = farOff(features, changed) ? tooWide(features, 'this site') : null;
  return wide ? { refused: `${wide.sentence} ${wide.fix}` } : { site: withFeatures(site, features), sentence };
}

/** A cheap look before the whole span is measured: is any changed feature more than 0.2 degree from the first drawn one? */
function farOff(features: readonly SiteFeature[], changed: readonly SiteFeature[]): boolean {
  const first = features.find(({ geometry }) => geometry !== null);
  const home = first && firstPlace(first);
  if (!home) return false;
  return changed.some((feature) => {
    const place = firstPlace(feature);
    return place !== null && Math.max(Math.abs(place[0] - home[0]), Math.abs(place[1] - home[1])) > 0.2;
  });
}

/** "Woods “Long Spinney”", or "3 features". */
export function namesOf(features: readonly SiteFeature[]): string {
  const [first] = features;
  return features.length === 1 && first ? label(first) : `${features.length} features`;
}
