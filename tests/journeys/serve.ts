/** A production build served on loopback, and a browser to walk through it. Shared by all journeys. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, type PreviewServer, preview } from 'vite';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from '../../scripts/browser.mjs';

/** Another folder for runs at the same time: a build empties it. */
export const builtApp = process.env.JOURNEYS_OUT ?? 'out/journeys-app';
const outDir = builtApp;

export interface Walk {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** Builds when anything is newer than the last build, serves it and launches the browser. */
export async function startWalk(): Promise<Walk> {
  if (isStale()) await buildOnce();
  const server: PreviewServer = await preview({
    build: { outDir },
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

/** As `npm run build` does: the test runner's own NODE_ENV would put Lit's development code into the bundle. */
async function buildOnce(): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({ mode: 'production', logLevel: 'error', build: { outDir, emptyOutDir: true, sourcemap: false } });
  process.env.NODE_ENV = before;
}

function isStale(): boolean {
  const made = join(outDir, 'index.html');
  if (!existsSync(made)) return true;
  const since = statSync(made).mtimeMs;
  const newer = (path: string): boolean => {
    const about = statSync(path);
    if (!about.isDirectory()) return about.mtimeMs > since;
    return readdirSync(path).some((name) => newer(join(path, name)));
  };
  return ['src', 'layers', 'demo-sites', 'public', 'index.html', 'vite.config.ts', 'package.json'].some(
    (path) => existsSync(path) && newer(path),
  );
}

export interface Opened {
  readonly page: Page;
  /** Errors and warnings of the console and uncaught errors, as they came. */
  readonly said: string[];
}

/** Opens the app at an address such as `#site=park&box=17` and waits for the map and the plan. */
export async function openApp(walk: Walk, hash: string, size = { width: 1440, height: 900 }): Promise<Opened> {
  const context = await walk.browser.newContext({
    viewport: size,
    hasTouch: size.width < 720,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', (message) => {
    // The app may not put itself on the device here: playwright's own word about that is not the app's.
    if (message.text().includes('registration blocked by Playwright')) return;
    if (['error', 'warning'].includes(message.type())) said.push(message.text());
  });
  page.on('pageerror', (error) => said.push(String(error)));
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
