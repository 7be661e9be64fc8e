/** The list of sites, the word beside the name and the recovery screen, as a person meets them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { picture } from './light-map.ts';
import { newPerson, startWalk, type Walk } from './serve.ts';

let walk: Walk;
let context: BrowserContext;
let page: Page;
const said: string[] = [];

beforeAll(async () => {
  walk = await startWalk();
  context = await fresh();
  page = await open(context, '#site=yard&place=posts');
}, 180_000);
afterAll(async () => walk?.close());

function fresh(size = { width: 1100, height: 760 }): Promise<BrowserContext> {
  return newPerson(walk, size);
}

async function open(where: BrowserContext, hash: string): Promise<Page> {
  const opened = await where.newPage();
  opened.on('pageerror', (error) => said.push(String(error)));
  await opened.goto(walk.url + hash);
  await opened.locator('mp-saved-word [role=status]').filter({ hasText: /\S/ }).waitFor({ timeout: 60_000 });
  return opened;
}

const word = (on = page) => on.locator('mp-saved-word [role=status]').textContent();
const name = (on = page) => on.locator('mp-notebook header h2').textContent();
const sites = (on = page) => on.locator('mp-site-library ul').first().locator('.title').allTextContents();
const act = (text: string, on = page) => on.locator('mp-site-acts button', { hasText: text });
const message = (text: string, on = page) => on.locator('mp-messages .slip', { hasText: text });
const library = async (on = page) => {
  await on.locator('mp-notebook .sites').click();
  await on.locator('mp-site-library h1').waitFor();
};
const more = (site: string, on = page) => on.getByRole('button', { name: `More for ${site}`, exact: true }).click();

async function renameTo(text: string, on = page): Promise<void> {
  await act('Rename', on).click();
  await on.locator('mp-site-acts input[type=text]').fill(text);
  await act('Use this name', on).click();
}

/** Polls long enough for a busy machine. */
const soon = <T>(what: () => Promise<T>, options = { timeout: 15_000 }) => expect.poll(what, options);

describe('the list of sites', () => {
  it('says of a demo that it lasts no longer than the window', async () => {
    expect(await word()).toBe('demo, kept only in this window');
    await library();
    await soon(() => page.locator('mp-site-library mp-page').textContent()).toContain('No site yet');
  });

  it('makes a site, renames it and says when it is saved, and that it is here only', async () => {
    await page.locator('mp-site-library button.filled').click();
    await soon(() => name()).toBe('New site');
    await soon(() => word()).toMatch(/^saved \d\d:\d\d, here only: never downloaded$/);
    await library();
    await more('New site');
    await renameTo('Thistle Field');
    await soon(() => name()).toBe('Thistle Field');
    await soon(() => sites()).toEqual(['Thistle Field']);
    await message('Renamed to Thistle Field').getByText('Undo').click();
    await soon(() => name()).toBe('New site');
    await page.keyboard.press('Escape');
    await page.locator('mp-slips button', { hasText: 'Redo' }).first().click();
    await soon(() => sites()).toEqual(['Thistle Field']);
  });

  it('duplicates, deletes with undo and by the bin', async () => {
    await act('Duplicate').click();
    await soon(() => sites()).toEqual(['Thistle Field (copy)', 'Thistle Field']);
    await more('Thistle Field (copy)');
    await picture(page, 'sites-acts');
    await act('Delete').click();
    await soon(() => sites()).toEqual(['Thistle Field']);
    await message('Thistle Field (copy) is in the bin').getByText('Put it back').click();
    await soon(() => sites()).toEqual(['Thistle Field (copy)', 'Thistle Field']);
    await act('Delete').click();
    await page.locator('mp-site-library').getByText('Put back', { exact: true }).click();
    await soon(() => sites()).toHaveLength(2);
  });

  it('goes back to an earlier state as a change that can be undone', async () => {
    await more('Thistle Field');
    await act('Earlier states').click();
    const rows = page.locator('mp-site-acts li');
    await soon(() => rows.count()).toBeGreaterThanOrEqual(2);
    await picture(page, 'sites-states');
    await rows.last().getByText('Go back to this').click();
    await soon(() => name()).toBe('New site');
    await soon(() => rows.first().textContent()).toContain('Went back to state 1');
    await page.locator('mp-slips button', { hasText: 'Undo' }).first().click();
    await soon(() => name()).toBe('Thistle Field');
  });

  it('comes back after a reload with site and undo', async () => {
    await soon(() => word()).toMatch(/^saved/);
    await page.reload();
    await soon(() => name(), { timeout: 20_000 }).toBe('Thistle Field');
    await page.locator('mp-slips button', { hasText: 'Undo' }).first().click();
    await soon(() => name()).toBe('New site');
    await page.locator('mp-slips button', { hasText: 'Redo' }).first().click();
    await soon(() => name()).toBe('Thistle Field');
  });

  it('opens the site that was last open when the address names none', async () => {
    const again = await open(context, '');
    await soon(() => name(again)).toBe('Thistle Field');
    await again.close();
  });
});

describe('the site file', () => {
  const file = join('out', 'storage-thistle.geojson');

  it('is downloaded with its seal, and opens as a site of its own', async () => {
    await library();
    await more('Thistle Field');
    const coming = page.waitForEvent('download');
    await act('Download').click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe('Thistle Field.geojson');
    await download.saveAs(file);
    expect(readFileSync(file, 'utf8')).toMatch(/"sha256": "[0-9a-f]{64}"/);
    await soon(() => word()).toMatch(/^saved \d\d:\d\d$/);
    await page.locator('mp-site-library input[type=file]').setInputFiles(file);
    await soon(() => name()).toBe('Thistle Field (2)');
    expect(await message('is now one of your sites').count()).toBe(1);
  });

  it('that was changed is said to be damaged and never takes the place of the good one', async () => {
    writeFileSync(file, readFileSync(file, 'utf8').replace('"minimumScore": 40', '"minimumScore": 41'));
    await library();
    await page.locator('mp-site-library input[type=file]').setInputFiles(file);
    await soon(() => name()).toBe('Thistle Field (damaged copy)');
    expect(await message('is not as it was saved').count()).toBe(1);
    writeFileSync(file, readFileSync(file, 'utf8').slice(0, 200));
    await library();
    await page.locator('mp-site-library input[type=file]').setInputFiles(file);
    await message('could not be opened').waitFor();
    expect(await name()).toBe('Thistle Field (damaged copy)');
  });
});

describe('a second window', () => {
  it('looks on, takes over, and the first one says so', async () => {
    const second = await open(context, await page.evaluate(() => location.hash));
    await soon(() => word(second)).toContain('here to look at only');
    await picture(second, 'sites-second-window');
    await second.locator('mp-saved-word button').click();
    await soon(() => word(second)).toMatch(/^saved/);
    await soon(() => word()).toContain('here to look at only');
    await second.close();
    await page.locator('mp-saved-word button').click();
    await soon(() => word()).toMatch(/^saved/);
  });
});

describe('two copies that differ', () => {
  it('are shown with dates and counts; one is used, the other can be downloaded', async () => {
    const id = await page.evaluate(() => new URLSearchParams(location.hash.slice(1)).get('site'));
    await page.evaluate(async () => {
      const wipe = indexedDB.open('meadowpost');
      const db = await new Promise<IDBDatabase>((r) => {
        wipe.onsuccess = () => r(wipe.result);
      });
      const tx = db.transaction(['heads', 'revisions'], 'readwrite');
      tx.objectStore('heads').clear();
      tx.objectStore('revisions').clear();
      await new Promise((r) => {
        tx.oncomplete = r;
      });
      db.close();
    });
    await page.reload();
    const recovery = page.locator('mp-recovery');
    await recovery.locator('h1').waitFor();
    expect(await recovery.locator('section').count()).toBeGreaterThanOrEqual(3);
    const mine = recovery.locator(`section[data-site="${id}"]`);
    await soon(() => mine.textContent()).toContain('things drawn');
    expect(await mine.textContent()).toContain('nothing whole');
    await picture(page, 'sites-recovery');
    const coming = page.waitForEvent('download');
    await mine.getByText('Download the second copy').click();
    expect((await coming).suggestedFilename()).toContain('second copy');
    await mine.getByText('Use the second copy').click();
    await soon(() => recovery.locator(`section[data-site="${id}"]`).count()).toBe(0);
    await recovery.getByText('Start without my data').click();
    await soon(() => name()).toBe('Thistle Field (damaged copy)');
    await library();
    expect(await sites()).toEqual(['Thistle Field (damaged copy)']);
    expect(await page.locator('mp-site-library mp-page').textContent()).toContain('have two copies that differ');
    await page.reload();
    await page.locator('mp-recovery h1').waitFor();
  });
});

describe('a browser that keeps nothing', () => {
  it('says so beside the name and in the list; the work stays and can be downloaded', async () => {
    const where = await fresh({ width: 390, height: 844 });
    await where.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException(
          'A mutation operation was attempted on a database that did not allow it.',
          'InvalidStateError',
        );
      };
      Object.defineProperty(StorageManager.prototype, 'getDirectory', { value: undefined });
    });
    const phone = await open(where, '#site=yard&place=posts');
    await library(phone);
    await phone.locator('mp-site-library button.filled').click();
    await soon(() => word(phone)).toBe('kept only in this window');
    await library(phone);
    await more('New site', phone);
    await renameTo('Here Only', phone);
    await soon(() => word(phone)).toBe('kept only in this window');
    expect(await phone.locator('mp-kept-note section').textContent()).toContain(
      'Download your site before you close it',
    );
    await picture(phone, 'sites-phone-window-only');
    const coming = phone.waitForEvent('download');
    await act('Download', phone).click();
    expect((await coming).suggestedFilename()).toBe('Here Only.geojson');
    await where.close();
  });

  it('no uncaught error came up anywhere', () => {
    expect(said).toEqual([]);
  });
});
