/** How much is fetched until the map and the first plan are on the screen, zipped; kept beside an allowed rise in tests/house/bundle-size.json. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newPerson, startWalk, type Walk } from './serve.ts';

interface Kept {
  readonly asked: number;
  readonly allowedRise: number;
  readonly kilobytes: Readonly<Record<string, number>>;
}

const kept = JSON.parse(readFileSync('tests/house/bundle-size.json', 'utf8')) as Kept;
let walk: Walk;

beforeAll(async () => {
  walk = await startWalk();
}, 180_000);
afterAll(async () => walk?.close());

/** Which part of the load a file belongs to; the open site's own file is the person's, and the solver comes after the first plan. */
function partOf(name: string): string | null {
  if (/\.(geojson|wasm)$/.test(name) || /\/highs-[^/]*\.js$/.test(name)) return null;
  return /\.woff2?$/.test(name) ? 'fonts' : 'code';
}

describe('the first load', () => {
  it('is no larger than was kept, plus what is allowed', async () => {
    const page = await (await newPerson(walk)).newPage();
    const sizes = new Map<string, number>();
    page.on('response', async (response) => {
      const path = new URL(response.url()).pathname;
      const body = await response.body().catch(() => null);
      if (body) sizes.set(path, /\.woff2?$/.test(path) ? body.length : gzipSync(body, { level: 9 }).length);
    });
    await page.goto(`${walk.url}#site=park&place=posts`);
    await page.waitForFunction(
      () =>
        (document.querySelector('mp-app') as unknown as { store: { state: { plan: unknown } } } | null)?.store.state
          .plan,
      null,
      { timeout: 80_000 },
    );
    await page.context().close();
    const sums: Record<string, number> = { code: 0, fonts: 0 };
    for (const [path, size] of sizes) {
      const part = partOf(path);
      if (part) sums[part] = (sums[part] ?? 0) + size / 1000;
    }
    const total = Object.values(sums).reduce((a, b) => a + b, 0);
    const rounded = Object.fromEntries(Object.entries(sums).map(([part, size]) => [part, Math.round(size)]));
    console.log(
      `first load, kB zipped: ${JSON.stringify(rounded)}, ${Math.round(total)} in all (asked: ${kept.asked})`,
    );
    expect(total).toBeLessThanOrEqual(kept.asked);
    for (const [part, size] of Object.entries(sums))
      expect(size, part).toBeLessThanOrEqual((kept.kilobytes[part] ?? 0) * (1 + kept.allowedRise));
  });

  it('fetches solver, import, drawing and PDF parts only when they are used', async () => {
    const page = await (await newPerson(walk)).newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await page.goto(`${walk.url}#site=none&place=posts`);
    await page.waitForSelector('mp-app[data-map=ready]', { timeout: 60_000 });
    await page.context().close();
    expect(asked.length).toBeGreaterThan(10);
    expect(
      asked.filter((path) => /highs|to-pdf|read-import|geotiff|desk-|place-paper|place-land|\.woff$/.test(path)),
    ).toEqual([]);
  });
});
