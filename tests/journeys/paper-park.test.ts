/** A trail designer takes the park demo's paper: the preview, the PDF and the printer give the same sheets, true to scale. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ThemeName, themeNames } from '../../src/app/theme.ts';
import { axeViolations } from './axe.ts';
import { ruled } from './drawn-lines.ts';
import { picture } from './light-map.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

const pictures = 'out/pictures';
let walk: Walk;
let desk: Opened;

interface Drawn {
  readonly id: string;
  readonly name: string;
  readonly numbers: readonly number[];
  readonly svg: string;
}

/** Runs in the page: the drawn sheets once they are those of the newest plan. */
function drawnSheets(): Drawn[] | null {
  const { state } = (document.querySelector('mp-app') as unknown as { store: { state: never } }).store as {
    state: { plan: object; engine: { at: string }; paper: { at: string; drawn: { of: object; sheets: Drawn[] } } };
  };
  const { paper, plan, engine } = state;
  return engine.at === 'rest' && paper.at === 'rest' && paper.drawn?.of === plan ? paper.drawn.sheets : null;
}

async function waitForSheets(page: Page): Promise<Drawn[]> {
  await page.waitForFunction(drawnSheets, null, { timeout: 80_000 });
  return (await page.evaluate(drawnSheets)) ?? [];
}

async function take(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 80_000 }),
    page.locator(button).click(),
  ]);
  const path = await (download as Download).path();
  return { name: download.suggestedFilename(), bytes: readFileSync(path) };
}

const missing = ['pdfinfo', 'pdftotext', 'pdftocairo'].some((one) => spawnSync(one, ['-v']).error)
  ? 'poppler-utils (pdfinfo, pdftotext, pdftocairo) are not installed'
  : null;
if (missing) console.warn(`skipped: pages and words of the PDF are not read, because ${missing}`);

/** Words of a PDF with their page. */
function wordsOf(pdf: Buffer, name: string): { page: number; word: string }[] {
  const path = `${pictures}/${name}.pdf`;
  writeFileSync(path, pdf);
  const html = execFileSync('pdftotext', ['-bbox', path, '-'], { encoding: 'utf8', maxBuffer: 64e6 });
  let page = 0;
  return html.split('\n').flatMap((row) => {
    if (row.includes('<page ')) page++;
    const found = /<word .*>(.*)<\/word>/.exec(row);
    return found ? [{ page, word: found[1]! }] : [];
  });
}

type Words = ReturnType<typeof wordsOf>;

/** Words that stand on a page of one file alone. The printer writes a haloed figure twice, read as one word or as two. */
function unshared(ours: Words, theirs: Words, page: number): string[] {
  const on = (words: Words) => new Set(words.flatMap((one) => (one.page === page ? [one.word] : [])));
  const [left, right] = [on(ours), on(theirs)];
  return [...left, ...right].filter((word) => left.has(word) !== right.has(word) && !/^(.)\1$/.test(word));
}

/** What the scale bar of a sheet says it is, as lengths on paper, mm: meters, then feet of 304.8 mm. */
function barsOf(svg: string): [number, number] {
  const said = /Scale bar: ([\d.,]+) meters and ([\d.,]+) feet at 1:([\d,]+)/.exec(svg);
  const [meters, feet, ratio] = (said ?? []).slice(1).map((figure) => Number(figure.replaceAll(',', '')));
  if (!meters || !feet || !ratio) throw new Error('the sheet does not say what its scale bar is');
  return [(meters * 1000) / ratio, (feet * 304.8) / ratio];
}

function pagesOf(name: string): string[] {
  const text = execFileSync('pdfinfo', ['-f', '1', '-l', '999', `${pictures}/${name}.pdf`], { encoding: 'utf8' });
  return [...text.matchAll(/Page +\d+ size: +([\d.]+ x [\d.]+)/g)].map((one) => one[1]!);
}

/** Broken accessibility rules of the page in a theme, and a picture of it. Each state is looked at once, the themes by turns. */
async function rulesBroken(page: Page, name: string, theme: ThemeName): Promise<string[]> {
  await page.evaluate(
    (t) => (document.querySelector('mp-app') as unknown as { store: { set(s: object): void } }).store.set({ theme: t }),
    theme,
  );
  const found = await axeViolations(page);
  await picture(page, `paper-${name}-${theme}`);
  return found;
}

/** Buttons, choices and labels of the paper's page that are narrower than a finger or lower than `least`, px. */
async function smallTargets(page: Page, least: number): Promise<string[]> {
  return page.evaluate((least) => {
    const out: string[] = [];
    const place = document.querySelector('mp-app')?.shadowRoot?.querySelector('mp-notebook')?.shadowRoot;
    const look = (root: ParentNode): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) look(element.shadowRoot);
        if (!['button', 'select'].includes(element.localName) && !element.matches('label, [role=option]')) continue;
        const { width, height } = element.getBoundingClientRect();
        if (width > 0 && (width < 43.5 || height < least))
          out.push(`${element.textContent?.trim()} ${width}×${height}`);
      }
    };
    const paper = place?.querySelector('mp-place-paper')?.shadowRoot;
    if (!paper) return ['no page of paper'];
    look(paper);
    return out;
  }, least);
}

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  walk = await startWalk();
  desk = await openApp(walk, '#site=park&place=paper');
  await waitForSheets(desk.page);
}, 240_000);
afterAll(async () => walk?.close());

describe('the paper of the park demo', () => {
  it('shows the index large and the others as a strip', async () => {
    const { page } = desk;
    const sheets = await waitForSheets(page);
    expect(sheets.length).toBeGreaterThan(12);
    expect(await page.locator('mp-sheet-preview [role=option]').count()).toBe(sheets.length);
    const numbers = await page.locator('mp-sheet-preview .sheet svg text').allTextContents();
    for (let n = 1; n <= 40; n++) expect(numbers).toContain(String(n));
    const details = sheets.filter((sheet) => sheet.name === 'details');
    expect(details.flatMap((sheet) => sheet.numbers).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 40 }, (_, i) => i + 1),
    );
  });

  it('keeps the accessibility rules and large targets', async () => {
    expect(await rulesBroken(desk.page, 'desktop', themeNames[0])).toEqual([]);
    expect(await smallTargets(desk.page, 43.5)).toEqual([]);
  }, 90_000);

  it('is leafed through by key', async () => {
    const { page } = desk;
    await page.locator('mp-sheet-preview [role=listbox]').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('mp-sheet-preview .name').textContent()).toContain('Sheet 3 of');
    await page.keyboard.press('Home');
    await expect.poll(() => page.locator('mp-sheet-preview .name').textContent()).toContain('Sheet 1 of');
  });

  it('gives the same pages as a PDF and on the printer, at the same true size', async () => {
    const { page } = desk;
    const sheets = await waitForSheets(page);
    const pdf = await take(page, 'mp-place-paper button.filled');
    expect(pdf.name).toBe('tansy-hollow-park.pdf');
    expect(pdf.bytes.subarray(0, 5).toString()).toBe('%PDF-');
    await waitForSheets(page);
    await page.emulateMedia({ media: 'print' });
    const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    await page.emulateMedia({ media: null });
    expect(await page.locator('.mp-pages').count()).toBe(0);
    if (missing) return;
    const ours = wordsOf(pdf.bytes, 'paper-made');
    const theirs = wordsOf(Buffer.from(printed), 'paper-printed');
    for (const name of ['paper-made', 'paper-printed']) {
      expect(pagesOf(name).length).toBe(sheets.length);
      for (const size of pagesOf(name)) expect(size).toMatch(/^792(\.\d+)? x 61[12](\.\d+)?$/);
    }
    for (let page = 1; page <= sheets.length; page++) expect(unshared(ours, theirs, page), `page ${page}`).toEqual([]);
    // A ruler laid on the first and the last map page: every sheet goes to the printer by the same rules.
    const maps = sheets.flatMap((sheet, i) => (sheet.name === 'index' || sheet.name === 'details' ? [i] : []));
    for (const i of [maps[0]!, maps.at(-1)!]) {
      const wanted = barsOf(sheets[i]!.svg);
      const [made, print] = ['made', 'printed'].map((name) => ruled(`${pictures}/paper-${name}.pdf`, i + 1));
      for (const page of [made!, print!]) {
        expect(page.line).toBeCloseTo(101.6, 1);
        expect(page.ticks.length).toBe(3);
        for (const [j, tick] of [0, 100, 101.6].entries()) expect(page.ticks[j]).toBeCloseTo(tick, 1);
        expect(page.bars.length).toBe(2);
        for (const [j, bar] of wanted.entries()) expect(page.bars[j]).toBeCloseTo(bar, 1);
      }
      expect(Math.hypot(made!.x - print!.x, made!.y - print!.y), `page ${i + 1}`).toBeLessThan(0.1);
    }
  }, 200_000);

  it('hands over every kind of file with what is in it', async () => {
    const { page } = desk;
    const starts: Readonly<Record<string, string>> = {
      gpx: '<?xml',
      kml: '<?xml',
      csv: '',
      plan: '{',
      site: '{',
      svg: '<svg',
      png: '\x89PNG',
    };
    // The last sheet has no map: its picture is painted in a moment (the index is painted in tests/browser/land/hostile-page.test.ts).
    await page.locator('mp-sheet-preview [role=listbox]').focus();
    await page.keyboard.press('End');
    for (const [id, start] of Object.entries(starts)) {
      const { name, bytes } = await take(page, `mp-paper-files button[data-file=${id}]`);
      expect(name).toMatch(/^tansy-hollow-park[\w.-]+$/);
      expect(bytes.subarray(0, start.length).toString('latin1')).toBe(start);
      expect(bytes.length).toBeGreaterThan(2000);
    }
  }, 120_000);

  it('keeps what the sheets cover from the keyboard', async () => {
    const { page } = desk;
    const reached = await page.evaluate(() => {
      const app = document.querySelector('mp-app')?.shadowRoot;
      return ['mp-map', 'mp-slips', 'mp-box-keys'].filter(
        (name) => getComputedStyle(app?.querySelector(name) as Element).visibility !== 'hidden',
      );
    });
    expect(reached).toEqual([]);
  });

  it('prints what was chosen: upright A4, index and check sheet only', async () => {
    const { page } = desk;
    const boxes = page.locator('mp-paper-choices input[type=checkbox]');
    for (const name of ['Detail maps', 'Box cards', 'Number labels', 'Materials'])
      await page.locator('mp-paper-choices label.tick', { hasText: name }).click();
    expect(await boxes.count()).toBe(7);
    await page.locator('mp-paper-choices label', { hasText: 'Upright' }).click();
    await page.locator('mp-paper-choices label', { hasText: 'A4' }).click();
    const sheets = await waitForSheets(page);
    expect(new Set(sheets.map((sheet) => sheet.name))).toEqual(new Set(['index', 'check']));
    const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    if (missing) return;
    wordsOf(Buffer.from(printed), 'paper-a4');
    const sizes = pagesOf('paper-a4');
    expect(sizes.length).toBe(sheets.length);
    for (const size of sizes) expect(size).toMatch(/^59[45](\.\d+)? x 84[12](\.\d+)?$/);
  }, 120_000);

  it('keeps the accessibility rules with other choices, in another theme', async () => {
    expect(await rulesBroken(desk.page, 'chosen', themeNames[1])).toEqual([]);
  }, 90_000);

  it('says nothing on the console', () => {
    expect(desk.said).toEqual([]);
  });
});

describe('the paper of the yard on a phone', () => {
  it('keeps the accessibility rules and large targets, in the third theme', async () => {
    const { page } = await openApp(walk, '#site=yard&place=paper', { width: 390, height: 844 });
    await waitForSheets(page);
    await page.locator('mp-notebook .heights button').nth(1).click();
    expect(await rulesBroken(page, 'phone', themeNames[2])).toEqual([]);
    expect(await smallTargets(page, 55.5)).toEqual([]);
  }, 200_000);
});
