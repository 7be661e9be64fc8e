/** The finished PDF read by another program (poppler-utils: pdftotext, pdfinfo, pdffonts, pdftoppm): words, places, tags, fonts, pictures. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Sheet } from '../../src/print/display.ts';
import type { SheetOptions } from '../../src/print/input.ts';
import { makeSheets } from '../../src/print/make-sheets.ts';
import { sheetsToPdf } from '../../src/print/to-pdf.ts';
import { inputOf, standardOptions, testFonts } from '../unit/print/fixture.ts';

const poppler = spawnSync('pdftotext', ['-v']).status === 0;
if (!poppler) console.log('skipped: print-pages needs poppler-utils (apt-get install poppler-utils)');

const folder = mkdtempSync(join(tmpdir(), 'print-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Word {
  readonly text: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

const mm = 25.4 / 72;

/** Words of each page with their boxes in mm. */
function wordsOf(file: string): Word[][] {
  const html = execFileSync('pdftotext', ['-bbox', file, '-'], { maxBuffer: 1e9 }).toString();
  return html
    .split('<page ')
    .slice(1)
    .map((page) =>
      [
        ...page.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g),
      ].map((m) => ({
        text: m[5]!
          .replace(/&amp;/g, '&')
          .replace(/&lt;/g, '<')
          .replace(/&gt;/g, '>')
          .replace(/&quot;/g, '"')
          .replace(/&apos;|&#39;/g, "'"),
        x: [Number(m[1]) * mm, Number(m[3]) * mm] as const,
        y: [Number(m[2]) * mm, Number(m[4]) * mm] as const,
      })),
    );
}

async function book(
  name: string,
  options: Partial<SheetOptions>,
  boxes = 40,
): Promise<{ sheets: Sheet[]; file: string; bytes: Uint8Array }> {
  const input = inputOf({ boxes }, options);
  const sheets = makeSheets(input);
  const bytes = await sheetsToPdf(sheets, testFonts(), { title: input.plan.siteName, date: input.stamp.date });
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, bytes);
  return { sheets, file, bytes };
}

const all = standardOptions.sheets;

describe.skipIf(!poppler)('a forty-box book', () => {
  let made: Awaited<ReturnType<typeof book>>;
  beforeAll(async () => {
    made = await book('letter', { sheets: all });
  });

  test('has a page for every sheet, tagged, titled, with every font embedded', () => {
    const info = execFileSync('pdfinfo', [made.file]).toString();
    expect(info).toMatch(new RegExp(`Pages:\\s+${made.sheets.length}\\n`));
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/Title:\s+Quillback Meadow/);
    const fonts = execFileSync('pdffonts', [made.file]).toString().split('\n').slice(2).filter(Boolean);
    expect(fonts.length).toBeGreaterThanOrEqual(4);
    for (const row of fonts) expect(row).toMatch(/ yes yes yes /);
  });

  test('is built of headings, tables with header cells, and pictures with words', () => {
    const tags = execFileSync('pdfinfo', ['-struct', made.file], { maxBuffer: 1e9 }).toString();
    for (const tag of ['Document', 'H1', 'H2', 'Table', 'TR', 'TH', 'TD', 'Figure'])
      expect(tags).toMatch(new RegExp(`^\\s*${tag}\\b`, 'm'));
    expect(tags.match(/^\s*H1\b/gm)!.length).toBeGreaterThanOrEqual(10);
    // Three check pages of 14, 14 and 12 rows with a head each.
    const rows = tags.match(/^\s*TR\b/gm)!.length;
    expect(rows).toBeGreaterThanOrEqual(43);
  });

  test('can be read as text', () => {
    const pages = wordsOf(made.file).map((words) => words.map((word) => word.text).join(' '));
    made.sheets.forEach((sheet, i) => {
      if (sheet.kind !== 'labels' && sheet.kind !== 'cards')
        expect(pages[i]).toContain(`Sheet ${i + 1} of ${made.sheets.length}`);
    });
    const whole = pages.join('\n');
    for (const words of [
      'Quillback Meadow',
      '1:2,400',
      '1 in = 200 ft',
      'This line is 100 mm',
      'World Magnetic Model 2025',
      'UTM zone 17T',
      'Eastern Bluebird',
      'Whose nest is it?',
      'next, sheet',
      'before, sheet',
      'revision 3',
      '9f2c41aa',
      'Teal Pond',
    ])
      expect(whole, words).toContain(words);
  });

  test('has each number once in a check row, on one card and on one label', () => {
    for (const kind of ['check', 'cards', 'labels'] as const) {
      const numbers = made.sheets.filter((sheet) => sheet.kind === kind).flatMap((sheet) => sheet.numbers);
      expect([...numbers].sort((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    }
  });

  test('becomes pictures with ink on every page and none outside the safe box', () => {
    expectInkInside(made.sheets, made.file, 'book');
  });

  test('is the same bytes on a second run', async () => {
    const [one, two] = [await book('one', { sheets: all }, 6), await book('two', { sheets: all }, 6)];
    expect(Buffer.compare(Buffer.from(one.bytes), Buffer.from(two.bytes))).toBe(0);
  });
});

describe.skipIf(!poppler)('every paper, way round and variant', () => {
  const wishes = (['letter', 'a4'] as const).flatMap((paper) =>
    (['portrait', 'landscape'] as const).flatMap((orientation) =>
      (['standard', 'ink-saver', 'large-print'] as const).map((variant) => ({ paper, orientation, variant })),
    ),
  );
  test.each(wishes)('$paper $orientation $variant: words on every page, all ink inside the safe box', async (wish) => {
    const { sheets, file } = await book(
      `${wish.paper}-${wish.orientation}-${wish.variant}`,
      { ...wish, sheets: all },
      12,
    );
    const pages = wordsOf(file);
    expect(pages).toHaveLength(sheets.length);
    for (const [i, words] of pages.entries()) expect(words.length, sheets[i]!.id).toBeGreaterThan(3);
    expectInkInside(sheets, file, 'wish');
  });
});

/** Draws every page and looks at each dot: some ink, and none outside the safe box (0.7 mm for the coarse dots). */
function expectInkInside(sheets: readonly Sheet[], file: string, name: string): void {
  execFileSync('pdftoppm', ['-r', '40', '-gray', file, join(folder, name)]);
  const digits = String(sheets.length).length;
  sheets.forEach(({ id, safe, width: paper }, i) => {
    const { width, height, data } = readPgm(join(folder, `${name}-${String(i + 1).padStart(digits, '0')}.pgm`));
    const scale = width / paper;
    const out = (x: number, y: number) =>
      x < safe.x - 0.7 || x > safe.x + safe.width + 0.7 || y < safe.y - 0.7 || y > safe.y + safe.height + 0.7;
    let ink = 0;
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        if (data[y * width + x]! > 200) continue;
        ink++;
        const [px, py] = [(x + 0.5) / scale, (y + 0.5) / scale];
        if (out(px, py)) throw new Error(`ink outside the safe box of ${id} at ${px.toFixed(1)}, ${py.toFixed(1)} mm`);
      }
    expect(ink, id).toBeGreaterThan(200);
  });
}

/** A gray picture as pdftoppm writes it. */
function readPgm(file: string): { width: number; height: number; data: Uint8Array } {
  const bytes = readFileSync(file);
  const head = /^P5\s+(\d+)\s+(\d+)\s+(\d+)\s/.exec(bytes.subarray(0, 64).toString('latin1'))!;
  return { width: Number(head[1]), height: Number(head[2]), data: bytes.subarray(head[0].length) };
}
