/** The door for foreign files: bytes in, drafts and a full account out. Count in = count out: every thing of the file is kept or named as dropped. */
import type { Issue } from '../site/types.ts';
import { type AttributeSummary, attributeValues } from './attribute-values.ts';
import { placedFeatures } from './axes.ts';
import type {
  Ask,
  Draft,
  FeatureNote,
  ImportFormat,
  ImportOptions,
  ImportReport,
  RawFeature,
  ReadFeature,
} from './import-types.ts';
import { count, fileIssue } from './issue.ts';
import { importLimits, megabytes } from './limits.ts';
import { applyMapping, type Mapping } from './mapping.ts';
import { startingMapping } from './presets.ts';
import { readRaw } from './read-raw.ts';
import { tidyGeometry } from './tidy.ts';
import { touches } from './within.ts';

/** A file read and checked, not yet mapped. `format` is null when it could not be told; `ask` = something only the person knows. */
export interface ReadFile {
  readonly format: ImportFormat | null;
  readonly features: readonly ReadFeature[];
  readonly attributes: readonly AttributeSummary[];
  /** Things of the file, and those already lost. */
  readonly read: number;
  readonly dropped: readonly FeatureNote[];
  readonly repaired: readonly FeatureNote[];
  readonly issues: readonly Issue[];
  readonly ask: Ask | null;
}

/** What the file becomes under a mapping. */
export interface Imported {
  readonly features: readonly Draft[];
  readonly report: ImportReport;
  readonly issues: readonly Issue[];
  readonly ask: Ask | null;
  readonly format: ImportFormat | null;
}

/** Reads and maps in one go. `mapping` is the remembered one, else the starting mapping of the format. Throws only on a caller's mistake. */
export function importFile(
  bytes: Uint8Array,
  fileName: string,
  options: ImportOptions & { readonly mapping?: Mapping } = {},
): Imported {
  const file = readFile(bytes, fileName, options);
  return mapFile(file, options.mapping ?? startingMapping(file.format ?? 'geojson'));
}

/** Reads and checks a file. Synchronous and free of the page: run it in a worker, and end the worker to cancel. */
export function readFile(bytes: Uint8Array, fileName: string, options: ImportOptions = {}): ReadFile {
  const tell = options.onProgress ?? (() => {});
  const size = sizeIssue(bytes.length);
  if (size?.severity === 'error') return refused(null, [size]);
  tell(0.05, 'Reading');
  const raw = readRaw(bytes, fileName, options);
  const issues = [...(size ? [size] : []), ...raw.issues];
  const many = tooMany(raw.features);
  if (many) return refused(raw.format, [...issues, many]);
  tell(0.5, 'Checking places');
  const placed = placedFeatures(raw, options);
  if (placed.ask) return { ...refused(raw.format, [...issues, ...placed.issues]), ask: placed.ask };
  const checked = check(placed.features, options);
  tell(0.9, 'Counting attributes');
  return {
    format: raw.format,
    ...checked,
    attributes: attributeValues(checked.features),
    read: raw.features.length,
    issues: [...issues, ...placed.issues],
    ask: raw.ask ?? null,
  };
}

/** Applies a mapping to a file already read: cheap, so it can be done again at every change of a rule. */
export function mapFile(file: ReadFile, mapping: Mapping): Imported {
  const { drafts, left, repaired } = applyMapping(file.features, mapping);
  const kept = new Set(drafts.map((draft) => draft.source));
  const lost = left.filter((one) => !kept.has(one.source));
  const parts = left
    .filter((one) => kept.has(one.source))
    .map(({ what, why }) => ({ what, why: `a part was left out: ${why}` }));
  const report: ImportReport = {
    read: file.read,
    kept: kept.size,
    made: drafts.length,
    dropped: [...file.dropped, ...oncePerThing(lost)],
    repaired: [...file.repaired, ...repaired, ...parts],
  };
  return { features: drafts, report, issues: file.issues, ask: file.ask, format: file.format };
}

/** The account in one sentence for the preview: "Read 120 things: 100 kept (102 shapes), 20 left out, 3 repaired." */
export function reportSentence(report: ImportReport): string {
  const shapes = report.made === report.kept ? '' : ` (${count(report.made, 'shape')})`;
  const mended = new Set(report.repaired.map((one) => one.what)).size;
  return `Read ${count(report.read, 'thing')}: ${figure(report.kept)} kept${shapes}, ${figure(report.dropped.length)} left out, ${figure(mended)} repaired.`;
}

const figure = (n: number) => n.toLocaleString('en-US');

function oncePerThing(notes: readonly (FeatureNote & { readonly source: number })[]): FeatureNote[] {
  const bySource = new Map<number, FeatureNote>();
  for (const { source, what, why } of notes) if (!bySource.has(source)) bySource.set(source, { what, why });
  return [...bySource.values()];
}

function check(features: readonly RawFeature[], options: ImportOptions) {
  const kept: ReadFeature[] = [];
  const dropped: FeatureNote[] = [];
  const repaired: FeatureNote[] = [];
  features.forEach((feature, source) => {
    const { from, attributes } = feature;
    const tidied = feature.geometry
      ? tidyGeometry(feature.geometry)
      : { shapes: [], repaired: [], why: feature.trouble ?? 'it has no geometry' };
    const shapes = options.within ? tidied.shapes.filter((shape) => touches(shape, options.within!)) : tidied.shapes;
    if (shapes.length === 0) dropped.push({ what: from, why: tidied.why || 'it lies outside the part asked for' });
    else repaired.push(...[...(feature.repaired ?? []), ...tidied.repaired].map((why) => ({ what: from, why })));
    kept.push(...shapes.map((geometry) => ({ from, source, geometry, attributes })));
  });
  return { features: kept, dropped, repaired };
}

function refused(format: ImportFormat | null, issues: readonly Issue[]): ReadFile {
  return { format, features: [], attributes: [], read: 0, dropped: [], repaired: [], issues, ask: null };
}

function sizeIssue(bytes: number): Issue | null {
  const size = megabytes(bytes);
  if (bytes > importLimits.mostBytes) {
    const sentence = `The file is ${size}; more than ${megabytes(importLimits.mostBytes)} is not read.`;
    return fileIssue('error', 'file-too-big', sentence, 'Cut it to the site first, or export fewer layers.');
  }
  if (bytes <= importLimits.warnBytes) return null;
  return fileIssue(
    'warning',
    'file-big',
    `The file is ${size}: reading takes a while.`,
    'Cut it to the site for quick work.',
  );
}

function tooMany(features: readonly RawFeature[]): Issue | null {
  const vertices = features.reduce((sum, feature) => sum + vertexCount(feature.geometry), 0);
  const over =
    features.length > importLimits.mostFeatures
      ? count(features.length, 'thing')
      : vertices > importLimits.mostVertices
        ? count(vertices, 'position')
        : null;
  const most = `${importLimits.mostFeatures.toLocaleString('en-US')} things or ${importLimits.mostVertices.toLocaleString('en-US')} positions`;
  return over === null
    ? null
    : fileIssue(
        'error',
        'file-too-big',
        `The file holds ${over}; at most ${most} are read.`,
        'Cut it to the site first.',
      );
}

function vertexCount(value: unknown): number {
  if (Array.isArray(value))
    return typeof value[0] === 'number' ? 1 : value.reduce((sum: number, one) => sum + vertexCount(one), 0);
  if (typeof value !== 'object' || value === null) return 0;
  const { coordinates, geometries } = value as { coordinates?: unknown; geometries?: unknown };
  return vertexCount(coordinates) + (Array.isArray(geometries) ? vertexCount(geometries) : 0);
}
