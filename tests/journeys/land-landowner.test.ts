/** A landowner's whole way: a new site at typed coordinates, house, lawn, trees, woods drawn in order, and two posts suggested with reasons. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { held } from './land-ways.ts';
import { picture } from './light-map.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

/** Software drawing on a shared machine is slow; the steps themselves wait for what they need. */
vi.setConfig({ testTimeout: 240_000 });
let walk: Walk;
let desk: Opened;

beforeAll(async () => {
  walk = await startWalk();
  desk = await openApp(walk, '#site=yard&place=land');
}, 240_000);
afterAll(async () => walk?.close());

describe('the landowner', () => {
  it('is offered a walk through the yard, takes a step and passes over the rest', async () => {
    const { page } = desk;
    await page.locator('[data-do=tour]').click();
    await page.locator('[data-do=tour-next]').click();
    await page.locator('mp-land-tour h2').waitFor();
    const ring = await page.locator('mp-land-tour [data-ring]').boundingBox();
    const spoken = await page.locator('[data-do=draw]').boundingBox();
    expect(ring!.x).toBeLessThanOrEqual(spoken!.x);
    expect(ring!.y).toBeLessThanOrEqual(spoken!.y);
    expect(ring!.x + ring!.width).toBeGreaterThanOrEqual(spoken!.x + spoken!.width);
    await picture(page, 'land-tour');
    await page.locator('[data-do=tour-skip]').click();
    expect(await page.locator('mp-land-tour h2').count()).toBe(0);
    expect(await page.locator('[data-do=tour]').textContent()).toContain('Show me around');
  });

  it('starts a new site at typed coordinates', async () => {
    const { page } = desk;
    await page.locator('[data-page=new]').click();
    await page.locator('[data-name]').fill('Home acre');
    await page.locator('[data-where]').fill('not a place');
    await page.locator('[data-do=start]').click();
    expect(await page.locator('mp-land-new .wash').textContent()).toContain('Type latitude and longitude');
    await page.locator('[data-where]').fill('41.2031, -81.5122');
    await page.locator('[data-do=start]').click();
    await expect.poll(() => page.locator('mp-land-guide h2').textContent()).toContain('Step 1 of 7');
    expect((await held(page)).kinds).toEqual([]);
    const middle = await page.evaluate(() => {
      const view = document.querySelector('mp-app')!.shadowRoot!.querySelector('mp-map') as unknown as {
        host: { map: { getCenter(): { lng: number; lat: number }; getZoom(): number } };
      };
      const { lng, lat } = view.host.map.getCenter();
      return { lng, lat, zoom: view.host.map.getZoom() };
    });
    expect(middle.lat).toBeCloseTo(41.2031, 3);
    expect(middle.lng).toBeCloseTo(-81.5122, 3);
    expect(middle.zoom).toBeGreaterThan(17);
    await picture(page, 'land-guide');
  });

  it('draws house, lawn, trees and woods in the order given', async () => {
    const { page } = desk;
    const click = async (...at: [number, number][]) => {
      for (const [x, y] of at) await page.mouse.click(x, y);
    };
    await page.locator('[data-guide=building]').click();
    await click([860, 420], [980, 420], [980, 510], [860, 510]);
    await page.locator('[data-do=finish]').click();
    await page.locator('[data-do=done]').click();
    await expect.poll(() => page.locator('mp-land-guide h2').textContent()).toContain('Step 2 of 7');
    await page.locator('[data-guide=short-grass]').click();
    await click([560, 160], [1300, 160], [1300, 720], [560, 720]);
    await page.keyboard.press('Enter');
    await page.locator('[data-do=done]').click();
    await page.locator('[data-guide=tree]').click();
    await click([700, 300], [1150, 620]);
    await page.locator('[data-do=done]').click();
    await page.locator('[data-guide=woods]').click();
    await click([560, 160], [1300, 160], [1300, 100], [560, 100]);
    await page.locator('[data-do=finish]').click();
    await page.locator('[data-do=done]').click();
    await page.locator('[data-do=pass]').click();
    await page.locator('[data-do=pass]').click();
    const now = await held(page);
    expect(now.kinds).toEqual(['building', 'short-grass', 'tree', 'tree', 'woods']);
    expect(now.sentences.length).toBe(5);
    expect(now.trouble).toBe(null);
  });

  it('asks for two posts and reads why there, which way to face, how high', async () => {
    const { page } = desk;
    await page.locator('[data-do=suggest]').click();
    await expect.poll(() => held(page).then((h) => h.place), { timeout: 80_000, interval: 500 }).toBe('posts');
    await expect.poll(() => held(page).then((h) => h.boxes), { timeout: 80_000, interval: 500 }).toBe(2);
    await expect.poll(() => page.locator('mp-box-list li button').count(), { timeout: 20_000 }).toBe(2);
    await page.locator('mp-box-list li button').first().click();
    await page
      .locator('mp-post-card')
      .getByText(/Face \d+°/)
      .first()
      .waitFor({ timeout: 30_000 });
    const mount = page.locator('mp-post-mount');
    await mount.locator('dl').waitFor({ timeout: 30_000 });
    expect(await mount.locator('[data-fact=Tape]').textContent()).toMatch(/ from .*corner.*, and .+ from .*corner/);
    expect(await mount.locator('[data-fact=Hole]').textContent()).toContain('above ground');
    expect(await mount.locator('[data-fact=Guard]').textContent()).toContain('pipe');
    await picture(page, 'land-two-posts');
    expect((await held(page)).sentences.at(-1)).toBe('Suggested two posts');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
    await expect.poll(() => held(page).then((h) => h.sentences.length)).toBe(5);
  });

  it('said nothing untoward on the way', () => {
    expect(desk.said).toEqual([]);
  });
});
