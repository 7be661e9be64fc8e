/** What the file holds but could not be used: throw it away, or use it once it has a kind that is known. */
import { isObject } from '../site/json.ts';
import { kindWord } from '../site/label.ts';
import { readFeature } from '../site/read-feature.ts';
import type { Kind, Site } from '../site/types.ts';
import { type Edit, freeIds, settle, withFeatures } from './edit.ts';

function withoutKept(site: Site, index: number): Site {
  if (!site.kept?.[index]) throw new Error(`nothing kept at ${index}`);
  const kept = site.kept.toSpliced(index, 1);
  const { kept: _all, ...rest } = withFeatures(site, site.features);
  return kept.length > 0 ? { ...rest, kept } : rest;
}

/** Deletes a kept entry for good. `index` counts in `site.kept`. */
export function deleteKept(site: Site, index: number): Edit {
  return { site: withoutKept(site, index), sentence: 'Deleted an entry that could not be used' };
}

/** Gives a kept feature a kind, and with it takes it into use when its geometry allows. */
export function giveKind(site: Site, index: number, kind: Kind): Edit {
  const rest = withoutKept(site, index);
  const raw = site.kept?.[index]?.feature;
  if (!isObject(raw)) return { refused: 'The entry is not a feature. Delete it.' };
  const properties = isObject(raw.properties) ? raw.properties : {};
  const { features, issues } = readFeature({ ...raw, properties: { ...properties, kind } }, 0, freeIds(rest));
  const error = issues.find(({ severity }) => severity === 'error');
  if (features.length === 0)
    return { refused: `${error?.sentence ?? 'It cannot be used.'} ${error?.fix ?? ''}`.trim() };
  return settle(rest, features, `Made an unused entry ${kindWord(kind).toLowerCase()}`);
}
