/** GeoJSON of any origin: collection, feature, bare geometry, or one feature a line. Read as text first, so that depth and 1e999 are seen. */
import type { Geometry } from 'geojson';
import { type ScanResult, scanJson } from '../site/scan.ts';
import type { Issue } from '../site/types.ts';
import type { RawFeature, RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { importLimits } from './limits.ts';
import { safeRecord } from './records.ts';
import { oneLine } from './safe-text.ts';

/** Attributes: the feature's properties, with its id as `@id` when it has one. */
export function readGeojson(text: string): RawFile {
  const scan = scanJson(text, importLimits.mostDepth);
  if (scan.depth > importLimits.mostDepth)
    return failed('too-deep', `Brackets are nested more than ${importLimits.mostDepth} deep.`);
  try {
    const value = scan.secondDocument === null ? parse(text, scan.notFinite) : lines(text);
    const features = topFeatures(value);
    if (!features)
      return failed(
        'not-geojson',
        'This is JSON, but not GeoJSON: there is no FeatureCollection, Feature or geometry in it.',
      );
    return { features: features.map(rawFeature), issues: twice(scan.keysTwice.length), ...crsOf(value) };
  } catch (error) {
    return failed(
      'json-broken',
      `The file is not sound JSON: ${error instanceof Error ? error.message.slice(0, 150) : error}.`,
    );
  }
}

const geometryTypes = [
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
  'GeometryCollection',
];

/** JSON with NaN and Infinity as some programs write them, so that one bad number costs one feature and not the file. */
function parse(text: string, notFinite: ScanResult['notFinite']): unknown {
  const words = notFinite.filter(({ at, length }) => /[NI]/.test(text.slice(at, at + length)));
  if (words.length === 0) return JSON.parse(text);
  let from = 0;
  const parts = words.map(({ at, length }) => {
    const before = text.slice(from, at);
    from = at + length;
    return before;
  });
  return JSON.parse([...parts, text.slice(from)].join('null'));
}

function lines(text: string): unknown {
  return text
    .replaceAll('\u001e', '')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line));
}

type Loose = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Loose {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function topFeatures(value: unknown): unknown[] | null {
  if (Array.isArray(value)) return value.every(isObject) ? value.flatMap((one) => topFeatures(one) ?? [one]) : null;
  if (!isObject(value)) return null;
  if (value.type === 'FeatureCollection') return Array.isArray(value.features) ? value.features : null;
  if (value.type === 'Feature') return [value];
  return geometryTypes.includes(String(value.type)) ? [{ type: 'Feature', geometry: value, properties: {} }] : null;
}

function rawFeature(value: unknown, index: number): RawFeature {
  if (!isObject(value))
    return { from: `feature ${index + 1}`, geometry: null, attributes: {}, trouble: 'it is not an object' };
  const attributes = spread(safeRecord(value.properties));
  const id = typeof value.id === 'string' || typeof value.id === 'number' ? { '@id': value.id } : {};
  const name = oneLine(attributes.name ?? attributes.NAME ?? value.id);
  const from = `feature ${index + 1}${name ? ` “${name.slice(0, 60)}”` : ''}`;
  return { from, attributes: { ...attributes, ...id }, ...geometryOf(value) };
}

/** Some programs keep the tags of OpenStreetMap one level down: as an object `tags`, or (GDAL) as text in `other_tags`. */
function spread(attributes: Record<string, unknown>): Record<string, unknown> {
  const { tags, other_tags: packed } = attributes;
  const inner = isObject(tags) ? { ...tags } : {};
  const pairs = typeof packed === 'string' ? [...packed.matchAll(/"((?:[^"\\]|\\.)*)"=>"((?:[^"\\]|\\.)*)"/g)] : [];
  const unpacked = Object.fromEntries(pairs.map(([, key, value]) => [unescaped(key!), unescaped(value!)]));
  return Object.keys(inner).length + pairs.length === 0
    ? attributes
    : safeRecord({ ...unpacked, ...inner, ...attributes });
}

function unescaped(text: string): string {
  return text.replace(/\\(.)/g, '$1');
}

function geometryOf(feature: Loose): Pick<RawFeature, 'geometry' | 'trouble'> {
  const { geometry } = feature;
  if (geometry === null || geometry === undefined) return { geometry: null, trouble: 'it has no geometry' };
  const known = isObject(geometry) && geometryTypes.includes(String(geometry.type));
  if (!known) return { geometry: null, trouble: 'its geometry is of no known type' };
  return { geometry: geometry as unknown as Geometry };
}

/** Old files (GeoJSON 2008) could name their spatial reference. */
function crsOf(value: unknown): { projection?: string } {
  const crs = isObject(value) && isObject(value.crs) ? value.crs.properties : null;
  const name = isObject(crs) ? (crs.name ?? crs.code) : null;
  return typeof name === 'string' || typeof name === 'number' ? { projection: String(name) } : {};
}

function twice(number: number): Issue[] {
  const sentence = 'Some members are given twice in one object; the last of each was used.';
  return number === 0 ? [] : [fileIssue('warning', 'key-twice', sentence, 'Look at what was read.')];
}

function failed(id: string, sentence: string): RawFile {
  return { features: [], issues: [fileIssue('error', id, sentence, 'Choose a GeoJSON file.')] };
}
