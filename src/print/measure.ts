/** How long words are on paper, and how they are broken or shortened to fit. Kerning is left out, so widths are good to about 2 %. */
import { advanceWidths, type Face, measuredCodePoints } from './font-widths.ts';
import { point } from './style.ts';

const indexOf = new Map(measuredCodePoints.map((code, i) => [code, i]));

/** Width taken for a letter of another alphabet, thousandths of the size (a wide capital). */
const unknownWidth = 700;

/** Width of one line of text in mm; `size` in points. */
export function widthOf(words: string, size: number, face: Face = 'sans'): number {
  const widths = advanceWidths[face];
  let sum = 0;
  for (const letter of words) {
    const i = indexOf.get(letter.codePointAt(0) ?? 0);
    sum += i === undefined ? unknownWidth : (widths[i] ?? unknownWidth);
  }
  return (sum / 1000) * size * point;
}

/** Whether every letter's width is known, so that the text may be held to it when another font stands in. */
export function isMeasured(words: string): boolean {
  return words.trim() !== '' && [...words].every((letter) => indexOf.has(letter.codePointAt(0) ?? 0));
}

/** Text without control characters and direction marks, in one line and at most 200 letters long: what a name may put on paper. */
export function plain(words: string): string {
  const letters = [
    ...words
      .slice(0, 2000)
      .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\s]+/gu, ' ')
      .trim(),
  ];
  return letters.length <= 200 ? letters.join('') : `${letters.slice(0, 199).join('')}…`;
}

/** The text, shortened with … so that it is at most `width` mm long. */
export function shorten(words: string, width: number, size: number, face: Face = 'sans'): string {
  if (widthOf(words, size, face) <= width) return words;
  const letters = [...words];
  while (letters.length > 0 && widthOf(`${letters.join('').trimEnd()}…`, size, face) > width) letters.pop();
  return letters.length > 0 ? `${letters.join('').trimEnd()}…` : '';
}

/** Broken at spaces into lines of at most `width` mm; a longer word is shortened. */
export function wrap(words: string, width: number, size: number, face: Face = 'sans'): string[] {
  const lines: string[] = [];
  const space = widthOf(' ', size, face);
  let current = '';
  let long = 0;
  for (const word of words.split(' ')) {
    const own = widthOf(word, size, face);
    const longer = current === '' ? own : long + space + own;
    if (longer <= width) {
      current = current === '' ? word : `${current} ${word}`;
      long = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    current = shorten(word, width, size, face);
    long = own <= width ? own : widthOf(current, size, face);
  }
  return current === '' ? lines : [...lines, current];
}

/** As `wrap`, but at most `most` lines, the last shortened with …. */
export function wrapAtMost(most: number, words: string, width: number, size: number, face: Face = 'sans'): string[] {
  const lines = wrap(words, width, size, face);
  if (lines.length <= most) return lines;
  const last = shorten(lines.slice(most - 1).join(' '), width, size, face);
  return [...lines.slice(0, most - 1), last];
}
