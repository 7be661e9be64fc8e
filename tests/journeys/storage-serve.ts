/** The page without a map, built as shipped and served on loopback: its origin keeps its own storage. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build, preview } from 'vite';
import type { Trial } from './storage-page/page.ts';

export interface Served {
  readonly url: string;
  close(): Promise<void>;
}

export async function serveStoragePage(): Promise<Served> {
  const root = join(process.cwd(), 'tests/journeys/storage-page');
  const outDir = mkdtempSync(join(tmpdir(), 'meadowpost-storage-'));
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    base: './',
    build: { outDir, emptyOutDir: true, target: 'es2022' },
  });
  process.env.NODE_ENV = before;
  const server = await preview({
    root,
    configFile: false,
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0 },
    logLevel: 'error',
  });
  return {
    url: server.resolvedUrls?.local[0] ?? '',
    async close() {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}

/** Opens the page and waits for its shelf. */
export async function openTrial(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.waitForFunction(() => 'trial' in globalThis);
}

/** Runs in the page: `(trial, argument) => answer`. */
export function inTrial<A, R>(
  page: Page,
  work: (trial: Trial, argument: A) => R | Promise<R>,
  argument: A,
): Promise<R> {
  const call = new Function('argument', `return (${work.toString()})(globalThis.trial, argument)`) as (a: A) => R;
  return page.evaluate(call as never, argument as never) as Promise<R>;
}
