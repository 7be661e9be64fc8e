/** Zip files from strangers: the list first, then one file at a time, never more than was declared. Packing is fflate's; the list is read here because limits come before unpacking. */
import { Inflate } from 'fflate';
import type { Issue } from '../site/types.ts';
import { fileIssue } from './issue.ts';
import { importLimits, megabytes } from './limits.ts';

export interface ZipEntry {
  readonly name: string;
  readonly packed: number;
  /** Bytes when unpacked, as declared. */
  readonly size: number;
  readonly method: number;
  readonly offset: number;
}

/** The entries worth looking at; empty with an error issue when the zip is refused. */
export interface ZipList {
  readonly entries: readonly ZipEntry[];
  readonly issues: readonly Issue[];
}

const endMark = 0x06054b50;
const entryMark = 0x02014b50;
const localMark = 0x04034b50;

/** Reads the central directory and applies the limits of number, declared size, growth, names, encryption and zips inside. */
export function listZip(bytes: Uint8Array): ZipList {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end < 0) return refuse('zip-broken', 'The zip file is cut off or damaged.', 'Download or pack it again.');
  const number = view.getUint16(end + 10, true);
  if (number > importLimits.mostEntries) {
    return refuse(
      'zip-too-many',
      `The zip file holds ${number.toLocaleString('en-US')} files.`,
      'Pack only the map layer you need.',
    );
  }
  try {
    return checked(readEntries(bytes, view, view.getUint32(end + 16, true), number));
  } catch (error) {
    return refuse(
      'zip-broken',
      `The zip file is damaged: ${error instanceof Error ? error.message : error}`,
      'Pack it again.',
    );
  }
}

/** The entry's bytes. Throws when it is broken, packed in an unknown way or larger than declared. */
export function unpack(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint32(entry.offset, true) !== localMark) throw new Error(`${entry.name} is not where the list says`);
  const start = entry.offset + 30 + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true);
  const packed = bytes.subarray(start, start + entry.packed);
  if (packed.length < entry.packed) throw new Error(`${entry.name} is cut off`);
  if (entry.method === 0) return exactly(entry, packed);
  if (entry.method !== 8) throw new Error(`${entry.name} is packed in a way that is not read (method ${entry.method})`);
  return inflateAtMost(entry, packed);
}

function exactly(entry: ZipEntry, content: Uint8Array): Uint8Array {
  if (content.length !== entry.size) throw new Error(`${entry.name} is not as large as it says`);
  return content;
}

function inflateAtMost(entry: ZipEntry, packed: Uint8Array): Uint8Array {
  const whole = new Uint8Array(entry.size);
  let filled = 0;
  const inflate = new Inflate((chunk) => {
    if (filled + chunk.length > entry.size) throw new Error(`${entry.name} is larger than it says`);
    whole.set(chunk, filled);
    filled += chunk.length;
  });
  const step = 16_384;
  for (let at = 0; at < packed.length; at += step)
    inflate.push(packed.subarray(at, at + step), at + step >= packed.length);
  return exactly(entry, whole.subarray(0, filled));
}

function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - 65_557);
  for (let at = view.byteLength - 22; at >= lowest; at--) if (view.getUint32(at, true) === endMark) return at;
  return -1;
}

function readEntries(
  bytes: Uint8Array,
  view: DataView,
  start: number,
  number: number,
): (ZipEntry & { flags: number })[] {
  const entries: (ZipEntry & { flags: number })[] = [];
  let at = start;
  for (let i = 0; i < number; i++) {
    if (view.getUint32(at, true) !== entryMark) throw new Error('the list of files breaks off');
    const nameLength = view.getUint16(at + 28, true);
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      offset: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

function checked(all: readonly (ZipEntry & { flags: number })[]): ZipList {
  const files = all.filter((entry) => !entry.name.endsWith('/'));
  if (files.some((entry) => entry.flags & 1))
    return refuse('zip-locked', 'The zip file is locked with a password.', 'Unlock it first.');
  const total = files.reduce((sum, entry) => sum + entry.size, 0);
  const packed = files.reduce((sum, entry) => sum + entry.packed, 0);
  if (total > importLimits.mostBytes || (total > 1_000_000 && total > packed * importLimits.mostGrowth)) {
    return refuse(
      'zip-bomb',
      `Unpacked, the zip file would be ${megabytes(total)}.`,
      'Pack only the map layer you need.',
    );
  }
  const unsafe = files.filter((entry) => unsafeName(entry.name));
  const nested = files.filter((entry) => /\.(zip|kmz|gz|7z|rar|tar)$/i.test(entry.name));
  const skipped = new Set([...unsafe, ...nested]);
  return {
    entries: files.filter((entry) => !skipped.has(entry)),
    issues: [...unsafe.map(unsafeIssue), ...nested.map(nestedIssue)],
  };
}

/** Names that would leave the folder they are unpacked in: never looked at, although nothing here is written to a disk. */
function unsafeName(name: string): boolean {
  return /(^|[\\/])\.\.([\\/]|$)|^[\\/]|^[A-Za-z]:|\0/.test(name);
}

function unsafeIssue(entry: ZipEntry): Issue {
  return fileIssue(
    'warning',
    'zip-path',
    `“${shown(entry.name)}” points outside the zip file and was not read.`,
    'Ask where the file comes from.',
  );
}

function nestedIssue(entry: ZipEntry): Issue {
  return fileIssue(
    'warning',
    'zip-in-zip',
    `“${shown(entry.name)}” is packed once more and was not read.`,
    'Unpack it and import what is inside.',
  );
}

function shown(name: string): string {
  return name.replace(/\0/g, '').slice(0, 80);
}

function refuse(id: string, sentence: string, fix: string): ZipList {
  return { entries: [], issues: [fileIssue('error', id, sentence, fix)] };
}
