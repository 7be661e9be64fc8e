/** What can go wrong on the way to a plan: each leaves a plan or a reason, and no endless wheel. */
import type { FeatureCollection } from 'geojson';
import type { GeoJSONSource } from 'maplibre-gl';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPosts, planHeld, planned, type Shown } from './layout-ways.ts';
import { newPerson, openApp, startWalk, type Walk } from './serve.ts';

let walk: Walk;

beforeAll(async () => {
  walk = await startWalk();
}, 240_000);
afterAll(async () => walk?.close());

async function ask(page: Page, bird: string, sites: number): Promise<void> {
  const field = page.locator(`mp-land-wanted [data-bird=${bird}] input[type=number]`);
  await field.fill(String(sites));
  await field.press('Enter');
}

describe('a solver that cannot be fetched', () => {
  it('leaves a good plan that says it is not proven', async () => {
    const context = await newPerson(walk);
    const page = await context.newPage();
    let blocked = 0;
    await context.route(/highs-[^/]*\.(js|wasm)$/, (route) => {
      blocked++;
      return route.abort();
    });
    await page.goto(`${walk.url}#site=yard&place=posts`);
    await page.waitForSelector('mp-app[data-map=ready]', { timeout: 60_000 });
    await planned(page, true);
    expect(blocked, 'the solver was asked for').toBeGreaterThan(0);
    const plan = await planHeld(page);
    expect(plan.boxes.length).toBe(2);
    expect(plan.state).toBe('not-proven');
    expect(await page.locator('mp-place-posts .proof').textContent()).toContain('the solver could not be loaded');
    expect(await page.locator('mp-notebook .progress').count()).toBe(0);
    await context.close();
  }, 120_000);
});

describe('a plan that is stopped, and more than fits', () => {
  it('keeps the plan that stood and ends the wheel; more boxes than fit draw what binds', async () => {
    const { page } = await openApp(walk, '#site=yard&place=posts');
    const before = await planHeld(page);
    await openPosts(page, 'choose');
    // Within the page: the yard's plan is there again before a press from outside arrives.
    const again = await page.locator('mp-posts-choose [data-do=again]').elementHandle();
    await page.locator('mp-notebook').evaluate(async (notebook, button) => {
      (button as HTMLElement).click();
      for (let frame = 0; frame < 300; frame++) {
        const stop = notebook.shadowRoot!.querySelector<HTMLElement>('.progress button');
        if (stop) return stop.click();
        await new Promise(requestAnimationFrame);
      }
      throw new Error('no button stops the plan');
    }, again);
    await expect.poll(async () => (await planHeld(page)).at).toBe('rest');
    expect((await planHeld(page)).boxes).toEqual(before.boxes);
    expect(await page.locator('mp-notebook .progress').count()).toBe(0);
    // Far more than an acre holds.
    await ask(page, 'black-capped-chickadee', 30);
    await planned(page, true);
    const many = await planHeld(page);
    expect(many.boxes.length).toBeLessThan(31);
    await page.locator('mp-place-posts [data-do=list]').click();
    const told = page.locator('mp-place-posts .wash').first();
    expect(await told.textContent()).toMatch(/of 30 sites .* found a place/);
    const bound = page.locator('mp-posts-binding [data-do=binding]');
    expect(await bound.getAttribute('aria-pressed')).toBe('true');
    expect(await drawn(page)).toBeGreaterThan(0);
    await bound.click();
    expect(await drawn(page)).toBe(0);
    // And nothing at all wanted.
    await openPosts(page, 'choose');
    for (const bird of ['eastern-bluebird', 'black-capped-chickadee']) await ask(page, bird, 0);
    await planned(page, true);
    expect((await planHeld(page)).boxes.every((box) => box.bird !== '')).toBe(true);
    await page.context().close();
  }, 180_000);

  /** How many lines of what binds the map holds. */
  function drawn(page: Page): Promise<number> {
    return page.locator('mp-map').evaluate(async (view) => {
      const source = (view as unknown as Shown).host.map.getSource('binding') as GeoJSONSource;
      return ((await source.getData()) as FeatureCollection).features.length;
    });
  }
});

describe('a box moved by hand', () => {
  it('is locked where it was put, and says so; unlocking lets the choice move it', async () => {
    const { page } = await openApp(walk, '#site=yard&place=posts&box=1');
    await page.locator('mp-box-keys [role=listbox]').focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => page.locator('mp-messages .slip').last().textContent()).toContain('locked there');
    await planned(page, true);
    const moved = (await planHeld(page)).boxes.filter((box) => box.locked);
    expect(moved).toHaveLength(1);
    const card = page.locator('mp-post-card .head');
    expect(await card.textContent()).toContain('Locked here: every plan keeps it. Not set up yet.');
    expect(await card.textContent()).not.toContain('Standing box');
    await page.locator('mp-place-posts [data-do=lock]').click();
    await planned(page, true);
    expect((await planHeld(page)).boxes.filter((box) => box.locked)).toEqual([]);
    await page.context().close();
  }, 180_000);
});
