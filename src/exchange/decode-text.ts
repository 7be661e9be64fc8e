/** Bytes to text: byte order marks, UTF-16 with or without one, the encoding an XML file names, and Windows-1252 as the last resort. */
import type { Issue } from '../site/types.ts';
import { fileIssue } from './issue.ts';

/** The text, or null with an issue when the bytes are no text. */
export interface Decoded {
  readonly text: string | null;
  readonly issues: readonly Issue[];
}

/** Encodings an XML file may name. Others could hide what is refused. */
const allowed = /^(utf-?8|us-ascii|ascii|utf-?16(le|be)?|iso-8859-\d{1,2}|windows-125\d|macintosh|koi8-r)$/i;

/** Reads text of any of the usual encodings; a byte order mark never stays in the text. */
export function decodeText(bytes: Uint8Array): Decoded {
  const sixteen = utf16(bytes);
  if (sixteen) return { text: new TextDecoder(sixteen).decode(bytes), issues: [] };
  const named = namedEncoding(bytes);
  if (named !== null && !allowed.test(named))
    return refused('encoding', `The file says it is written in "${named.slice(0, 40)}".`);
  if (named !== null && !/^(utf|us-ascii|ascii)/i.test(named))
    return { text: new TextDecoder(named).decode(bytes), issues: [] };
  if (bytes.subarray(0, 1000).includes(0)) return refused('not-text', 'The file is not text.');
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), issues: [] };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), issues: [oldEncoding] };
  }
}

const oldEncoding = fileIssue(
  'repaired',
  'not-utf8',
  'The file is not UTF-8; it was read as Windows-1252.',
  'Look at names with accents; if they are wrong, save the file as UTF-8 and import it again.',
);

function refused(id: string, sentence: string): Decoded {
  return { text: null, issues: [fileIssue('error', id, sentence, 'Save it again as UTF-8 text.')] };
}

function utf16(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const [a, b, c, d] = bytes;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  if (a !== 0 && b === 0 && c !== 0 && d === 0) return 'utf-16le';
  return a === 0 && b !== 0 && c === 0 && d !== 0 ? 'utf-16be' : null;
}

function namedEncoding(bytes: Uint8Array): string | null {
  const head = new TextDecoder('windows-1252').decode(bytes.subarray(0, 200));
  return /^(?:ï»¿)?\s*<\?xml[^>]*?encoding\s*=\s*["']([^"']*)["']/.exec(head)?.[1] ?? null;
}
