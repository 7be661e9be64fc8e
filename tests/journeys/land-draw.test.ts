/** A woods of thirty corners, drawn with touch on a phone and with the keyboard alone at a desk. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { around, held, tabTo } from './land-ways.ts';
import { picture } from './light-map.ts';
import { openApp, startWalk, type Walk } from './serve.ts';

/** Software drawing on a shared machine is slow; the steps themselves wait for what they need. */
vi.setConfig({ testTimeout: 240_000 });
let walk: Walk;

beforeAll(async () => {
  walk = await startWalk();
}, 240_000);
afterAll(async () => walk?.close());

describe('thirty corners', () => {
  it('are put with touch on a phone, one taken back, and finished with a button', async () => {
    const { page, said } = await openApp(walk, '#site=yard&place=land', { width: 390, height: 844 });
    const before = (await held(page)).kinds.length;
    await page.locator('[data-do=no-tour]').tap();
    await page.locator('[data-do=draw]').tap();
    await page.locator('[data-kind=woods]').first().tap();
    await page.getByLabel('Pull to corners and borders').tap();
    const corners = around(195, 275, 115, 30);
    await page.touchscreen.tap(195, 275);
    await expect.poll(() => held(page).then((h) => h.corners)).toBe(1);
    await page.locator('[data-do=back]').tap();
    await expect.poll(() => held(page).then((h) => h.corners)).toBe(0);
    for (const [i, [x, y]] of corners.entries()) {
      await page.touchscreen.tap(x, y);
      expect((await held(page)).corners).toBe(i + 1);
    }
    await picture(page, 'land-phone-drawing');
    await page.locator('[data-do=finish]').tap();
    const now = await held(page);
    expect(now.kinds.length).toBe(before + 1);
    expect(now.last).toEqual({ kind: 'woods', corners: 30 });
    for (const button of await page.locator('mp-place-land [slot=foot]').all()) {
      const box = await button.boundingBox();
      expect(box!.height).toBeGreaterThanOrEqual(56);
    }
    await picture(page, 'land-phone-card');
    expect(said).toEqual([]);
    await page.context().close();
  });

  it('are put with the keyboard alone', async () => {
    const { page, said } = await openApp(walk, '#site=yard&place=posts');
    const before = (await held(page)).kinds.length;
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => held(page).then((h) => h.place)).toBe('land');
    await tabTo(page, page.locator('[data-do=draw]'));
    await page.keyboard.press('Enter');
    await tabTo(page, page.locator('[data-kind=woods]').first());
    await page.keyboard.press('Enter');
    await tabTo(page, page.locator('[data-switch=snap]'));
    await page.keyboard.press('Space');
    await tabTo(page, page.locator('[data-switch=cross]'));
    await page.keyboard.press('Space');
    await page.getByRole('application').waitFor();
    const way: [string, number][] = [
      ['ArrowRight', 10],
      ['ArrowDown', 5],
      ['ArrowLeft', 10],
      ['ArrowUp', 4],
    ];
    for (const [key, times] of way)
      for (let i = 0; i < times; i++) {
        await page.keyboard.press(key);
        await page.keyboard.press('Space');
      }
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Space');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Space');
    expect((await held(page)).corners).toBe(30);
    await picture(page, 'land-keyboard');
    await page.keyboard.press('Enter');
    const now = await held(page);
    expect(now.trouble).toBe(null);
    expect(now.kinds.length).toBe(before + 1);
    expect(now.last).toEqual({ kind: 'woods', corners: 30 });
    await tabTo(page, page.locator('[data-step="1"]'));
    await page.keyboard.press('Enter');
    await tabTo(page, page.locator('[data-move]'));
    await page.keyboard.press('ArrowUp');
    expect((await held(page)).sentences.at(-1)).toContain('Moved a corner');
    await tabTo(page, page.locator('[data-delete-corner]'), 300);
    await page.keyboard.press('Enter');
    expect((await held(page)).last).toEqual({ kind: 'woods', corners: 29 });
    expect(said).toEqual([]);
    await page.context().close();
  });
});
