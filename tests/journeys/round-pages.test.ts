/** The Round in the whole window: the rules once on a phone and once on a desktop (every page and theme alone: tests/browser/round), a sheet typed in, a round by its link. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeViolations } from './axe.ts';
import type { App, Shown as MapShown } from './layout-ways.ts';
import { picture } from './light-map.ts';
import { newPerson, openApp, startWalk, type Walk } from './serve.ts';

let walk: Walk;

beforeAll(async () => {
  walk = await startWalk();
}, 240_000);
afterAll(async () => walk?.close());

interface Shown {
  store: { state: { round: object }; set(change: object): void };
}

const set = (page: Page, round: object, more: object = {}) =>
  page.evaluate(
    ([change, rest]) => {
      const { store } = document.querySelector('mp-app') as unknown as Shown;
      store.set({ ...rest, round: { ...store.state.round, ...change } });
    },
    [round, more] as const,
  );

describe.each([
  ['desktop', { width: 1440, height: 900 }],
  ['phone', { width: 390, height: 844 }],
] as const)('the Round on a %s', (name, size) => {
  it('keeps the rules beside the map, and says nothing on the console', async () => {
    const { page, said } = await openApp(walk, '#site=yard&place=round&box=1', size);
    expect(await page.locator('mp-place-round h1').first().textContent()).toBe('Box 1');
    await picture(page, `round-${name}`);
    expect(await axeViolations(page)).toEqual([]);
    await page.locator('mp-place-round mp-visit-choices button[data-state=eggs]').click();
    await page.locator('mp-visit-form button.keep').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(said).toEqual([]);
  }, 120_000);
});

describe('the map of a phone on the Round', () => {
  it("shows the box between band and visit, and gets the window's own frame back", async () => {
    const { page } = await openApp(walk, '#site=yard&place=round&box=1', { width: 390, height: 844 });
    const look = () =>
      page.evaluate(() => {
        const app = document.querySelector('mp-app') as unknown as App & { shadowRoot: ShadowRoot };
        const { map } = (app.shadowRoot.querySelector('mp-map') as unknown as MapShown).host;
        const box = app.store.state.plan?.boxes.find(({ number }) => number === 1);
        return {
          ...map.project([...(box?.position ?? [0, 0])] as [number, number]),
          bottom: map.getPadding().bottom ?? 0,
        };
      });
    const { x, y, bottom } = await look();
    expect(bottom).toBe(330);
    expect([x > 60, x < 370, y > 230, y < 844 - bottom + 20]).toEqual([true, true, true, true]);
    await page.getByRole('tab', { name: 'Posts' }).click();
    await expect.poll(async () => (await look()).bottom).not.toBe(330);
  }, 120_000);
});

describe('a sheet typed in', () => {
  it('goes from row to row with Enter, names what it cannot read, and keeps the round', async () => {
    const { page } = await openApp(walk, '#site=yard&place=round', { width: 1440, height: 900 });
    await set(page, { page: 'paper' });
    const rows = page.locator('mp-round-paper input.seen');
    await rows.first().click();
    await page.keyboard.type('g5 w');
    await page.keyboard.press('Enter');
    await page.keyboard.type('q9');
    const keep = page.locator('mp-round-paper button.filled');
    expect(await keep.isDisabled()).toBe(true);
    expect(await page.locator('mp-round-paper tr').nth(2).textContent()).toContain('is not known');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('e');
    expect(await keep.textContent()).toContain('Keep 2 visits');
    await keep.click();
    await expect.poll(() => page.locator('mp-messages .slip').first().textContent()).toContain('2 visits were kept');
    expect(await page.locator('mp-round-paper tr').nth(1).textContent()).toContain('5 eggs');
  }, 240_000);
});

describe('a round by its link', () => {
  it('opens on a phone that has no site, and again after a reload', async () => {
    const { page } = await openApp(walk, '#site=yard&place=round', { width: 1440, height: 900 });
    await set(page, { page: 'share' });
    await page.locator('mp-round-share button[data-places=exact]').click();
    await page.locator('mp-round-share button', { hasText: 'Show the code' }).click();
    const link = (await page.locator('mp-round-share code').textContent()) ?? '';
    expect(link).toContain('#round=r1.');
    const other = await newPerson(walk, { width: 390, height: 844 });
    const phone = await other.newPage();
    await phone.goto(link);
    const heading = phone.locator('mp-round-way h1');
    await expect.poll(() => heading.textContent().catch(() => ''), { timeout: 30_000 }).toBe('Box 1');
    await phone.reload();
    await expect.poll(() => heading.textContent().catch(() => ''), { timeout: 30_000 }).toBe('Box 1');
    await picture(phone, 'round-shared');
    await other.close();
  }, 240_000);
});
