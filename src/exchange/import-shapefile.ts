/** Zipped shapefiles: every layer in the zip, attributes from its .dbf, places by its .prj. Shapes and rows are read by shpjs, never fetched. */
import { parseDbf, parseShp } from 'shpjs';
import type { Issue } from '../site/types.ts';
import type { Ask, RawFeature, RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { projectGeometry } from './project-geometry.ts';
import { type Projection, readProjection } from './projection.ts';
import { safeRecord } from './records.ts';
import { oneLine } from './safe-text.ts';
import { unpack, type ZipEntry } from './zip.ts';

/** `projection` stands in where a layer has no .prj, and wins over one that is not understood. */
export function readShapefile(bytes: Uint8Array, entries: readonly ZipEntry[], projection?: string): RawFile {
  const layers = entries.filter((entry) => /\.shp$/i.test(entry.name) && !entry.name.includes('__MACOSX'));
  const read = layers.map((layer) => guarded(layer, () => readLayer(bytes, entries, layer, projection)));
  const ask = read.find((layer) => layer.ask)?.ask;
  return {
    features: ask ? [] : read.flatMap((layer) => layer.features),
    issues: read.flatMap((layer) => layer.issues),
    ...(ask ? { ask } : {}),
  };
}

function guarded(layer: ZipEntry, read: () => RawFile): RawFile {
  try {
    return read();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return failed('shapefile-broken', `The layer ${layerName(layer)} is damaged: ${why}.`, 'Export it again.');
  }
}

function readLayer(bytes: Uint8Array, entries: readonly ZipEntry[], layer: ZipEntry, chosen?: string): RawFile {
  const part = (ending: string) => {
    const name = layer.name.replace(/\.shp$/i, ending).toLowerCase();
    const entry = entries.find((one) => one.name.toLowerCase() === name);
    return entry ? unpack(bytes, entry) : null;
  };
  const prj = part('.prj');
  const projection = projectionFor(prj && new TextDecoder().decode(prj), chosen);
  if (!projection) return askProjection(layer, prj !== null, chosen !== undefined);
  const shapes = parseShp(copied(unpack(bytes, layer)), false);
  const rows = readRows(part('.dbf'), part('.cpg'));
  const features = shapes.map((shape, i) => shapeFeature(layer, i, shape, rows[i], projection));
  return { features, issues: mismatch(layer, shapes.length, rows.length) };
}

/** shpjs reads from the start of the buffer behind the array, so it gets one of its own. */
function copied(bytes: Uint8Array): DataView {
  return new DataView(bytes.slice().buffer);
}

function projectionFor(prj: string | null, chosen?: string): Projection | null {
  return (prj === null ? null : readProjection(prj)) ?? (chosen === undefined ? null : readProjection(chosen));
}

function askProjection(layer: ZipEntry, hasPrj: boolean, tried: boolean): RawFile {
  const why = tried
    ? 'and the one you gave is not known'
    : hasPrj
      ? 'and its .prj file is not understood'
      : 'because it has no .prj file';
  const sentence = `The layer ${layerName(layer)} does not say in which projection it is drawn, ${why}.`;
  const hint = 'Give its EPSG code, such as EPSG:32617 for UTM zone 17 north, or EPSG:4326 for longitude and latitude.';
  const ask: Ask = { what: 'projection', sentence, hint };
  return { features: [], issues: [fileIssue('error', 'projection-unknown', sentence, hint)], ask };
}

function readRows(dbf: Uint8Array | null, cpg: Uint8Array | null): readonly Record<string, unknown>[] {
  if (!dbf) return [];
  const view = copied(dbf);
  const [records, headLength, rowLength] = [view.getUint32(4, true), view.getUint16(8, true), view.getUint16(10, true)];
  // A lying count would make the parser loop for minutes.
  if (rowLength === 0 || headLength + records * rowLength > dbf.length + rowLength)
    throw new Error('its table (.dbf) is cut off');
  return parseDbf(view, cpg ? new TextDecoder().decode(cpg) : undefined);
}

function shapeFeature(
  layer: ZipEntry,
  index: number,
  shape: RawFeature['geometry'],
  row: Record<string, unknown> | undefined,
  projection: Projection,
): RawFeature {
  const attributes = safeRecord(
    Object.fromEntries(Object.entries(row ?? {}).map(([key, value]) => [key, plainValue(value)])),
  );
  const name = oneLine(attributes.NAME ?? attributes.name ?? attributes.Name);
  const from = `${layerName(layer)}, shape ${index + 1}${name ? ` “${name.slice(0, 60)}”` : ''}`;
  if (!shape) return { from, attributes, geometry: null, trouble: 'it has no geometry' };
  return { from, attributes, geometry: projection.degrees ? shape : projectGeometry(shape, projection) };
}

/** Dates as the day they say; an empty text is no value. */
function plainValue(value: unknown): unknown {
  if (!(value instanceof Date)) return value === '' ? undefined : value;
  if (Number.isNaN(value.getTime())) return undefined;
  const two = (number: number) => String(number).padStart(2, '0');
  return `${value.getFullYear()}-${two(value.getMonth() + 1)}-${two(value.getDate())}`;
}

function layerName(layer: ZipEntry): string {
  return oneLine(layer.name.split('/').at(-1))
    .replace(/\.shp$/i, '')
    .slice(0, 60);
}

function mismatch(layer: ZipEntry, shapes: number, rows: number): Issue[] {
  if (shapes === rows || rows === 0) return [];
  const sentence = `The layer ${layerName(layer)} has ${shapes} shapes but ${rows} rows in its table; some attributes may belong to other shapes.`;
  return [fileIssue('warning', 'shapefile-uneven', sentence, 'Export it again and compare.')];
}

function failed(id: string, sentence: string, fix: string): RawFile {
  return { features: [], issues: [fileIssue('error', id, sentence, fix)] };
}
