/** Which format a file is, told by what is in it (its name only helps with tables), and the reader for it. To add a format: a file `import-….ts` and a line here. */
import { decodeText } from './decode-text.ts';
import { readCsv } from './import-csv.ts';
import { readGeojson } from './import-geojson.ts';
import { readGpx } from './import-gpx.ts';
import { readKml } from './import-kml.ts';
import { readKmz } from './import-kmz.ts';
import { readShapefile } from './import-shapefile.ts';
import type { ImportFormat, ImportOptions, RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { listZip } from './zip.ts';

type Raw = RawFile & { readonly format: ImportFormat | null };

/** Reads any of the formats. What cannot be read has no features and an issue that says what it seems to be. */
export function readRaw(bytes: Uint8Array, fileName: string, options: ImportOptions): Raw {
  if (bytes.length === 0) return refuse('file-empty', 'The file is empty.', 'Export it again.');
  const foreign = signatures.find(({ start }) => start.every((byte, i) => bytes[i] === byte));
  if (foreign?.what === 'zip') return readZip(bytes, options);
  if (foreign) return refuse('not-a-map', `This is ${foreign.what}, not a map file.`, foreign.fix);
  const { text, issues } = decodeText(bytes);
  if (text === null) return { format: null, features: [], issues };
  const raw = readText(text.replace(/^\ufeff/, ''), fileName, options);
  return { ...raw, issues: [...issues, ...raw.issues] };
}

/** First bytes of files that people choose by mistake. */
const signatures: readonly { readonly what: string; readonly start: readonly number[]; readonly fix: string }[] = [
  { what: 'zip', start: [0x50, 0x4b], fix: '' },
  { what: 'a gzip file', start: [0x1f, 0x8b], fix: 'Unpack it first.' },
  { what: 'a PDF', start: [0x25, 0x50, 0x44, 0x46], fix: 'Lay a picture of the page under the drawing instead.' },
  { what: 'a PNG picture', start: [0x89, 0x50, 0x4e, 0x47], fix: 'Lay it under the drawing instead.' },
  { what: 'a JPEG picture', start: [0xff, 0xd8, 0xff], fix: 'Lay it under the drawing instead.' },
  {
    what: 'a TIFF picture',
    start: [0x49, 0x49, 0x2a, 0x00],
    fix: 'Lay it under the drawing, or make woods from its heights.',
  },
  {
    what: 'a TIFF picture',
    start: [0x4d, 0x4d, 0x00, 0x2a],
    fix: 'Lay it under the drawing, or make woods from its heights.',
  },
  {
    what: 'a GeoPackage or other database',
    start: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65],
    fix: 'Turn it into GeoJSON first: ogr2ogr out.geojson in.gpkg',
  },
  {
    what: 'a shapefile without its zip',
    start: [0x00, 0x00, 0x27, 0x0a],
    fix: 'Zip the .shp, .dbf and .prj files together and choose the zip.',
  },
];

function readText(text: string, fileName: string, options: ImportOptions): Raw {
  const first = text.trimStart().charAt(0);
  const table = /\.(csv|tsv|txt|tab)$/i.test(fileName);
  if (first === '<') return readXmlText(text);
  if (!table && (first === '{' || first === '[')) return { format: 'geojson', ...readGeojson(text) };
  if (table || /[,;\t|]/.test(text.slice(0, 5000).split('\n')[0] ?? ''))
    return { format: 'csv', ...readCsv(text, options) };
  return refuse(
    'not-a-map',
    'This is text, but none of GeoJSON, GPX, KML or a table.',
    'Choose one of these, a KMZ or a zipped shapefile.',
  );
}

function readXmlText(text: string): Raw {
  const root = /<(?![?!])(?:[\w.-]+:)?([\w.-]+)/.exec(text.replace(/<!--[\s\S]*?-->/g, ''))?.[1] ?? '';
  if (root.toLowerCase() === 'html')
    return refuse('not-a-map', 'This is a web page, not a map file.', 'Download the file itself.');
  return root === 'gpx' ? { format: 'gpx', ...readGpx(text) } : { format: 'kml', ...readKml(text) };
}

function readZip(bytes: Uint8Array, options: ImportOptions): Raw {
  const { entries, issues } = listZip(bytes);
  if (issues.some((issue) => issue.severity === 'error')) return { format: null, features: [], issues };
  const has = (ending: RegExp) => entries.some((entry) => ending.test(entry.name));
  const read: Raw | null = has(/\.kml$/i)
    ? { format: 'kmz', ...readKmz(bytes, entries) }
    : has(/\.shp$/i)
      ? { format: 'shapefile', ...readShapefile(bytes, entries, options.projection) }
      : null;
  if (read) return { ...read, issues: [...issues, ...read.issues] };
  const none = refuse(
    'zip-no-map',
    'There is no KML and no shapefile in the zip.',
    'Unpack it and choose the map file inside.',
  );
  return { ...none, issues: [...issues, ...none.issues] };
}

function refuse(id: string, sentence: string, fix: string): Raw {
  return { format: null, features: [], issues: [fileIssue('error', id, sentence, fix)] };
}
