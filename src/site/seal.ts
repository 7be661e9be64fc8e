/**
 * The seal of a site file: its own SHA-256, so that damage is noticed (one in five random one-byte changes still parses and
 * validates). Hashing is the caller's (it differs between pages and Node); this room only knows where the seal stands.
 */

const slot = /^([\s\S]*?"meadowpost"\s*:\s*\{\s*)("sha256"\s*:\s*")([0-9a-f]{64})(")/;
/** How every text of `writeSite` starts. */
const start = /^\{\n"type": "FeatureCollection",\n"meadowpost": \{\n/;
const blank = '0'.repeat(64);

/** A seal found in a text. */
export interface Sealed {
  /** The text whose SHA-256 (UTF-8) the seal should be. */
  readonly hashed: string;
  /** The seal found, 64 hexadecimal digits. */
  readonly seal: string;
}

/** The seal of a file's text and what it was made of; null when the file has none. */
export function findSeal(text: string): Sealed | null {
  const found = slot.exec(text);
  const seal = found?.[3];
  return seal ? { hashed: withSeal(text, blank), seal } : null;
}

/** The text with an empty slot for the seal: hash this, then `withSeal`. The text must be one `writeSite` made; others come back unchanged. */
export function withSlot(text: string): string {
  if (slot.test(text)) return withSeal(text, blank);
  return text.replace(start, (found) => `${found}  "sha256": "${blank}",\n`);
}

/** Puts the digits into the slot. */
export function withSeal(text: string, sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error(`not a SHA-256 in hexadecimal: ${sha256}`);
  return text.replace(
    slot,
    (_all, before: string, key: string, _old: string, after: string) => before + key + sha256 + after,
  );
}
