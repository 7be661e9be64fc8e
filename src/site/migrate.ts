/** File versions: what this program reads, and what it says of files from elsewhere. */
import { trouble } from './issues.ts';
import { type JsonObject, member } from './json.ts';
import { cut } from './label.ts';
import type { Issue } from './types.ts';

/** The version this program writes. Version 1 is the first, so nothing has to be turned yet; a missing version counts as 1. */
export const fileVersion = 1;

/** Whether a site file was made by a newer program, judged by the issues of reading it: then it must not be saved over. */
export function isReadOnly(issues: readonly Issue[]): boolean {
  return issues.some(({ id }) => id === 'newer-version');
}

/** What the version and the datum of a collection make us say. */
export function versionIssues(raw: JsonObject, file: string): Issue[] {
  return [...newerVersion(raw, file), ...otherDatum(raw, file)];
}

function newerVersion(raw: JsonObject, file: string): Issue[] {
  const version = member(member(raw, 'meadowpost'), 'fileVersion');
  if (version === undefined || version === null || version === fileVersion) return [];
  if (typeof version === 'number' && version > fileVersion) {
    const sentence = `${file} was made by a newer Meadowpost (file version ${version}): opened read-only.`;
    return [trouble('newer-version', {}, sentence, 'Update the program, or save a copy under another name.')];
  }
  const sentence = `The file version of ${file} is ${cut(JSON.stringify(version))}; it is read as version ${fileVersion}.`;
  return [trouble('setting-out-of-range', {}, sentence, `Write "fileVersion": ${fileVersion}.`)];
}

const degrees = /CRS84|EPSG:{1,2}4326|EPSG::4326/i;

/** RFC 7946 §4 took `crs` away; files that still carry one other than WGS84 hold other numbers. */
function otherDatum(raw: JsonObject, file: string): Issue[] {
  const crs = member(raw, 'crs');
  const name = member(member(crs, 'properties'), 'name');
  if (crs === undefined || crs === null || (typeof name === 'string' && degrees.test(name))) return [];
  const what = typeof name === 'string' ? cut(name) : 'another coordinate system';
  const sentence = `${file} says that its positions are ${what}; they are read as WGS84 degrees.`;
  return [trouble('other-datum', {}, sentence, 'Convert the file to WGS84 longitude and latitude (EPSG:4326).')];
}
