import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { subjects } from '../../../layers/all.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { makePlan } from '../../../src/plan.ts';
import { type Item, type Sheet, textsOf } from '../../../src/print/display.ts';
import { advanceWidths, type Face, measuredCodePoints } from '../../../src/print/font-widths.ts';
import type { SheetInput } from '../../../src/print/input.ts';
import { makeSheets } from '../../../src/print/make-sheets.ts';
import { widthOf } from '../../../src/print/measure.ts';
import { sheetsToPdf } from '../../../src/print/to-pdf.ts';
import { sheetToSvg } from '../../../src/print/to-svg.ts';
import { unwoff } from '../../../src/print/unwoff.ts';
import { readSite } from '../../../src/site/read.ts';
import type { LonLat, SiteFeature } from '../../../src/site/types.ts';
import { inputOf, standardOptions, testFonts } from './fixture.ts';

const all = standardOptions.sheets;

/** Numbers drawn in discs on a detail sheet: bold serif figures of the disc's own size. */
function discNumbers(sheet: Sheet): number[] {
  return textsOf(sheet.items)
    .filter((one) => one.face === 'serifBold' && one.size === 14 && /^\d+$/.test(one.text))
    .map((one) => Number(one.text));
}

function groups(items: readonly Item[]): Extract<Item, { item: 'group' }>[] {
  return items.flatMap((one) => (one.item === 'group' ? [one, ...groups(one.items)] : []));
}

describe('a forty-box book', () => {
  const input = inputOf({ boxes: 40 });
  const sheets = makeSheets(input);
  const details = sheets.filter((sheet) => sheet.kind === 'detail');

  test('draws every number at 14 points on exactly one detail sheet, the sheet that says so', () => {
    expect(details.length).toBeGreaterThan(2);
    const drawn = details.flatMap(discNumbers).sort((a, b) => a - b);
    expect(drawn).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    for (const sheet of details)
      expect(discNumbers(sheet).sort((a, b) => a - b)).toEqual([...sheet.numbers].sort((a, b) => a - b));
  });

  test('no two numbers on a map touch, nor a number and a length, nor two lengths', () => {
    for (const sheet of details) {
      const words = textsOf(sheet.items).filter(
        (one) =>
          (one.face === 'serifBold' && one.size === 14) || (one.face === 'sansBold' && /(yd|mi)$/.test(one.text)),
      );
      const boxes = words.map((one) => {
        const width = widthOf(one.text, one.size, one.face);
        return {
          text: one.text,
          left: one.x - width / 2,
          right: one.x + width / 2,
          top: one.y - one.size * 0.25,
          bottom: one.y,
        };
      });
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) {
          const touch = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
          expect(touch, `${sheet.id}: ${a.text} and ${b.text}`).toBe(false);
        }
      });
    }
  });

  test('the index names every detail sheet and every number', () => {
    const words = textsOf(sheets[0]!.items).map((one) => one.text);
    for (let n = 1; n <= 40; n++) expect(words).toContain(String(n));
    for (const i of details.keys()) expect(words).toContain(`sheet ${i + 2}`);
  });

  test('tabs lead to the sheet that has the number', () => {
    let seen = 0;
    for (const sheet of details) {
      const texts = textsOf(sheet.items);
      texts.forEach((one, i) => {
        const found = /^(next|before), sheet (\d+)$/.exec(one.text);
        if (!found) return;
        seen++;
        expect(sheets[Number(found[2]) - 1]!.numbers).toContain(Number(texts[i - 1]!.text));
      });
    }
    expect(seen).toBeGreaterThan(4);
  });

  test('check rows are at least 8 mm high with room to write, 25 mm free for the clamp', () => {
    for (const orientation of ['portrait', 'landscape'] as const) {
      const pages = makeSheets(inputOf({ boxes: 40 }, { orientation, sheets: ['check'] })).filter(
        (sheet) => sheet.kind === 'check',
      );
      for (const page of pages) {
        const rows = textsOf(page.items).filter(
          (one) => one.face === 'serifBold' && one.size === 14 && /^\d+$/.test(one.text),
        );
        expect(rows.length).toBe(page.numbers.length);
        for (let i = 1; i < rows.length; i++) expect(rows[i]!.y - rows[i - 1]!.y).toBeGreaterThanOrEqual(8);
        expect(Math.min(...textsOf(page.items).map((one) => one.y))).toBeGreaterThan(25);
      }
      if (orientation === 'portrait') for (const page of pages) expect(page.numbers.length).toBeGreaterThanOrEqual(20);
    }
  });

  test('small words are 8.5 points or more, large print 18 or more', () => {
    for (const sheet of sheets)
      for (const one of textsOf(sheet.items))
        expect(one.size, `${sheet.id}: ${one.text}`).toBeGreaterThanOrEqual(
          sheet.kind === 'index' || sheet.kind === 'detail' ? 7.5 : 8.5,
        );
    const large = makeSheets(inputOf({ boxes: 12 }, { variant: 'large-print', sheets: all }));
    for (const sheet of large)
      for (const one of textsOf(sheet.items))
        if (one.text !== '4' || one.size > 8) expect(one.size, `${sheet.id}: ${one.text}`).toBeGreaterThanOrEqual(18);
  });

  test('an ink saver has no pattern and no filled building', () => {
    const size = (variant: 'standard' | 'ink-saver') =>
      JSON.stringify(makeSheets(inputOf({ boxes: 40 }, { variant, sheets: ['details'] }))).length;
    expect(size('ink-saver')).toBeLessThan(size('standard') / 3);
  });

  test('a magnetic declination that is not known is not printed', () => {
    const none = makeSheets({
      ...input,
      options: { ...input.options, sheets: ['index', 'check'] },
      stamp: { ...input.stamp, declination: null },
    });
    const words = none
      .flatMap((sheet) => textsOf(sheet.items))
      .map((one) => one.text)
      .join(' ');
    expect(words).not.toMatch(/Needle|compass degrees|Magnetic Model/);
    expect(words).toContain('true north');
  });

  test('pictures and tables are said in words', () => {
    const tags = groups(sheets[1]!.items).filter((one) => one.tag === 'Figure');
    expect(tags.length).toBeGreaterThan(3);
    for (const figure of tags) expect(figure.alt?.length).toBeGreaterThan(5);
    expect(sheetToSvg(sheets[1]!)).toContain('role="img" aria-label="Map of boxes');
  });
});

describe('odd plans', () => {
  const odd: [string, Partial<SheetInput> | null, Parameters<typeof inputOf>[0]][] = [
    ['nothing at all', null, { boxes: 0, land: false }],
    ['land and no box', null, { boxes: 0 }],
    ['one box and no land', null, { boxes: 1, land: false }],
    ['two boxes, metric, south', null, { boxes: 2, units: 'metric', centre: [147.3, -42.9] }],
    ['at the date line', null, { boxes: 9, centre: [179.9999, -16.5] }],
    ['north of UTM', null, { boxes: 5, centre: [20, 86] }],
    ['numbers over 99', null, { boxes: 104 }],
    ['boxes a stride apart', null, { boxes: 30, gap: 1 }],
    ['boxes miles apart', null, { boxes: 12, gap: 4000 }],
    ['three walkers', null, { boxes: 20, rounds: 3 }],
  ];
  test.each(odd)('%s', async (_, __, wish) => {
    const ways = wish.boxes > 50 ? (['landscape'] as const) : (['portrait', 'landscape'] as const);
    for (const orientation of ways) {
      const sheets = makeSheets(inputOf(wish, { orientation, sheets: all }));
      expect(sheets.length).toBeGreaterThan(0);
      for (const sheet of sheets) {
        for (const one of textsOf(sheet.items)) {
          expect(Number.isFinite(one.x) && Number.isFinite(one.y), `${sheet.id}: ${one.text}`).toBe(true);
          expect(one.text).not.toMatch(/NaN|Infinity|undefined|\[object/);
        }
        expect(sheetToSvg(sheet)).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });

  test('rounds that leave boxes out still give every box a check row', () => {
    const input = inputOf({ boxes: 8 }, { sheets: ['check'] });
    const rounds = input.plan.rounds.map((round) => ({
      ...round,
      boxes: round.boxes.slice(0, 5),
      legs: round.legs.slice(0, 5),
    }));
    const numbers = makeSheets({ ...input, plan: { ...input.plan, rounds } }).flatMap((sheet) => sheet.numbers);
    expect(numbers.sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('a scale that is none throws', () => {
    for (const scale of [0, -5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => makeSheets(inputOf({ boxes: 2 }, { scale }))).toThrow('scale');
  });

  test('an outline of 5,000 points and a hole is cut, not choked on', () => {
    const input = inputOf({ boxes: 10, land: false }, { sheets: ['index', 'details'] });
    const ring = (r: number, n: number): LonLat[] =>
      Array.from({ length: n + 1 }, (_, i) =>
        input.frame.toLonLat({
          x: Math.cos(((i % n) / n) * 2 * Math.PI) * r * (1 + 0.05 * Math.sin(i)),
          y: Math.sin(((i % n) / n) * 2 * Math.PI) * r,
        }),
      );
    const woods: SiteFeature = {
      id: 'w',
      kind: 'woods',
      geometry: { type: 'Polygon', coordinates: [ring(900, 5000), ring(100, 500)] },
      properties: { name: 'Great Wood' },
    };
    const sheets = makeSheets({ ...input, site: { ...input.site, features: [woods] } });
    expect(sheets.every((sheet) => sheet.items.length > 5)).toBe(true);
  });
});

describe('hostile names', () => {
  const nasty = [
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    '=cmd|calc',
    'a'.repeat(10_000),
    'zero\u0000width\u202e reversed\u0007',
    '森の家 Łąka Ελλάδα Поле',
    "&amp; 'quoted'",
    '   ',
  ];
  const input = inputOf({ boxes: 3 }, { sheets: all });
  const made: Sheet[] = [];

  test.each(nasty.map((name) => [name.slice(0, 30), name]))('%s is plain words on every sheet', (_, name) => {
    const features = input.site.features.map((one) => ({ ...one, properties: { ...one.properties, name } }));
    const boxes = input.plan.boxes.map((box) => ({ ...box, card: { ...box.card, flags: [name] } }));
    const site = { ...input.site, features };
    const sheets = makeSheets({
      ...input,
      site,
      plan: { ...input.plan, siteName: name, boxes },
      stamp: { ...input.stamp, credit: name, revision: name },
    });
    for (const sheet of sheets) {
      const svg = sheetToSvg(sheet);
      expect(svg).not.toMatch(/<script|<img|onerror=alert\(1\)>/);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: this is what must not be there
      expect(svg).not.toMatch(/[\u0000-\u0008\u202e]/);
      for (const one of textsOf(sheet.items))
        expect(widthOf(one.text, one.size, one.face)).toBeLessThan(sheet.safe.width + 1);
    }
    made.push(...sheets);
  });

  test('all of them go into one PDF', async () => {
    expect(made.length).toBeGreaterThanOrEqual(8 * nasty.length);
    const pdf = await sheetsToPdf(made, testFonts());
    expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe('%PDF-');
    expect(Buffer.from(pdf).toString('latin1')).not.toMatch(/\/JavaScript|\/Launch/);
  });
});

describe('fonts', () => {
  test('the table of widths is that of the files', async () => {
    const fontkit = createRequire(import.meta.url)('fontkit') as {
      create(bytes: Buffer): {
        hasGlyphForCodePoint(c: number): boolean;
        glyphForCodePoint(c: number): { advanceWidth: number };
      };
    };
    const fonts = testFonts();
    for (const face of Object.keys(advanceWidths) as Face[]) {
      const files = fonts[face]!.slice(0, 2).map((bytes) => fontkit.create(Buffer.from(unwoff(bytes))));
      measuredCodePoints.forEach((code, i) => {
        const file = files.find((one) => one.hasGlyphForCodePoint(code));
        if (file)
          expect(advanceWidths[face][i], `${face} U+${code.toString(16)}`).toBe(
            Math.round(file.glyphForCodePoint(code).advanceWidth),
          );
      });
    }
  });

  test('a .woff2 is refused in words, and so is no font', async () => {
    const require = createRequire(import.meta.url);
    const bytes = new Uint8Array(
      readFileSync(
        join(
          require.resolve('@fontsource/source-sans-3/package.json'),
          '..',
          'files',
          'source-sans-3-latin-400-normal.woff2',
        ),
      ),
    );
    const sheets = makeSheets(inputOf({ boxes: 1 }, { sheets: ['labels'] }));
    await expect(sheetsToPdf(sheets, { sans: [bytes] })).rejects.toThrow('woff2');
    await expect(sheetsToPdf(sheets, { sans: [] })).rejects.toThrow('at least one font');
  });
});

test('the demo yard goes from file to paper', async () => {
  const text = readFileSync(new URL('../../../demo-sites/yard.geojson', import.meta.url), 'utf8');
  const { site } = readSite(text, 'yard.geojson');
  if (!site) throw new Error('the demo yard cannot be read');
  const plan = await makePlan(site, { proof: 'none' });
  const { frame } = prepareGround(site);
  const sheets = makeSheets({
    ...inputOf({ boxes: 0 }),
    site,
    plan,
    frame,
    layers: subjects,
    options: { ...standardOptions, sheets: all },
  });
  const page = sheets.find((sheet) => sheet.kind === 'landowner')!;
  const words = textsOf(page.items)
    .map((one) => one.text)
    .join(' ');
  expect(plan.boxes.length).toBe(2);
  for (const box of plan.boxes) expect(words).toContain(`Box ${box.number},`);
  expect(words).toContain('What to do');
  expect(words).toMatch(/\d+ ft/);
});
