/** Text → JSON value, or the reason why not. Everything hostile about the text itself is stopped here. */
import { limits } from './defaults.ts';
import { trouble } from './issues.ts';
import { cut } from './label.ts';
import { lineAndColumn, type ScanResult, scanJson } from './scan.ts';
import type { Issue } from './types.ts';

/** What parsing gives. */
export interface Parsed {
  /** The JSON value; undefined when an error is among the issues. */
  readonly value: unknown;
  readonly issues: Issue[];
}

const startAgain = 'Save the site again from the program it came from, or open an earlier copy.';

function refuse(issue: Issue): Parsed {
  return { value: undefined, issues: [issue] };
}

/** Parses the text of a site file. `fileName` only goes into the sentences. */
export function parseText(text: string, fileName: string): Parsed {
  const tooBig = checkSize(text, fileName);
  if (tooBig?.severity === 'error') return refuse(tooBig);
  const issues = tooBig ? [tooBig] : [];
  let body = text;
  if (text.startsWith('\uFEFF')) {
    body = text.slice(1);
    issues.push(
      trouble(
        'byte-order-mark',
        {},
        `${fileName} started with an invisible byte order mark; it was removed.`,
        'Nothing to do; save the site to keep the repair.',
      ),
    );
  }
  const foreign = otherFile(body, fileName);
  if (foreign) return refuse(foreign);
  const scan = scanJson(body, limits.depth);
  const broken = scanTrouble(scan, body, fileName);
  if (broken) return refuse(broken);
  issues.push(...scanRepairs(scan, body));
  const value = parseJson(withoutNotFinite(body, scan));
  if (value === undefined) return refuse(breaksAt(body, body.length, 'cannot be read as JSON', fileName));
  return { value: scan.unsafeKeys.length > 0 ? withoutUnsafeKeys(value) : value, issues };
}

function checkSize(text: string, fileName: string): Issue | null {
  const megabytes = Math.round(text.length / 1e6);
  const fix = 'Cut the file to the site itself, or simplify outlines that were traced too finely.';
  if (text.length > limits.mostText) {
    const most = limits.mostText / 1e6;
    return trouble('file-too-big', {}, `${fileName} holds ${megabytes} MB of text; ${most} MB is the most.`, fix);
  }
  return text.length > limits.bigText
    ? trouble('file-big', {}, `${fileName} holds ${megabytes} MB of text; working on it will be slow.`, fix)
    : null;
}

/** Names the common files that are no JSON at all. */
function otherFile(text: string, fileName: string): Issue | null {
  const start = text.slice(0, 400).trimStart();
  if (start === '' && text.trim() === '') {
    return trouble('file-empty', {}, `${fileName} is empty.`, 'Choose another file, or start a new site.');
  }
  if (start.startsWith('PK\u0003') || start.startsWith('\u001f') || start.includes('\u0000')) {
    const fix = 'Unpack it first, or save it as text in UTF-8.';
    return trouble('not-text', {}, `${fileName} is not a text file in UTF-8.`, fix);
  }
  if (start.startsWith('<')) {
    const fix = 'Bring GPX, KML and other formats in with Import; a site file is GeoJSON.';
    return trouble('not-json', {}, `${fileName} is XML or a web page, not a site file.`, fix);
  }
  const first = start.charAt(0);
  if ('{["-0123456789tfnNI'.includes(first)) return null;
  const shown = first.codePointAt(0) === 0xfffd ? 'characters that are not text' : `“${first}”`;
  const fix = 'Bring tables and other formats in with Import; a site file is GeoJSON and starts with “{”.';
  return trouble('not-json', {}, `${fileName} starts with ${shown}, so it is not a site file.`, fix);
}

function breaksAt(text: string, at: number, what: string, fileName: string): Issue {
  const { line, column } = lineAndColumn(text, at);
  return trouble('json-broken', {}, `${fileName} ${what} at line ${line}, column ${column}.`, startAgain);
}

function scanTrouble(scan: ScanResult, text: string, fileName: string): Issue | null {
  if (scan.depth > limits.depth) {
    const said = `${fileName} nests brackets more than ${limits.depth} deep; no site needs that.`;
    return trouble('too-deep', {}, said, startAgain);
  }
  if (scan.secondDocument !== null) return second(text, scan.secondDocument, fileName);
  if (!scan.mistake) return null;
  const { at, wanted } = scan.mistake;
  if (at >= text.length) return breaksAt(text, text.trimEnd().length, 'is cut short: it stops', fileName);
  const found = text.slice(at, at + 1);
  return breaksAt(text, at, `cannot be read: “${wanted}” was expected instead of “${found}”`, fileName);
}

function second(text: string, at: number, fileName: string): Issue {
  if (!'{['.includes(text.charAt(at))) return breaksAt(text, at, 'goes on after its end', fileName);
  const { line, column } = lineAndColumn(text, at);
  const said = `${fileName} holds two sites: a second one starts at line ${line}, column ${column}.`;
  return trouble('two-sites', {}, said, 'Cut the file in two there and open each on its own.');
}

function scanRepairs(scan: ScanResult, text: string): Issue[] {
  const line = (at: number) => lineAndColumn(text, at).line;
  const twice = scan.keysTwice.slice(0, 20).map(({ key, at }) => {
    const said = `The member “${key.slice(0, 60)}” at line ${line(at)} is given twice; the last one is used.`;
    return trouble('key-twice', {}, said, 'Look whether the right one was kept.');
  });
  const unsafe = scan.unsafeKeys.slice(0, 1).map((at) => {
    const said = `A member named __proto__ (line ${line(at)}) was removed: programs can be tricked with it.`;
    return trouble('unsafe-key', {}, said, 'Rename it if it held something of yours.');
  });
  const notFinite = scan.notFinite.slice(0, 20).map(({ at, length }) => {
    const { line: row, column } = lineAndColumn(text, at);
    const said = `“${text.slice(at, at + Math.min(length, 20))}” at line ${row}, column ${column} is not a number that can be held; it was read as not given.`;
    return trouble('number-not-finite', {}, said, 'Put the right number there.');
  });
  const tooLong = scan.tooLong.slice(0, 20).map(({ at, length }) => {
    const digits = text.slice(at, at + length);
    const said = `The number ${cut(digits)} at line ${line(at)} has more digits than can be held; it is read as ${Number(digits)}.`;
    return trouble('number-too-long', {}, said, 'Put it in quotation marks if it is a name or an id.');
  });
  return [...twice, ...unsafe, ...notFinite, ...tooLong];
}

/** The text with each such number replaced by null, so that only its feature suffers. */
function withoutNotFinite(text: string, scan: ScanResult): string {
  let from = 0;
  const parts: string[] = [];
  for (const { at, length } of scan.notFinite) {
    parts.push(text.slice(from, at), 'null');
    from = at + length;
  }
  return from === 0 ? text : parts.join('') + text.slice(from);
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** A copy without `__proto__` members. The depth is bounded by the scan. */
function withoutUnsafeKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutUnsafeKeys);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).filter(([key]) => key !== '__proto__');
  return Object.fromEntries(entries.map(([key, inner]) => [key, withoutUnsafeKeys(inner)]));
}
