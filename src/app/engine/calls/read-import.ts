/** A foreign file read and mapped away from the page. The file read last is kept, so that another mapping is quick. What the page gets is small: it must not stand still while it unpacks a county. */

import type { AttributeSummary } from '../../../exchange/attribute-values.ts';
import { type Imported, mapFile, type ReadFile, readFile, reportSentence } from '../../../exchange/import.ts';
import type { Ask, Draft, FeatureNote, ImportFormat, ImportOptions } from '../../../exchange/import-types.ts';
import type { Mapping } from '../../../exchange/mapping.ts';
import { startingMapping } from '../../../exchange/presets.ts';
import { eachPosition } from '../../../ground/frame.ts';
import type { Issue, SiteGeometry } from '../../../site/types.ts';
import { type PackedDrafts, packDrafts } from '../pack-drafts.ts';
import type { CallTools } from '../protocol.ts';

/** The file crosses as it is and is read on the worker's side; once for each `key` and options. */
export interface ImportQuestion {
  readonly key: string;
  readonly file: File;
  readonly options: Omit<ImportOptions, 'onProgress'>;
  /** Null = the starting mapping of the format. */
  readonly mapping: Mapping | null;
}

/** Notes of one sort: how many there are, and the first of them. */
export interface Notes {
  readonly count: number;
  readonly first: readonly FeatureNote[];
}

export interface ImportAnswer {
  readonly format: ImportFormat | null;
  readonly issues: readonly Issue[];
  readonly ask: Ask | null;
  /** The account in one sentence: count in = count out. */
  readonly account: string;
  readonly dropped: Notes;
  readonly repaired: Notes;
  /** Features it would become. */
  readonly count: number;
  /** The first shapes, for looking at. */
  readonly preview: readonly SiteGeometry[];
  /** Around all of them: west, south, east, north; null when there is none. */
  readonly box: readonly [number, number, number, number] | null;
  readonly packed: PackedDrafts;
  readonly mapping: Mapping;
  readonly attributes: readonly AttributeSummary[];
}

/** Shapes and positions shown, notes listed (ours: each takes the page a few milliseconds). */
const most = { shapes: 2000, positions: 10_000, notes: 200 } as const;

interface Kept {
  readonly key: string;
  readonly file: ReadFile;
}

/** One reader for one worker. */
export function makeImporter(): (question: ImportQuestion, tools: CallTools) => Promise<ImportAnswer> {
  let kept: Kept | null = null;
  return async ({ key, file, options, mapping }, tools) => {
    const whole = `${key} ${JSON.stringify(options)}`;
    if (kept?.key !== whole) {
      const onProgress = (share: number, doing: string) => tools.progress(share, doing);
      const bytes = new Uint8Array(await file.arrayBuffer());
      kept = { key: whole, file: readFile(bytes, file.name, { ...options, onProgress }) };
    }
    const used = mapping ?? startingMapping(kept.file.format ?? 'geojson');
    tools.progress(0.93, 'Sorting');
    return answerOf(mapFile(kept.file, used), used, kept.file.attributes);
  };
}

function answerOf(
  { features, report, issues, ask, format }: Imported,
  mapping: Mapping,
  attributes: readonly AttributeSummary[],
): ImportAnswer {
  return {
    format,
    issues,
    ask,
    account: reportSentence(report),
    dropped: notes(report.dropped),
    repaired: notes(report.repaired),
    count: features.length,
    preview: previewOf(features),
    box: boxOf(features),
    packed: packDrafts(features),
    mapping,
    attributes,
  };
}

function notes(all: readonly FeatureNote[]): Notes {
  return { count: all.length, first: all.slice(0, most.notes) };
}

function previewOf(features: readonly Draft[]): SiteGeometry[] {
  const shown: SiteGeometry[] = [];
  let positions = 0;
  for (const { geometry } of features) {
    if (shown.length >= most.shapes || positions > most.positions) break;
    eachPosition(geometry, () => positions++);
    shown.push(geometry);
  }
  return shown;
}

function boxOf(features: readonly Draft[]): ImportAnswer['box'] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features)
    eachPosition(geometry, (lon, lat) => {
      box[0] = Math.min(box[0], lon);
      box[1] = Math.min(box[1], lat);
      box[2] = Math.max(box[2], lon);
      box[3] = Math.max(box[3], lat);
    });
  return box.every(Number.isFinite) ? box : null;
}
