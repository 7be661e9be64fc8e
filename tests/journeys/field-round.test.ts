/** A volunteer walks forty boxes without signal: the app comes from the device, the browser is killed twice, no visit is lost. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from '../../scripts/browser.mjs';
import { birdById } from '../../src/birds/index.ts';
import { inventSeasons } from '../../src/visits/invent.ts';
import { writeVisitFile } from '../../src/visits/visit-file.ts';
import { lightMap, picture } from './light-map.ts';
import { startWalk, type Walk } from './serve.ts';

const profile = mkdtempSync(join(tmpdir(), 'meadowpost-field-'));
let walk: Walk;
let phone: { context: BrowserContext; page: Page };

interface Box {
  readonly number: number;
  readonly post: string;
  readonly position: [number, number];
}

/** The same phone each time: one profile on the disk. */
async function pickUp(offline: boolean): Promise<typeof phone> {
  const found = await findBrowser();
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: found.executablePath,
    env: found.env,
    args: browserArgs,
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    reducedMotion: 'reduce',
    timezoneId: 'America/New_York',
    permissions: ['geolocation'],
    geolocation: { longitude: -84.0525, latitude: 40.3105, accuracy: 6 },
  });
  await lightMap(context);
  await context.setOffline(offline);
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(`${walk.url}#site=park&place=round`);
  await page.waitForFunction(ready, null, { timeout: 120_000 });
  return { context, page };
}

interface Shown {
  store: {
    state: {
      plan: { boxes: Box[] } | null;
      engine: { at: string };
      selection: { number: number } | null;
      round: {
        offline: string;
        logState: string;
        unsaved: unknown[];
        log: { post: string; state: string; eggs: { count: number } | null }[];
      };
    };
  };
}

/** Runs in the page: the whole plan is there and the visits are read. */
function ready(): boolean {
  const state = (document.querySelector('mp-app') as unknown as Shown | null)?.store?.state;
  return !!state?.plan && state.engine.at === 'rest' && state.round.logState === 'kept';
}

const state = (page: Page) =>
  page.evaluate(() => {
    const { plan, selection, round } = (document.querySelector('mp-app') as unknown as Shown).store.state;
    return {
      boxes: plan?.boxes.map(({ number, post, position }) => ({ number, post, position })) ?? [],
      target: selection?.number ?? null,
      offline: round.offline,
      unsaved: round.unsaved.length,
      log: round.log.map(({ post, state: seen, eggs }) => ({ post, seen, eggs: eggs?.count ?? null })),
    };
  });

/** Kills the whole browser as a phone does when it runs out of memory: no page hears of it. */
function kill(): void {
  const ids = execFileSync('pgrep', ['-f', `user-data-dir=${profile}`], { encoding: 'utf8' })
    .trim()
    .split('\n');
  for (const id of ids) {
    try {
      process.kill(Number(id), 'SIGKILL');
    } catch {
      // Gone with its parent already.
    }
  }
}

/** What is found at a box: four of five hold something. */
const found = (number: number) => (['empty', 'building', 'eggs', 'eggs', 'fledged'] as const)[number % 5]!;
const eggsAt = (number: number) => 3 + (number % 4);

/** One visit by touch; returns the number of taps. */
async function visit(page: Page, number: number): Promise<number> {
  const seen = found(number);
  let taps = 2;
  await page.locator(`mp-place-round mp-visit-choices button[data-state=${seen}]`).tap();
  if (seen === 'eggs') {
    await page.locator('mp-count-keys .keys button', { hasText: String(eggsAt(number)) }).tap();
    taps++;
  }
  await page.locator('mp-visit-form button.keep').tap();
  await page.locator('mp-visit-form').waitFor({ state: 'detached' });
  return taps;
}

beforeAll(async () => {
  walk = await startWalk();
}, 240_000);
afterAll(async () => {
  await phone?.context.close().catch(() => undefined);
  await walk?.close();
  rmSync(profile, { recursive: true, force: true });
});

describe('forty boxes in airplane mode', () => {
  let boxes: Box[] = [];
  let noted = 0;

  const walkOn = async (until: number) => {
    const { page, context } = phone;
    while (noted < until) {
      const { target } = await state(page);
      const box = boxes.find((one) => one.number === target);
      if (!box) throw new Error(`no box to go to after ${noted} visits`);
      await context.setGeolocation({ longitude: box.position[0] + 0.00004, latitude: box.position[1], accuracy: 6 });
      expect(await visit(page, box.number)).toBeLessThanOrEqual(3);
      noted++;
      await expect.poll(async () => (await state(page)).log.length).toBe(noted);
      await expect.poll(async () => (await state(page)).unsaved).toBe(0);
    }
  };

  it('puts the app on the device with signal', async () => {
    phone = await pickUp(false);
    await expect.poll(async () => (await state(phone.page)).offline, { timeout: 60_000 }).toBe('ready');
    boxes = (await state(phone.page)).boxes;
    expect(boxes.length).toBe(40);
    expect(await phone.page.evaluate(() => document.querySelector('mp-app')?.getAttribute('data-theme'))).toBe(
      'sunlight',
    );
  }, 240_000);

  it('lets a box be skipped and gone to out of order, and takes a visit back for ten seconds', async () => {
    await phone.context.setOffline(true);
    const { page } = phone;
    const target = async () => (await state(page)).target;
    expect(await target()).toBe(1);
    await page.locator('mp-place-round .foot button').first().tap();
    expect(await target()).toBe(2);
    await page.locator('mp-round-way .progress').tap();
    await page.locator('mp-round-list button[data-box="1"]').tap();
    expect(await target()).toBe(1);
    await visit(page, 1);
    await expect.poll(async () => (await state(page)).log.length).toBe(1);
    await page.locator('mp-messages .slip.undo button').tap();
    await expect.poll(async () => (await state(page)).log.length).toBe(0);
    await expect.poll(target).toBe(1);
  });

  it('is walked, killed and walked on, and loses nothing', async () => {
    await walkOn(13);
    await picture(phone.page, 'field-walk');
    for (const next of [27, 40]) {
      kill();
      await phone.context.close().catch(() => undefined);
      phone = await pickUp(true);
      expect((await state(phone.page)).log.length).toBe(noted);
      await walkOn(next);
    }
    kill();
    await phone.context.close().catch(() => undefined);
    phone = await pickUp(true);
    const { log } = await state(phone.page);
    expect(log.length).toBe(40);
    const byPost = new Map(log.map((one) => [one.post, one]));
    for (const box of boxes) {
      const seen = found(box.number);
      expect(byPost.get(box.post)).toMatchObject({ seen, eggs: seen === 'eggs' ? eggsAt(box.number) : null });
    }
    expect(await phone.page.locator('mp-place-round h1').first().textContent()).toContain('All 40 boxes were seen');
  }, 600_000);

  it('gets the files of four walkers, adds each visit once, and shows what they saw differently', async () => {
    const { page } = phone;
    const season = inventSeasons({
      boxes: boxes.map(({ number, post }) => ({ number, post, bird: birdById('eastern-bluebird'), score: 0.7 })),
      firstYear: 2025,
      years: 1,
      seed: 11,
    });
    const [seen] = season;
    const clash = { ...seen!, id: 'clash', state: 'failed' as const, observer: 'Invented walker 4', time: '11:11' };
    expect(seen!.observer).not.toBe(clash.observer);
    const files = [1, 2, 3, 4].map((walker) => ({
      name: `walker-${walker}.json`,
      mimeType: 'application/json',
      buffer: Buffer.from(
        writeVisitFile({
          site: 'Tansy Hollow Park',
          invented: true,
          visits: [...season, clash].filter((one) => one.observer.endsWith(String(walker))),
        }),
      ),
    }));
    await page.locator('mp-place-round button.filled').tap();
    const input = page.locator('mp-round-share input[type=file]');
    const report = page.locator('mp-round-share .report b');
    for (const file of files) await input.setInputFiles(file);
    await expect.poll(async () => (await state(page)).log.length, { timeout: 60_000 }).toBe(41 + season.length);
    const told = page.locator('mp-round-share .report');
    await expect.poll(() => told.textContent()).toContain('Nothing was overwritten: all versions are kept.');
    expect(await told.textContent()).toContain(`On ${seen!.date} walkers saw box ${seen!.box} differently`);
    await picture(page, 'field-merge');
    await input.setInputFiles([]);
    await input.setInputFiles(files[3]!);
    await expect.poll(() => report.textContent()).toMatch(/^0 visits were added/);
    expect((await state(page)).log.length).toBe(41 + season.length);
    await input.setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"broken') });
    await expect.poll(() => page.locator('mp-round-share .wash').textContent()).toContain('Nothing was taken in');
  }, 240_000);
});
