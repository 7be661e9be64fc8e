/** Entries of the file that are kept but not used, each with its issue and what it may be. */
import { isObject } from '../../../site/json.ts';
import { cut } from '../../../site/label.ts';
import type { Issue, Site } from '../../../site/types.ts';

export interface KeptRow {
  /** Place in `site.kept`. */
  readonly index: number;
  readonly name: string;
  readonly issue: Issue | null;
  /** The word it has for its kind, "" when none; null = another kind would not help. */
  readonly guess: string | null;
}

/** In the order of the file. An issue belongs to the entry of its id, else to the next one of its sort. */
export function keptRows(site: Site, issues: readonly Issue[]): KeptRow[] {
  const free = [...issues];
  return (site.kept ?? []).map(({ feature, issue: id }, index) => {
    const properties = isObject(feature) && isObject(feature.properties) ? feature.properties : {};
    const own = isObject(feature) ? String(feature.id ?? '') : '';
    const at = free.findIndex((one) => one.id === id && (own === '' || one.feature === own));
    const other = at >= 0 ? at : free.findIndex((one) => one.id === id);
    const [issue = null] = other >= 0 ? free.splice(other, 1) : [];
    const name = typeof properties.name === 'string' && properties.name !== '' ? properties.name : own;
    const kindless = id === 'kind-missing' || id === 'kind-unknown' || id === 'wrong-geometry';
    return {
      index,
      name: cut(name || (issue?.feature ?? `${index + 1}`)),
      issue,
      guess: kindless ? String(properties.kind ?? '') : null,
    };
  });
}
