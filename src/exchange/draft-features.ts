/** Drafts as site features, ready for the one edit that brings them in (`edits/import-features.ts`). */
import { Ids } from '../site/ids.ts';
import type { SiteFeature } from '../site/types.ts';
import type { Draft } from './import-types.ts';

/** Ids a file of ours gave are kept (once each, so that pairs still find each other); other things get `kind-1`, `kind-2` … */
export function draftFeatures(drafts: readonly Draft[]): SiteFeature[] {
  const ids = new Ids(drafts.flatMap((draft) => draft.id ?? []));
  return drafts.map(({ id, kind, geometry, properties }) => ({
    id: id !== null && ids.take(id) ? id : ids.free(kind),
    kind,
    geometry,
    properties: { kind, ...properties },
  }));
}
