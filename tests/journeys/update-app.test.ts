/** A second version of the app: it is fetched whole, waits, and is taken only when the person agrees; visits stay. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtApp } from './build.ts';
import { lightMap } from './light-map.ts';
import { startWalk, type Walk } from './serve.ts';

const copy = mkdtempSync(join(tmpdir(), 'meadowpost-update-'));
let walk: Walk;
let server: PreviewServer;
let context: BrowserContext;
let page: Page;

interface Shown {
  store: { state: { planOf: unknown; round: { offline: string; logState: string; log: unknown[] } } };
}
const offline = () =>
  page.evaluate(() => (document.querySelector('mp-app') as unknown as Shown).store.state.round.offline);
const version = () => page.evaluate(() => document.documentElement.dataset.version ?? 'first');
const visits = () =>
  page.evaluate(() => (document.querySelector('mp-app') as unknown as Shown).store.state.round.log.length);
const ready = () =>
  page.waitForFunction(
    () => {
      const state = (document.querySelector('mp-app') as unknown as Shown | null)?.store?.state;
      return !!state?.planOf && state.round.logState === 'kept';
    },
    null,
    { timeout: 60_000 },
  );
const note = () => page.locator('mp-round-trouble .note');

/** The same app with another mark in its page, and so another version of its worker. */
function publishSecond(): void {
  const index = join(copy, 'index.html');
  const worker = join(copy, 'service-worker.js');
  writeFileSync(index, readFileSync(index, 'utf8').replace('<html', '<html data-version="second"'));
  const code = readFileSync(worker, 'utf8');
  const changed = code.replace(/[0-9a-f]{16}/, '0123456789abcdef');
  expect(changed).not.toBe(code);
  writeFileSync(worker, changed);
}

beforeAll(async () => {
  walk = await startWalk();
  cpSync(builtApp, copy, { recursive: true });
  server = await preview({ build: { outDir: copy }, preview: { host: '127.0.0.1', port: 0 }, logLevel: 'error' });
  context = await walk.browser.newContext({ viewport: { width: 1000, height: 800 }, reducedMotion: 'reduce' });
  await lightMap(context);
  page = await context.newPage();
  await page.goto(`${server.resolvedUrls?.local[0]}#site=yard&place=round`);
  await ready();
}, 240_000);
afterAll(async () => {
  await context?.close();
  await server?.close();
  await walk?.close();
  rmSync(copy, { recursive: true, force: true });
});

describe('a newer version of the app', () => {
  it('waits while the person has not agreed, through a reload and without signal', async () => {
    await expect.poll(offline, { timeout: 60_000 }).toBe('ready');
    await page.locator('mp-round-list button[data-box="1"]').click();
    await page.locator('mp-visit-choices button[data-state=empty]').click();
    await page.locator('mp-visit-form button.keep').click();
    await expect.poll(visits).toBe(1);
    publishSecond();
    await page.evaluate(async () => void (await (await navigator.serviceWorker.getRegistration())?.update()));
    await expect.poll(offline, { timeout: 60_000 }).toBe('update-waiting');
    expect(await note().textContent()).toContain('A newer Meadowpost is on this device.');
    await note().getByRole('button', { name: 'Later' }).click();
    expect(await note().count()).toBe(0);
    await context.setOffline(true);
    await page.reload();
    await ready();
    expect([await version(), await offline()]).toEqual(['first', 'update-waiting']);
  }, 180_000);

  it('is taken when the person agrees, without signal too; the visits are there', async () => {
    await note().waitFor();
    await Promise.all([
      page.waitForEvent('framenavigated', { timeout: 30_000 }),
      note().getByRole('button', { name: 'Update now' }).click(),
    ]);
    await ready();
    await expect.poll(version).toBe('second');
    await expect.poll(offline).toBe('ready');
    expect(await visits()).toBe(1);
    const caches = await page.evaluate(async () =>
      (await globalThis.caches.keys()).filter((one) => one.startsWith('meadowpost-app-')),
    );
    expect(caches).toEqual(['meadowpost-app-0123456789abcdef']);
  }, 120_000);
});
