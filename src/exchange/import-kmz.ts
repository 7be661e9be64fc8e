/** KMZ: a zip with one KML in it. Pictures inside are not looked at. */
import { decodeText } from './decode-text.ts';
import { readKml } from './import-kml.ts';
import type { RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { unpack, type ZipEntry } from './zip.ts';

/** Reads `doc.kml`, else the first KML nearest the top of the zip. */
export function readKmz(bytes: Uint8Array, entries: readonly ZipEntry[]): RawFile {
  const entry = mainKml(entries);
  if (!entry) return failed('no-kml', 'There is no KML file in the zip.', 'Choose a KMZ or KML file.');
  try {
    const { text, issues } = decodeText(unpack(bytes, entry));
    if (text === null) return { features: [], issues };
    const file = readKml(text);
    return { ...file, issues: [...issues, ...file.issues, ...others(entries, entry)] };
  } catch (error) {
    return failed(
      'zip-broken',
      `The zip file is damaged: ${error instanceof Error ? error.message : error}.`,
      'Download or pack it again.',
    );
  }
}

function mainKml(entries: readonly ZipEntry[]): ZipEntry | undefined {
  const found = entries.filter((entry) => /\.kml$/i.test(entry.name));
  const depth = (entry: ZipEntry) => entry.name.split('/').length;
  return found.find((entry) => entry.name.toLowerCase() === 'doc.kml') ?? found.sort((a, b) => depth(a) - depth(b))[0];
}

function others(entries: readonly ZipEntry[], main: ZipEntry) {
  const left = entries.filter((entry) => entry !== main && /\.kml$/i.test(entry.name)).map((entry) => entry.name);
  const sentence = `The zip holds other KML files that were not read: ${left.slice(0, 5).join(', ')}.`;
  return left.length === 0
    ? []
    : [fileIssue('warning', 'more-kml', sentence, 'Unpack the zip and import them one by one.')];
}

function failed(id: string, sentence: string, fix: string): RawFile {
  return { features: [], issues: [fileIssue('error', id, sentence, fix)] };
}
