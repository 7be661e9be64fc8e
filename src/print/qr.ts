/** A QR code as shapes of the display list. */
import { encode } from 'uqr';
import { group, type Item, path } from './display.ts';

/** Most bytes a code is made for; above it the modules get too small to scan from paper (ours). */
const mostBytes = 1400;

/**
 * The words as a QR code of `side` mm with its quiet zone of four modules, top left corner at (x, y); null when they are too long.
 * Modules of a row that touch are one shape, so no hairlines show between them.
 */
export function qrCode(x: number, y: number, side: number, words: string, alt: string): Item | null {
  if (words.length > mostBytes) return null;
  const { data, size } = encode(words, { ecc: 'M', border: 4 });
  const step = side / size;
  const shape: (string | number)[] = [];
  for (const [r, row] of data.entries())
    for (let c = 0; c < size; c++) {
      if (!row[c]) continue;
      let end = c;
      while (row[end + 1]) end++;
      const [left, top, right, bottom] = [x + c * step, y + r * step, x + (end + 1) * step, y + (r + 1) * step];
      shape.push('M', left, top, 'L', right, top, 'L', right, bottom, 'L', left, bottom, 'Z');
      c = end;
    }
  return group([path(shape, { fill: '#000000' })], { tag: 'Figure', alt });
}
