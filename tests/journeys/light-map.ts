/**
 * Journeys run where the processor paints the map: a frame of the whole window takes most of a second, and each change asks for several.
 * What people press, read and reach does not hang on the map's pixels, so the map is painted coarsely and the page around it as ever;
 * it is painted in full for a picture, and where a journey reads the map's colors.
 */
import { mkdirSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import type { Shown } from './layout-ways.ts';

/** Dots of the map to a px of the window, each way. */
const coarse = 0.25;

/** Windows of this context paint the map coarsely from the start: layout, letters and places on the screen stay as they are. */
export async function lightMap(context: BrowserContext): Promise<void> {
  await context.addInitScript((ratio) => {
    Object.defineProperty(globalThis, 'devicePixelRatio', { get: () => ratio });
  }, coarse);
}

/** Paints the map, if there is one, with so many dots to a px (1 is in full), and waits for the frame. */
export async function paintMap(page: Page, ratio = coarse): Promise<void> {
  await page.evaluate(async (dots) => {
    const view = document.querySelector('mp-app')?.shadowRoot?.querySelector('mp-map');
    const map = (view as unknown as Partial<Shown> | null)?.host?.map;
    if (!map || map.getPixelRatio() === dots) return;
    const painted = new Promise((done) => map.once('render', done));
    map.setPixelRatio(dots);
    map.triggerRepaint();
    await painted;
  }, ratio);
}

/** Keeps a picture for the eye. Software drawing under load may not give one in time: then that is said, and the walk goes on. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync('out/pictures', { recursive: true });
  try {
    await paintMap(page, 1);
    await page.screenshot({ path: `out/pictures/${name}.png`, timeout: 20_000 });
    await paintMap(page);
  } catch (error) {
    console.warn(`no picture ${name}: ${String(error).split('\n')[0]}`);
  }
}
