/** A foreign file on its way in: read in the worker, shown before anything changes, then one step of the history. */

import { freeIds } from '../../edits/edit.ts';
import { importFeatures } from '../../edits/import-features.ts';
import { sourceKey } from '../../exchange/attribute-values.ts';
import type { Draft } from '../../exchange/import-types.ts';
import { type Mapping, readMapping } from '../../exchange/mapping.ts';
import { middleOf } from '../../ground/frame.ts';
import type { SiteFeature } from '../../site/types.ts';
import type { ImportAnswer, ImportQuestion } from '../engine/calls/read-import.ts';
import { unpackDrafts } from '../engine/pack-drafts.ts';
import type { Store } from '../store.ts';
import { change } from './land-state.ts';

/** What the person settled so far about a file. */
export type Settled = Pick<ImportQuestion['options'], 'projection' | 'columns'>;

/** Reads a file; the mapping kept for such files is used unless another is given. */
export async function readForImport(
  store: Store,
  file: File,
  settled: Settled,
  mapping: Mapping | null,
  onProgress: (done: number | null, what: string) => void,
  signal: AbortSignal,
): Promise<ImportAnswer> {
  const placed = store.state.site?.features.filter(({ geometry }) => geometry !== null) ?? [];
  const near = placed.length > 0 ? { near: middleOf(placed) } : {};
  const key = `${file.name} ${file.size} ${file.lastModified}`;
  const question = { key, file, options: { ...settled, ...near }, mapping };
  const answer = await store.engine.call('readImport', question, { onProgress, signal });
  const kept = mapping ? null : keptMapping(answer);
  return kept ? store.engine.call('readImport', { ...question, mapping: kept }, { signal }) : answer;
}

const shelfKey = (answer: ImportAnswer) =>
  `meadowpost mapping: ${sourceKey(answer.format ?? 'geojson', answer.attributes)}`;

/** The mapping a person made for files of this source; null when none is kept. */
export function keptMapping(answer: ImportAnswer): Mapping | null {
  try {
    const text = localStorage.getItem(shelfKey(answer));
    return text === null ? null : readMapping(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Keeps the mapping for the next file of this source; where nothing can be kept it is simply asked again. */
export function keepMapping(answer: ImportAnswer): void {
  try {
    localStorage.setItem(shelfKey(answer), JSON.stringify(answer.mapping));
  } catch {
    // Private mode or full: the next file starts with the plain mapping.
  }
}

/** Drafts as features: their own ids where each stands once (the edit changes those the site has), new ones else. */
function featuresOf(store: Store, drafts: readonly Draft[]): SiteFeature[] {
  const { site } = store.state;
  if (!site) return [];
  const ids = freeIds(site);
  const own = new Set<string>();
  for (const { id } of drafts) if (id !== null) ids.take(id);
  return drafts.map(({ id, kind, geometry, properties }) => {
    const first = id !== null && !own.has(id);
    if (first) own.add(id);
    return { id: first ? id : ids.free(kind), kind, geometry, properties: { kind, ...properties } };
  });
}

/** Adds all drafts as one step that can be undone. True when it was done; not when another site was opened meanwhile. */
export async function takeImport(store: Store, answer: ImportAnswer, from: string): Promise<boolean> {
  const { site } = store.state;
  if (!site) return false;
  keepMapping(answer);
  const drafts = await unpackDrafts(answer.packed);
  if (store.state.site !== site) return false;
  return change(store, importFeatures(site, featuresOf(store, drafts), from));
}
