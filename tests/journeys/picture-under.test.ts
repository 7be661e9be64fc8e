/** A designer lays pictures under the yard: a scan by its corners and by control points, a GeoTIFF, tiles of a file, pictures of a server; then woods from heights. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AppState } from '../../src/app/state.ts';
import type { LonLat } from '../../src/site/types.ts';
import { axeViolations } from './axe.ts';
import { held } from './land-ways.ts';
import { paintMap, picture } from './light-map.ts';
import { geoTiff, png, tilePack } from './picture-files.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

/** In the yard demo. */
const middle: LonLat = [-83.547, 41.2142];
const asked: string[] = [];
let walk: Walk;
let desk: Opened;

beforeAll(async () => {
  walk = await startWalk();
  desk = await openApp(walk, '#site=yard&place=land', { width: 1200, height: 700 });
  await desk.page.route(/tiles\.example\.org/, (route) => {
    asked.push(route.request().url());
    return route.fulfill({ body: tile, contentType: 'image/png', headers: { 'access-control-allow-origin': '*' } });
  });
}, 240_000);
afterAll(async () => walk?.close());

/** Quarters of four colors under a net, so that turning and stretching can be seen. */
const quarters = png(240, 180, (x, y) => {
  if (x % 30 === 0 || y % 30 === 0) return [40, 40, 40];
  return x < 120 ? (y < 90 ? [220, 120, 120] : [120, 200, 120]) : y < 90 ? [120, 140, 220] : [230, 210, 120];
});
const tile = png(256, 256, (x, y) => (x < 3 || y < 3 ? [0, 0, 200] : [120, 90, 255]));
const size = { width: 60, height: 40, cell: 1 };
const ground = Uint8Array.from({ length: 60 * 40 * 3 }, (_, i) =>
  Math.floor(i / 3) % 60 < 5 ? 255 : 120 + (i % 3) * 30,
);

function state(page: Page): Promise<Pick<AppState, 'pictures' | 'selection' | 'siteId'>> {
  return page.evaluate(() => {
    const { pictures, selection, siteId } = (
      document.querySelector('mp-app') as unknown as { store: { state: AppState } }
    ).store.state;
    return { pictures, selection, siteId };
  });
}

/** The picture added last. */
async function newest(page: Page) {
  const one = (await state(page)).pictures.list.at(-1);
  if (!one) throw new Error('no picture lies under the drawing');
  return one;
}

async function choose(page: Page, name: string, buffer: Buffer, where = 'file'): Promise<void> {
  await page
    .locator(`mp-picture-panel input[data-do=${where}]`)
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
}

/** Colors of the map at places of the window, as "r,g,b". */
async function colorsAt(page: Page, places: readonly [number, number][]): Promise<string[]> {
  await paintMap(page, 1);
  const colors = await page.evaluate(async (places) => {
    const { map } = (
      document.querySelector('mp-app')!.shadowRoot!.querySelector('mp-map') as unknown as {
        host: {
          map: { getCanvas(): HTMLCanvasElement; once(name: string, run: () => void): void; triggerRepaint(): void };
        };
      }
    ).host;
    return new Promise<string[]>((resolve) => {
      map.once('render', () => {
        const canvas = map.getCanvas();
        const copy = document.createElement('canvas');
        copy.width = canvas.width;
        copy.height = canvas.height;
        const pen = copy.getContext('2d', { willReadFrequently: true })!;
        pen.drawImage(canvas, 0, 0);
        resolve(places.map(([x, y]) => [...pen.getImageData(x, y, 1, 1).data.slice(0, 3)].join()));
      });
      map.triggerRepaint();
    });
  }, places);
  await paintMap(page);
  return colors;
}

describe('a scan', () => {
  it('is laid where all its corners can be taken hold of', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Photo' }).click();
    await choose(page, 'scan.png', quarters);
    await page.locator('[data-do=corners]').click();
    const panel = (await page.locator('mp-picture-panel').boundingBox())!;
    for (const corner of ['top left', 'top right', 'bottom right', 'bottom left']) {
      const grip = (await page.getByRole('button', { name: `Corner ${corner}` }).boundingBox())!;
      expect(grip.x).toBeGreaterThan(400);
      expect(grip.x + grip.width / 2).toBeLessThan(panel.x);
      expect(grip.y).toBeGreaterThan(20);
      expect(grip.y).toBeLessThan(690);
    }
  });

  it('follows a corner that is dragged, and one that is moved by key', async () => {
    const { page } = desk;
    const grip = page.getByRole('button', { name: 'Corner top left' });
    const before = await newest(page);
    const box = (await grip.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2 + 90, { steps: 4 });
    await page.mouse.up();
    const dragged = await newest(page);
    if (before.kind !== 'placed' || dragged.kind !== 'placed') throw new Error('a scan is placed');
    expect(dragged.corners[0]![0]).toBeGreaterThan(before.corners[0]![0]);
    expect(dragged.corners[0]![1]).toBeLessThan(before.corners[0]![1]);
    expect(dragged.corners.slice(1)).toEqual(before.corners.slice(1));
    await grip.focus();
    await page.keyboard.press('Shift+ArrowLeft');
    const moved = await newest(page);
    if (moved.kind !== 'placed') throw new Error('a scan is placed');
    expect(moved.corners[0]![0]).toBeLessThan(dragged.corners[0]![0]);
    expect(moved.corners[0]![1]).toBeCloseTo(dragged.corners[0]![1], 9);
    await page.locator('[data-do=corners]').click();
  });

  it('is laid down by three points, with what is left at each, and chooses nothing of the land', async () => {
    const { page } = desk;
    await page.locator('[data-do=ties]').click();
    const image = page.locator('mp-picture-ties img');
    // A turned, evenly scaled rectangle; the last point is pressed 6 px off.
    const turned = (u: number, v: number) => [480 + 300 * u - 40 * v, 200 + 53 * u + 225 * v] as const;
    const shares = [0.1, 0.9].flatMap((v) => [0.1, 0.9].map((u) => [u, v] as const));
    for (const [i, [u, v]] of shares.slice(0, 3).entries()) {
      await image.scrollIntoViewIfNeeded();
      const box = (await image.boundingBox())!;
      await page.mouse.click(box.x + box.width * u, box.y + box.height * v);
      const [x, y] = turned(u, v);
      await page.mouse.click(x + (i === 2 ? 6 : 0), y);
    }
    const { pictures, selection } = await state(page);
    const one = pictures.list[0]!;
    if (one.kind !== 'placed') throw new Error('a scan is placed');
    expect(one.ties).toHaveLength(3);
    expect(selection).toBeNull();
    const said = await page.locator('mp-picture-ties [data-off]').allTextContents();
    expect(said).toHaveLength(3);
    for (const row of said) expect(row).toMatch(/^Point \d: off by 0\.\d\d m \(\d\.\d ft\)$/);
    expect(await page.locator('mp-picture-ties [data-fit]').textContent()).toMatch(/3 points, off by 0\.\d\d m/);
    // Red, blue, green and yellow stand where the turned quarters are.
    const colors = await colorsAt(
      page,
      shares.map(
        ([u, v]) => turned(u === 0.1 ? 0.32 : 0.68, v === 0.1 ? 0.32 : 0.68).map(Math.round) as [number, number],
      ),
    );
    const strongest = colors.map((color) => {
      const [r, g, b] = color.split(',').map(Number) as [number, number, number];
      return b > r && b > g ? 'blue' : g > r && g > b ? 'green' : r > 200 && g > 180 ? 'yellow' : 'red';
    });
    expect(strongest).toEqual(['red', 'blue', 'green', 'yellow']);
    await page.locator('[data-do=ties]').click();
  });
});

describe('pictures that know their place', () => {
  it('a GeoTIFF in UTM lies where it says', async () => {
    const { page } = desk;
    await choose(page, 'ortho.tif', geoTiff(ground, size, middle));
    await expect.poll(async () => (await newest(page)).name).toBe('ortho.tif');
    const one = await newest(page);
    if (one.kind !== 'placed') throw new Error('a GeoTIFF is placed');
    const mean = [0, 1].map((i) => one.corners.reduce((sum, corner) => sum + corner[i]!, 0) / 4);
    expect(mean[0]).toBeCloseTo(middle[0], 6);
    expect(mean[1]).toBeCloseTo(middle[1], 6);
  });

  it('one in a projection that is not known asks for it, and is read with the answer', async () => {
    const { page } = desk;
    await choose(page, 'odd.tif', geoTiff(ground, size, middle, 3035));
    await page.locator('[data-do=again]').waitFor();
    expect(await page.locator('mp-picture-panel .wash').textContent()).toContain('EPSG:3035');
    await page.locator('mp-picture-panel [data-in=projection]').first().fill('EPSG:32617');
    await page.locator('[data-do=again]').click();
    await expect.poll(async () => (await newest(page)).name).toBe('odd.tif');
    await expect.poll(() => page.locator('[data-do=again]').count()).toBe(0);
  });

  it('tiles of a file bring their credit as plain text', async () => {
    const { page } = desk;
    await choose(page, 'air.pmtiles', tilePack(tile, 18, middle, 0.002, 'Invented <b>air</b> survey'));
    await expect.poll(async () => (await newest(page)).name).toBe('air.pmtiles');
    await expect.poll(() => page.locator('mp-slips .credit').textContent()).toBe('Invented air survey');
    // The tile's violet shows through the pale fill of the lawn.
    const violet = (color: string) => {
      const [r, , b] = color.split(',').map(Number) as [number, number, number];
      return b > r + 80;
    };
    const net = Array.from({ length: 25 }, (_, i): [number, number] => [
      600 + 13 * (i % 5),
      240 + 11 * Math.floor(i / 5),
    ]);
    await expect
      .poll(async () => (await colorsAt(page, net)).filter(violet).length, { timeout: 20_000 })
      .toBeGreaterThan(9);
  });

  it('a server is asked only after its name was shown and the person agreed; its credit is shown and printed', async () => {
    const { page } = desk;
    await page.locator('mp-picture-panel [data-in=address]').fill('https://tiles.example.org/{z}/{x}/{y}.png');
    await page.locator('mp-picture-panel [data-in=credit]').fill('Example <i>Survey</i> 2025');
    await page.locator('[data-do=address]').click();
    const agree = page.locator('[data-do=agree]');
    expect(await agree.textContent()).toContain('tiles.example.org');
    expect(await page.locator('mp-slips .credit').textContent()).not.toContain('Example');
    expect(asked).toEqual([]);
    await agree.click();
    await expect.poll(() => asked.length).toBeGreaterThan(0);
    for (const url of asked) expect(url).toMatch(/^https:\/\/tiles\.example\.org\/\d+\/\d+\/\d+\.png$/);
    expect(await page.locator('mp-slips .credit').textContent()).toContain('Example <i>Survey</i> 2025');
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('woods from heights', () => {
  const heights = Float32Array.from({ length: 100 * 80 }, (_, i) => {
    const [x, y] = [i % 100, Math.floor(i / 100)];
    if (Math.hypot(x - 30, y - 35) < 22) return 14;
    return x > 62 && x < 95 && y > 55 && y < 72 ? 1.4 : Math.hypot(x - 75, y - 20) < 4 ? 9 : 0.1;
  });
  const raster = () => geoTiff(heights, { width: 100, height: 80, cell: 1 }, middle);

  it('are found, shown and found again with another threshold; nothing is kept yet', async () => {
    const { page } = desk;
    const before = (await held(page)).kinds.length;
    await choose(page, 'canopy.tif', raster(), 'surface');
    await page.locator('[data-do=find]').click();
    const found = page.locator('mp-picture-woods [data-found]');
    await expect.poll(() => found.textContent()).toContain('Woods 1, brush 1, trees 1');
    await picture(page, 'picture-woods');
    await page.locator('[data-set=woodsFrom]').fill('20');
    await page.locator('[data-do=find]').click();
    await expect.poll(() => found.textContent()).toContain('Woods 0, brush 3, trees 0');
    await page.locator('[data-set=woodsFrom]').fill('3');
    await page.locator('[data-do=find]').click();
    await expect.poll(() => found.textContent()).toContain('Woods 1, brush 1, trees 1');
    expect((await held(page)).kinds.length).toBe(before);
  });

  it('are kept as one step that is taken back as one; the pictures go along to the own copy of the demo', async () => {
    const { page } = desk;
    const before = await held(page);
    const pictures = (await state(page)).pictures.list.length;
    await page.locator('mp-picture-woods [data-do=keep]').click();
    const after = await held(page);
    expect(after.kinds.slice(before.kinds.length).sort()).toEqual(['brush', 'tree', 'woods']);
    expect(after.sentences).toEqual([...before.sentences, 'Brought in 3 features from canopy.tif']);
    await expect.poll(async () => (await state(page)).siteId).not.toBe('yard');
    expect((await state(page)).pictures.list).toHaveLength(pictures);
    expect(await page.locator('[data-picture]').count()).toBe(pictures);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => (await held(page)).kinds).toEqual(before.kinds);
  });

  it('say in words what is no raster', async () => {
    const { page } = desk;
    await choose(page, 'not.tif', Buffer.from('hello'), 'surface');
    await page.locator('[data-do=find]').click();
    await expect.poll(() => page.locator('mp-picture-panel .wash').first().textContent()).toContain('GeoTIFF');
  });
});

it('prints the credit of what lies under the drawing, and said nothing untoward on the way', async () => {
  const { page } = desk;
  await page.getByRole('tab', { name: 'Paper' }).click();
  const maps = () =>
    page.evaluate(() => {
      const { paper } = (document.querySelector('mp-app') as unknown as { store: { state: AppState } }).store.state;
      return paper.drawn?.sheets.filter(({ scale }) => scale !== null).map(({ svg }) => svg) ?? [];
    });
  await expect.poll(async () => (await maps()).length, { timeout: 60_000 }).toBeGreaterThan(0);
  for (const svg of await maps()) expect(svg).toContain('Example &lt;i&gt;Survey&lt;/i&gt; 2025');
  expect(desk.said).toEqual([]);
});
