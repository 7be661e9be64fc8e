/** A browser with a profile on the disk that can be killed and started again on the same profile. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from '../../scripts/browser.mjs';

export interface OwnBrowser {
  readonly browser: Browser;
  readonly page: Page;
  /** SIGKILL to every process of it: nothing gets a chance to finish. */
  kill(): Promise<void>;
  /** Ends it as a person would. */
  close(): Promise<void>;
}

/** A folder for a profile; call the second to delete it. */
export function newProfile(): [path: string, remove: () => void] {
  const path = mkdtempSync(join(tmpdir(), 'meadowpost-profile-'));
  return [path, () => rmSync(path, { recursive: true, force: true, maxRetries: 3 })];
}

export async function startBrowser(profile: string, size = { width: 1440, height: 900 }): Promise<OwnBrowser> {
  const { executablePath, env } = await findBrowser();
  const args = [
    ...browserArgs,
    '--headless',
    '--hide-scrollbars',
    '--force-prefers-reduced-motion',
    '--disable-breakpad',
    `--window-size=${size.width},${size.height}`,
    `--user-data-dir=${profile}`,
    '--remote-debugging-port=0',
    'about:blank',
  ];
  const child = spawn(executablePath, args, { env, detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const browser = await chromium.connectOverCDP(await address(child));
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = context.pages()[0] ?? (await context.newPage());
  return {
    browser,
    page,
    async kill() {
      if (child.pid) process.kill(-child.pid, 'SIGKILL');
      await ended;
    },
    async close() {
      const session = await browser.newBrowserCDPSession();
      await session.send('Browser.close').catch(() => undefined);
      await ended;
    },
  };
}

/** Where the browser listens, as it says on its error stream. */
function address(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (data: Buffer) => {
      said += data.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) resolve(found);
    });
    child.once('exit', (code) => reject(new Error(`the browser ended with ${code}: ${said}`)));
  });
}
