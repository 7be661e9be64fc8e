/** The production build served on loopback, and a browser to walk through it. Shared by all journeys. */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from '../../scripts/browser.mjs';
import { builtApp } from './build.ts';
import { lightMap } from './light-map.ts';

export interface Walk {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** Serves the build and launches the browser. */
export async function startWalk(): Promise<Walk> {
  const server: PreviewServer = await preview({
    build: { outDir: builtApp },
    preview: { host: '127.0.0.1', port: 0 },
    logLevel: 'error',
  });
  const found = await findBrowser();
  const browser = await chromium.launch({ executablePath: found.executablePath, env: found.env, args: browserArgs });
  return {
    url: server.resolvedUrls?.local[0] ?? '',
    browser,
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

export interface Opened {
  readonly page: Page;
  /** Errors and warnings of the console and uncaught errors, as they came. */
  readonly said: string[];
}

/** A browser of its own without a past, as journeys use it: a coarse map, nothing put on the device, no movement. */
export async function newPerson(walk: Walk, size = { width: 1440, height: 900 }): Promise<BrowserContext> {
  const context = await walk.browser.newContext({
    viewport: size,
    hasTouch: size.width < 720,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  await lightMap(context);
  return context;
}

/** A window of such a person, listened to from the start. */
export async function newWindow(walk: Walk, size?: { width: number; height: number }): Promise<Opened> {
  const page = await (await newPerson(walk, size)).newPage();
  const said: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()) && !ownDoing.test(message.text())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(String(error)));
  return { page, said };
}

/** Not the app's words but the journey's doing: it may not put itself on the device, and the processor reads the painted map back. */
const ownDoing = /registration blocked by Playwright|^\[\.WebGL-\w+\]GL Driver Message .* GPU stall due to ReadPixels/;

/** Opens the app at an address such as `#site=park&box=17` and waits for the map and the plan. */
export async function openApp(walk: Walk, hash: string, size?: { width: number; height: number }): Promise<Opened> {
  const { page, said } = await newWindow(walk, size);
  await page.goto(walk.url + hash);
  await page.waitForSelector('mp-app[data-map=ready]', { timeout: 60_000 });
  await page.waitForFunction(planned, null, { timeout: 80_000 });
  return { page, said };
}

/** Runs in the page: whether the engine is done. */
function planned(): boolean {
  const app = document.querySelector('mp-app') as unknown as {
    store: { state: { engine: { at: string }; planOf: unknown } };
  } | null;
  return app?.store.state.planOf !== null && app?.store.state.engine.at === 'rest';
}
