/** How a feature is called in sentences. */
import { nameOf } from './properties.ts';
import type { Kind, SiteFeature } from './types.ts';

/** "Short grass". */
export function kindWord(kind: Kind): string {
  return kind.charAt(0).toUpperCase() + kind.slice(1).replaceAll('-', ' ');
}

/** `Woods "Long Spinney"`, `Woods w-12` when it has no name. Long names are cut. */
export function label(feature: Pick<SiteFeature, 'id' | 'kind' | 'properties'>): string {
  const name = nameOf(feature);
  return `${kindWord(feature.kind)} ${name === null ? feature.id : `“${cut(name)}”`}`;
}

/** At most 60 characters. */
export function cut(text: string): string {
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
