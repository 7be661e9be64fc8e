/** A round's positions as a short text for a QR code's `#` part, and back. Read as hostile input: nothing in it is trusted. */
import type { LonLat } from '../site/types.ts';

/** Numbers and places of a round in walking order. */
export interface RoundCode {
  /** First eight hex letters of the plan's hash, or null. */
  readonly hash: string | null;
  readonly stops: readonly { readonly number: number; readonly position: LonLat }[];
}

/** What was found, or why nothing was. */
export type RoundAnswer = RoundCode | { readonly stops: null; readonly reason: string };

/** First letter of every code; the version is the second. A reader of version 1 refuses all others. */
const mark = 'r1.';

/** Most stops a code may hold: a QR code of 500 is already too dense to scan. */
const mostStops = 500;

/** Longest text looked at. */
const longest = 6000;

/** Steps to the degree: 1e-5° is about 1.1 m, finer than a phone knows. */
const steps = 1e5;

/**
 * "r1." and base64url of: hash (4 bytes), number of stops, then for each stop the difference to the one before of number, latitude
 * and longitude as zigzag variable-length integers, then a 16-bit sum. Throws for a place that is none or a number below 0.
 */
export function encodeRound({ hash, stops }: RoundCode): string {
  if (stops.length > mostStops) throw new Error(`a round code holds at most ${mostStops} stops, not ${stops.length}`);
  const bytes: number[] = [...hashBytes(hash)];
  pushVarint(bytes, stops.length);
  let before = [0, 0, 0];
  for (const { number, position } of stops) {
    if (!isStop(number, position)) throw new Error(`not a stop: ${number} at ${position.join(', ')}`);
    const now = [number, Math.round(position[1] * steps), Math.round(position[0] * steps)];
    for (let i = 0; i < 3; i++) pushVarint(bytes, zigzag(now[i]! - before[i]!));
    before = now;
  }
  const sum = checkSum(bytes);
  return mark + toBase64([...bytes, sum >> 8, sum & 255]);
}

/** The round in a code (with or without a leading `#` or `#round=`), or why it cannot be read. */
export function decodeRound(code: string): RoundAnswer {
  const bare = code.slice(0, longest + 1).replace(/^#?(round=)?/, '');
  if (bare.length > longest) return no('The code is too long to be a round.');
  if (!/^r\d+\./.test(bare)) return no('This is not a Meadowpost round.');
  if (!bare.startsWith(mark)) return no('This round was made by a newer version. Update, then scan it again.');
  const bytes = fromBase64(bare.slice(mark.length));
  if (!bytes || bytes.length < 7) return no(damaged);
  const body = bytes.slice(0, -2);
  if (checkSum(body) !== bytes[bytes.length - 2]! * 256 + bytes[bytes.length - 1]!) return no(damaged);
  return readBody(body) ?? no(damaged);
}

const damaged = 'The code is damaged. Scan it again, or open the site file.';

function no(reason: string): RoundAnswer {
  return { stops: null, reason };
}

function readBody(bytes: readonly number[]): RoundCode | null {
  const reader = { bytes, at: 4 };
  const count = readVarint(reader);
  // Three numbers of at least one byte each: a count that cannot be there is refused before anything is made.
  if (count === null || count > mostStops || count * 3 > bytes.length - reader.at) return null;
  const stops: { number: number; position: LonLat }[] = [];
  const now = [0, 0, 0];
  for (let s = 0; s < count; s++) {
    for (let i = 0; i < 3; i++) {
      const step = readVarint(reader);
      if (step === null) return null;
      now[i] = now[i]! + unzigzag(step);
    }
    const position: LonLat = [now[2]! / steps, now[1]! / steps];
    if (!isStop(now[0]!, position)) return null;
    stops.push({ number: now[0]!, position });
  }
  return reader.at === bytes.length ? { hash: hashText(bytes.slice(0, 4)), stops } : null;
}

function isStop(number: number, [lon, lat]: LonLat): boolean {
  return Number.isInteger(number) && number >= 0 && number < 1e6 && Math.abs(lat) <= 90 && Math.abs(lon) <= 180;
}

function hashBytes(hash: string | null): number[] {
  const hex = /^[0-9a-f]{8}/i.exec(hash ?? '')?.[0] ?? '00000000';
  return [0, 2, 4, 6].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
}

function hashText(bytes: readonly number[]): string | null {
  const hex = bytes.map((one) => one.toString(16).padStart(2, '0')).join('');
  return hex === '00000000' ? null : hex;
}

function zigzag(value: number): number {
  return value >= 0 ? value * 2 : -value * 2 - 1;
}

function unzigzag(value: number): number {
  return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
}

/** Seven bits a byte, low first (as in Protocol Buffers and many others). */
function pushVarint(into: number[], value: number): void {
  let rest = value;
  while (rest >= 128) {
    into.push((rest % 128) + 128);
    rest = Math.floor(rest / 128);
  }
  into.push(rest);
}

/** Null past the end, and for anything longer than five bytes. */
function readVarint(reader: { readonly bytes: readonly number[]; at: number }): number | null {
  let value = 0;
  for (let i = 0; i < 5; i++) {
    const byte = reader.bytes[reader.at++];
    if (byte === undefined) return null;
    value += (byte % 128) * 128 ** i;
    if (byte < 128) return value;
  }
  return null;
}

/** CRC-16/CCITT-FALSE (polynomial 0x1021, start 0xFFFF; check value of "123456789" is 0x29B1). */
export function checkSum(bytes: readonly number[]): number {
  let sum = 0xffff;
  for (const byte of bytes) {
    sum ^= byte << 8;
    for (let i = 0; i < 8; i++) sum = sum & 0x8000 ? ((sum << 1) ^ 0x1021) & 0xffff : (sum << 1) & 0xffff;
  }
  return sum;
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Base64url without padding (RFC 4648 § 5). */
function toBase64(bytes: readonly number[]): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const three = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const signs = Math.min(4, bytes.length - i + 1);
    for (let j = 0; j < signs; j++) out += letters[(three >> (18 - 6 * j)) & 63];
  }
  return out;
}

function fromBase64(code: string): number[] | null {
  if (code.length % 4 === 1) return null;
  const bytes: number[] = [];
  let held = 0;
  let bits = 0;
  for (const sign of code) {
    const value = letters.indexOf(sign);
    if (value < 0) return null;
    held = ((held << 6) | value) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes.push((held >> bits) & 255);
    }
  }
  return bytes;
}
