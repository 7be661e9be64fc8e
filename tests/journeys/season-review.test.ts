/** Three invented seasons on the park demo: looked back on, a box opened, next year drafted and undone, tables taken along. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeViolations } from './axe.ts';
import { picture } from './light-map.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

let walk: Walk;
let desk: Opened;

interface Told {
  plan: { boxes: { number: number; post: string }[]; date: string };
  site: { features: { id: string; properties: Record<string, unknown> }[]; settings: { date: string; name: string } };
  siteId: string;
  engine: { at: string };
  saved: { at: string };
  round: { log: unknown[] };
  season: {
    invented: { siteId: string } | null;
    working: boolean;
    trail: { review: { boxes: { post: string; nests: unknown[] }[]; occupancy: { part: number; of: number } } } | null;
  };
}
const state = <T>(page: Page, read: (state: Told) => T): Promise<T> =>
  page.evaluate(`(${read.toString()})(document.querySelector('mp-app').store.state)`) as Promise<T>;
const heading = (page: Page) => page.locator('mp-place-season h1').textContent();

/** The review stands, of the plan of now. */
const reviewed = (page: Page) =>
  expect
    .poll(() => state(page, (s) => s.season.trail !== null && !s.season.working && s.engine.at === 'rest'), {
      timeout: 60_000,
    })
    .toBe(true);

beforeAll(async () => {
  walk = await startWalk();
  desk = await openApp(walk, '#site=park&place=season');
}, 240_000);
afterAll(async () => walk?.close());

describe('the season of the park demo', () => {
  it('says what belongs here while there are no visits', async () => {
    const { page } = desk;
    await page.locator('mp-place-season [data-do=invent]').waitFor();
    expect(await heading(page)).toBe('Season');
    expect(await page.locator('mp-place-season .empty').textContent()).toContain('No visits yet');
    expect(await axeViolations(page)).toEqual([]);
  });

  it('looks back on three invented seasons, marked as invented, without touching the real visits', async () => {
    const { page } = desk;
    await page.locator('mp-place-season [data-do=invent]').click();
    await reviewed(page);
    expect(await heading(page)).toBe('Season review');
    expect(await page.locator('mp-place-season .stamp').textContent()).toBe('INVENTED');
    expect(await state(page, (s) => s.round.log.length)).toBe(0);
    const { part, of } = await state(page, (s) => s.season.trail!.review.occupancy);
    expect(await page.locator('mp-season-totals [data-used]').textContent()).toContain(`${part} of ${of} sites`);
    expect(await page.locator('mp-season-boxes li button').count()).toBe(40);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('chooses one year', async () => {
    const { page } = desk;
    const years = page.locator('mp-place-season .years button');
    expect(await years.count()).toBe(4);
    await years.nth(1).click();
    await expect.poll(() => state(page, (s) => s.season.trail!.review.occupancy.of), { timeout: 60_000 }).toBe(40);
    await years.nth(0).click();
    await expect.poll(() => state(page, (s) => s.season.trail!.review.occupancy.of), { timeout: 60_000 }).toBe(120);
  });

  it('opens a box with its timeline, its nests and its advice', async () => {
    const { page } = desk;
    await page.locator('mp-season-boxes li button').nth(2).click();
    expect(await heading(page)).toBe('Box 3');
    expect(await page.locator('mp-season-timeline svg').count()).toBe(3);
    expect(await page.locator('mp-season-timeline svg').first().getAttribute('aria-label')).toContain('2026');
    await page
      .locator('mp-season-box')
      .getByText(/^Rests on /)
      .first()
      .waitFor({ timeout: 10_000 });
    await page.locator('mp-place-season button', { hasText: 'All boxes' }).click();
  });

  it('drafts next year as one step; the demo becomes a site of one’s own and the review stays; one Undo takes it back', async () => {
    const { page } = desk;
    const standing = () => state(page, (s) => s.site.features.filter((f) => f.properties.state === 'fixed').length);
    const year = () => state(page, (s) => s.site.settings.date.slice(0, 4));
    const stood = await standing();
    await page.locator('mp-place-season button.filled').click();
    await page.locator('mp-season-draft input').first().waitFor();
    expect(await heading(page)).toBe('Plan of 2027');
    await page.locator('mp-place-season button.filled').click();
    await expect.poll(year).toBe('2027');
    expect(await standing()).toBeGreaterThan(stood + 20);
    await expect.poll(() => state(page, (s) => s.siteId), { timeout: 20_000 }).not.toBe('park');
    expect(await state(page, (s) => s.season.invented?.siteId === s.siteId)).toBe(true);
    await reviewed(page);
    expect(await page.locator('mp-season-boxes li button').count()).toBeGreaterThanOrEqual(40);
    expect(await page.locator('mp-place-season .stamp').textContent()).toBe('INVENTED');
    await page.locator('mp-slips .history button').first().click();
    await expect.poll(year).toBe('2026');
    expect(await standing()).toBe(stood);
    await reviewed(page);
    expect(await heading(page)).toBe('Season review');
  });

  it('writes visits and nests as tables that say they are invented', async () => {
    const { page } = desk;
    await page.locator('mp-place-season button', { hasText: 'Files' }).click();
    expect(await heading(page)).toBe('Visits in and out');
    const take = async (file: string) => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.locator(`mp-season-files [data-file=${file}]`).click(),
      ]);
      const text = Buffer.concat(await (await download.createReadStream()).toArray()).toString('utf8');
      const [head = '', ...rows] = text
        .replace(/^\uFEFF/, '')
        .trim()
        .split('\r\n');
      return { name: download.suggestedFilename(), head, rows };
    };
    const nests = await take('nests');
    expect(nests.name).toBe('tansy-hollow-park-yours-invented-nests.csv');
    expect(nests.head).toMatch(/^INVENTED,post,box,year/);
    expect(nests.rows.length).toBeGreaterThan(100);
    const visits = await take('visits');
    expect(visits.name).toBe('tansy-hollow-park-yours-invented-visits.csv');
    expect(visits.head).toMatch(/^INVENTED,visit_id,post,box,date/);
    expect(visits.rows.length).toBeGreaterThan(1000);
    for (const row of [...nests.rows, ...visits.rows]) expect(row).toMatch(/^INVENTED,/);
    const words = await take('dictionary');
    for (const column of nests.head.split(',').slice(1))
      expect(words.rows.some((row) => row.startsWith(`nests,${column},`))).toBe(true);
    await page.locator('mp-place-season button', { hasText: 'Back to the review' }).click();
  });

  it('fits a phone, and says nothing on the console', async () => {
    const { page } = desk;
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('mp-notebook .heights button').last().click();
    expect(await heading(page)).toBe('Season review');
    await picture(page, 'season-phone');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.locator('mp-season-boxes li button').nth(2).click();
    expect(await heading(page)).toBe('Box 3');
    await picture(page, 'season-phone-box');
    expect(await axeViolations(page)).toEqual([]);
    expect(desk.said).toEqual([]);
  }, 240_000);
});
