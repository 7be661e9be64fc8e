/** The PDF writer in a real browser: the same display list, the same bytes on every run, fonts from the app's own files. */
import sansUrl from '@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff?url';
import serifUrl from '@fontsource/source-serif-4/files/source-serif-4-latin-700-normal.woff?url';
import { expect, test } from 'vitest';
import { circle, group, path, type Sheet, text } from '../../src/print/display.ts';
import { sheetsToPdf } from '../../src/print/to-pdf.ts';
import { sheetToSvg } from '../../src/print/to-svg.ts';

const sheet: Sheet = {
  id: 'one',
  kind: 'detail',
  title: 'One page',
  width: 215.9,
  height: 279.4,
  safe: { x: 12.95, y: 10.2, width: 190, height: 259 },
  items: [
    group([text(20, 30, 'Quillback Meadow', 22, { face: 'serifBold', halo: 0.5 })], { tag: 'H1' }),
    group([path(circle(100, 100, 30), { stroke: { width: 0.5, color: '#000000' } })], {
      tag: 'Figure',
      alt: 'A circle',
    }),
  ],
  numbers: [],
  scale: null,
};

async function bytesOf(url: string): Promise<Uint8Array> {
  return new Uint8Array(await (await fetch(url)).arrayBuffer());
}

test('a sheet becomes a PDF in the page, the same twice', async () => {
  const fonts = { sans: [await bytesOf(sansUrl)], serifBold: [await bytesOf(serifUrl)] };
  const [a, b] = [await sheetsToPdf([sheet], fonts), await sheetsToPdf([sheet], fonts)];
  const head = new TextDecoder('latin1').decode(a);
  expect(head.startsWith('%PDF-1.7')).toBe(true);
  expect(head).toContain('SourceSerif4-Bold');
  expect(head).toContain('/Marked true');
  expect(head.trimEnd().endsWith('%%EOF')).toBe(true);
  expect(a).toEqual(b);
});

test('the SVG is well formed and has its size on paper', () => {
  const parsed = new DOMParser().parseFromString(sheetToSvg(sheet), 'image/svg+xml');
  expect(parsed.querySelector('parsererror')).toBeNull();
  expect(parsed.documentElement.getAttribute('width')).toBe('215.9mm');
  expect(parsed.querySelector('[role=heading]')?.textContent?.trim()).toBe('Quillback Meadow');
  expect(parsed.querySelector('[role=img]')?.getAttribute('aria-label')).toBe('A circle');
});
