import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { readSite } from '../../../src/site/read.ts';
import { findSeal, withSeal, withSlot } from '../../../src/site/seal.ts';
import { canonicalText, writeSite } from '../../../src/site/write.ts';
import { cleanFeatures, file } from './make.ts';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

function sealed(text: string): string {
  const slotted = withSlot(text);
  return withSeal(slotted, sha256(slotted));
}

function isWhole(text: string): boolean {
  const found = findSeal(text);
  return found !== null && sha256(found.hashed) === found.seal;
}

const text = sealed(canonicalText(readSite(file(cleanFeatures()), 'x').site!));

describe('the seal', () => {
  it('holds for the file it was put on, which opens without a word and is saved byte for byte', () => {
    expect(isWhole(text)).toBe(true);
    const { site, issues } = readSite(text, 'x');
    expect(issues).toEqual([]);
    expect(writeSite(site!)).toBe(text);
    expect(sealed(text)).toBe(text);
    expect(canonicalText(site!)).not.toContain('sha256');
  });

  it('breaks with every change of one character', () => {
    for (let i = 0; i < text.length; i++) {
      const changed = text.slice(0, i) + (text[i] === '1' ? '2' : '1') + text.slice(i + 1);
      expect(isWhole(changed), `at ${i}`).toBe(false);
    }
  });

  it('is not there in other files, and only digits go into it', () => {
    expect(findSeal(file(cleanFeatures()))).toBeNull();
    expect(withSlot(file([]))).toBe(file([]));
    expect(() => withSeal(text, 'abc')).toThrow(/not a SHA-256/);
  });
});
