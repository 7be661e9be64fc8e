/** Before the first journey: the production build that all of them walk through, made when anything is newer than the last one. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';

/** Another folder for runs at the same time: a build empties it. */
export const builtApp = process.env.JOURNEYS_OUT ?? 'out/journeys-app';

export default async function setup(): Promise<void> {
  if (isStale()) await buildOnce();
}

/** As `npm run build` does: the test runner's own NODE_ENV would put Lit's development code into the bundle. */
async function buildOnce(): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({
    mode: 'production',
    logLevel: 'error',
    build: { outDir: builtApp, emptyOutDir: true, sourcemap: false },
  });
  process.env.NODE_ENV = before;
}

function isStale(): boolean {
  const made = join(builtApp, 'index.html');
  if (!existsSync(made)) return true;
  const since = statSync(made).mtimeMs;
  const newer = (path: string): boolean => {
    const about = statSync(path);
    if (!about.isDirectory()) return about.mtimeMs > since;
    return readdirSync(path).some((name) => newer(join(path, name)));
  };
  return [
    'src',
    'layers',
    'demo-sites',
    'public',
    'scripts/build',
    'index.html',
    'vite.config.ts',
    'package.json',
  ].some((path) => existsSync(path) && newer(path));
}
