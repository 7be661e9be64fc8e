/** Three invented seasons on the park demo: looked back on, a box opened, next year drafted and undone. */
import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { themeNames } from '../../src/app/theme.ts';
import { axeViolations } from './axe.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

const pictures = 'out/pictures';
let walk: Walk;
let desk: Opened;

interface Told {
  plan: { boxes: { number: number; post: string }[]; date: string };
  site: { features: { id: string; properties: Record<string, unknown> }[]; settings: { date: string } };
  round: { log: unknown[] };
  season: {
    trail: { review: { boxes: { post: string; nests: unknown[] }[]; occupancy: { part: number; of: number } } };
  };
}
const state = <T>(page: Page, read: (state: Told) => T): Promise<T> =>
  page.evaluate(`(${read.toString()})(document.querySelector('mp-app').store.state)`) as Promise<T>;

async function reviewed(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const { season } = (
        document.querySelector('mp-app') as unknown as {
          store: { state: { season: { trail: unknown; working: boolean } } };
        }
      ).store.state;
      return season.trail !== null && !season.working;
    },
    null,
    { timeout: 60_000 },
  );
}

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  walk = await startWalk();
  desk = await openApp(walk, '#site=park&place=season');
}, 240_000);
afterAll(async () => walk?.close());

describe('the season of the park demo', () => {
  it('says what belongs here while there are no visits', async () => {
    const { page } = desk;
    const place = page.locator('mp-place-season');
    await place.locator('[data-do=invent]').waitFor();
    expect(await place.locator('.empty').textContent()).toContain('No visits yet');
    await page.screenshot({ path: `${pictures}/season-empty.png` });
    expect(await axeViolations(page)).toEqual([]);
  });

  it('looks back on three invented seasons, marked as invented, without touching the real visits', async () => {
    const { page } = desk;
    await page.locator('mp-place-season [data-do=invent]').click();
    await reviewed(page);
    expect(await page.locator('mp-place-season .stamp').textContent()).toBe('INVENTED');
    expect(await state(page, (s) => s.round.log.length)).toBe(0);
    const { part, of } = await state(page, (s) => s.season.trail.review.occupancy);
    expect(await page.locator('mp-season-totals [data-used]').textContent()).toContain(`${part} of ${of} sites`);
    expect(await page.locator('mp-season-boxes li button').count()).toBe(40);
    await page.screenshot({ path: `${pictures}/season-review.png` });
    await page.locator('mp-season-told').scrollIntoViewIfNeeded();
    await page.screenshot({ path: `${pictures}/season-told.png` });
    await page.locator('mp-season-boxes li').nth(8).scrollIntoViewIfNeeded();
    await page.screenshot({ path: `${pictures}/season-boxes.png` });
  });

  it('chooses one year', async () => {
    const { page } = desk;
    const years = page.locator('mp-place-season .years button');
    expect(await years.count()).toBe(4);
    await years.nth(1).click();
    await reviewed(page);
    await expect.poll(() => state(page, (s) => s.season.trail.review.occupancy.of)).toBe(40);
    await years.nth(0).click();
    await expect.poll(() => state(page, (s) => s.season.trail.review.occupancy.of), { timeout: 30_000 }).toBe(120);
  });

  it('opens a box with its timeline, its nests and its advice', async () => {
    const { page } = desk;
    await page.locator('mp-season-boxes li button').nth(2).click();
    expect(await page.locator('mp-place-season h1').textContent()).toBe('Box 3');
    expect(await page.locator('mp-season-timeline svg').count()).toBe(3);
    expect(await page.locator('mp-season-timeline svg').first().getAttribute('aria-label')).toContain('2026');
    await page
      .locator('mp-season-box')
      .getByText(/Source/)
      .first()
      .waitFor({ timeout: 10_000 });
    await page.screenshot({ path: `${pictures}/season-box.png` });
    await page.locator('mp-place-season button', { hasText: 'All boxes' }).click();
  });

  it('keeps the accessibility rules on every page, each in a theme of its turn, and says nothing on the console', async () => {
    const { page } = desk;
    const found: string[] = [];
    for (const [i, shown] of ['review', 'box', 'draft', 'files'].entries()) {
      const theme = themeNames[i % themeNames.length]!;
      await page.evaluate(
        ([t, p]) => {
          const { store } = document.querySelector('mp-app') as unknown as {
            store: { state: { season: object; plan: { boxes: { post: string }[] } }; set(s: object): void };
          };
          const { season, plan } = store.state;
          store.set({ theme: t, season: { ...season, page: p, box: plan.boxes[2]!.post } });
        },
        [theme, shown],
      );
      await page.waitForTimeout(120);
      for (const violation of await axeViolations(page)) found.push(`${theme} ${shown}: ${violation}`);
    }
    expect(found).toEqual([]);
    expect(desk.said).toEqual([]);
  });
});
