/** A trail designer takes the park demo's paper: the preview, the PDF and the printer give the same sheets, true to scale. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { themeNames } from '../../src/app/theme.ts';
import { axeViolations } from './axe.ts';
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

const missing = spawnSync('pdfinfo', ['-v']).error ? 'pdfinfo and pdftotext (poppler-utils) are not installed' : null;
if (missing) console.warn(`skipped: pages and words of the PDF are not read, because ${missing}`);

/** Words of a PDF with their page and place, mm. */
function wordsOf(pdf: Buffer, name: string): { page: number; x: number; y: number; word: string }[] {
  const path = `${pictures}/${name}.pdf`;
  writeFileSync(path, pdf);
  const html = execFileSync('pdftotext', ['-bbox', path, '-'], { encoding: 'utf8', maxBuffer: 64e6 });
  let page = 0;
  return html.split('\n').flatMap((row) => {
    if (row.includes('<page ')) page++;
    const found = /xMin="([\d.]+)" yMin="([\d.]+)".*>(.*)<\/word>/.exec(row);
    const mm = (points: string) => (Number(points) * 25.4) / 72;
    return found ? [{ page, x: mm(found[1]!), y: mm(found[2]!), word: found[3]! }] : [];
  });
}

function pagesOf(name: string): string[] {
  const text = execFileSync('pdfinfo', ['-f', '1', '-l', '999', `${pictures}/${name}.pdf`], { encoding: 'utf8' });
  return [...text.matchAll(/Page +\d+ size: +([\d.]+ x [\d.]+)/g)].map((one) => one[1]!);
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
    await page.screenshot({ path: `${pictures}/paper-desktop.png`, timeout: 90_000 });
    const details = sheets.filter((sheet) => sheet.name === 'details');
    expect(details.flatMap((sheet) => sheet.numbers).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 40 }, (_, i) => i + 1),
    );
  });

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
    const at = (words: typeof ours, p: number, word: string) => words.filter((w) => w.page === p && w.word === word);
    // The figures at the ends of the calibration line and of the scale bar, and the head: all over each map page.
    let compared = 0;
    for (const [i, sheet] of sheets.entries()) {
      if (sheet.name !== 'index' && sheet.name !== 'details') continue;
      for (const word of ['100', 'Sheet', 'revision', 'true', 'line'])
        for (const [j, one] of at(ours, i + 1, word).entries()) {
          const other = at(theirs, i + 1, word)[j];
          expect(other, `${word} on page ${i + 1}`).toBeDefined();
          expect(Math.abs(other!.x - one.x), `${word} on page ${i + 1}`).toBeLessThan(0.5);
          expect(Math.abs(other!.y - one.y), `${word} on page ${i + 1}`).toBeLessThan(1.5);
          compared++;
        }
    }
    expect(compared).toBeGreaterThan(20);
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

  it('prints what was chosen: upright A4, check sheet and maps only', async () => {
    const { page } = desk;
    const boxes = page.locator('mp-paper-choices input[type=checkbox]');
    for (const name of ['Box cards', 'Number labels', 'Materials'])
      await page.locator('mp-paper-choices label', { hasText: name }).click();
    expect(await boxes.count()).toBe(7);
    await page.locator('mp-paper-choices label', { hasText: 'Upright' }).click();
    await page.locator('mp-paper-choices label', { hasText: 'A4' }).click();
    const sheets = await waitForSheets(page);
    expect(new Set(sheets.map((sheet) => sheet.name))).toEqual(new Set(['index', 'details', 'check']));
    const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    if (missing) return;
    wordsOf(Buffer.from(printed), 'paper-a4');
    const sizes = pagesOf('paper-a4');
    expect(sizes.length).toBe(sheets.length);
    for (const size of sizes) expect(size).toMatch(/^59[45](\.\d+)? x 84[12](\.\d+)?$/);
  }, 120_000);

  it('says nothing on the console', () => {
    expect(desk.said.filter((words) => !words.includes('Service Worker registration blocked'))).toEqual([]);
  });
});

describe('accessibility rules', () => {
  it.each([
    ['desktop', null],
    ['phone', { width: 390, height: 844 }],
  ] as const)(
    'hold in every theme on a %s',
    async (name, size) => {
      const { page } = size ? await openApp(walk, '#site=yard&place=paper', size) : desk;
      await waitForSheets(page);
      if (size) await page.locator('mp-notebook .heights button').nth(1).click();
      const found: string[] = [];
      for (const theme of themeNames) {
        await page.evaluate(
          (t) =>
            (document.querySelector('mp-app') as unknown as { store: { set(s: object): void } }).store.set({
              theme: t,
            }),
          theme,
        );
        for (const violation of await axeViolations(page)) found.push(`${name} ${theme}: ${violation}`);
        await page.screenshot({ path: `${pictures}/paper-${name}-${theme}.png`, timeout: 90_000 });
      }
      expect(found).toEqual([]);
      const small = await page.evaluate(
        (least) => {
          const out: string[] = [];
          const place = document.querySelector('mp-app')?.shadowRoot?.querySelector('mp-notebook')?.shadowRoot;
          const look = (root: ParentNode): void => {
            for (const element of root.querySelectorAll('*')) {
              if (element.shadowRoot) look(element.shadowRoot);
              if (!['button', 'select'].includes(element.localName) && !element.matches('label, [role=option]'))
                continue;
              const { width, height } = element.getBoundingClientRect();
              if (width > 0 && (width < 43.5 || height < least))
                out.push(`${element.textContent?.trim()} ${width}×${height}`);
            }
          };
          const paper = place?.querySelector('mp-place-paper')?.shadowRoot;
          if (paper) look(paper);
          return out;
        },
        size ? 55.5 : 43.5,
      );
      expect(small).toEqual([]);
    },
    200_000,
  );
});
