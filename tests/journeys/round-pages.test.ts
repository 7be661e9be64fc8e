/** Every page of the Round in three themes, on a phone and on a desktop: accessibility rules, target sizes, nothing on the console. */
import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { themeNames } from '../../src/app/theme.ts';
import { axeViolations } from './axe.ts';
import { openApp, startWalk, type Walk } from './serve.ts';

const pictures = 'out/pictures';
let walk: Walk;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
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

/** Buttons of the Round under the asked size, hidden ones aside. */
const small = (page: Page, least: number) =>
  page.evaluate((px) => {
    const found: string[] = [];
    const look = (root: ParentNode) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) look(element.shadowRoot);
        if (element.localName !== 'button') continue;
        const { width, height } = element.getBoundingClientRect();
        if (width > 0 && (width < 43.5 || height < px - 0.5))
          found.push(`${element.textContent?.trim()} ${Math.round(width)}×${Math.round(height)}`);
      }
    };
    const place = document
      .querySelector('mp-app')
      ?.shadowRoot?.querySelector('mp-notebook')
      ?.shadowRoot?.querySelector('mp-place-round');
    if (place?.shadowRoot) look(place.shadowRoot);
    return found;
  }, least);

const sizes = [
  ['desktop', { width: 1440, height: 900 }, 44],
  ['phone', { width: 390, height: 844 }, 44],
] as const;

describe.each(sizes)('the Round on a %s', (name, size, least) => {
  it('keeps the rules on every page in every theme', async () => {
    const { page, said } = await openApp(walk, '#site=yard&place=round&box=1', size);
    const found: string[] = [];
    const check = async (what: string) => {
      await page.waitForTimeout(60);
      for (const violation of await axeViolations(page)) found.push(`${what}: ${violation}`);
      for (const target of await small(page, least)) found.push(`${what}: small target ${target}`);
      await page.screenshot({ path: `${pictures}/round-${name}-${what}.png`, timeout: 90_000 });
    };
    for (const theme of themeNames) {
      await set(
        page,
        { page: 'walk', draft: null, arrived: null, asking: false },
        { theme, selection: { of: 'box', number: 1 } },
      );
      await check(`${theme}-walk`);
      await page.locator('mp-place-round mp-visit-choices button[data-state=eggs]').click();
      await page.locator('mp-visit-form summary').last().click();
      await page.locator('mp-visit-form button[data-word=wasps]').click();
      await check(`${theme}-form`);
      await page.locator('mp-visit-form button', { hasText: 'Nest key' }).click();
      await page.locator('mp-nest-key button[data-word=twigs]').click();
      await page.locator('mp-nest-key button[data-word=blue]').click();
      await expect.poll(() => page.locator('mp-nest-key .verdict').textContent()).toContain('Unsure');
      await check(`${theme}-key`);
      await set(page, { draft: null, asking: false });
      for (const one of ['list', 'due', 'paper', 'share', 'ready']) {
        await set(page, { page: one });
        if (one === 'share') {
          await page.locator('mp-round-share button[data-places=exact]').click();
          if (!(await page.locator('mp-round-share .qr').count()))
            await page.locator('mp-round-share button', { hasText: 'Show the code' }).click();
          await page.locator('mp-round-share .qr svg').waitFor();
        }
        await check(`${theme}-${one}`);
      }
    }
    expect(found).toEqual([]);
    expect(said).toEqual([]);
  }, 420_000);
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
    const other = await page
      .context()
      .browser()!
      .newContext({
        viewport: { width: 390, height: 844 },
        hasTouch: true,
        serviceWorkers: 'block',
      });
    const phone = await other.newPage();
    await phone.goto(link);
    const heading = phone.locator('mp-round-way h1');
    await expect.poll(() => heading.textContent().catch(() => ''), { timeout: 30_000 }).toBe('Box 1');
    await phone.reload();
    await expect.poll(() => heading.textContent().catch(() => ''), { timeout: 30_000 }).toBe('Box 1');
    await phone.screenshot({ path: `${pictures}/round-shared.png` });
    await other.close();
  }, 240_000);
});
