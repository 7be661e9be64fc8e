// Finds the Chromium that tests drive: CHROME_PATH, else the pinned package (the same pictures on every machine), else a system browser.
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const browserArgs = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
  // The software GPU paints a sheet of paper many times slower than the processor does.
  '--disable-gpu-rasterization',
  // So does putting the page together, and its work queues up behind the map's.
  '--disable-gpu-compositing',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--no-first-run',
];

/** @returns {Promise<{executablePath: string, env: NodeJS.ProcessEnv}>} options for playwright's launch */
export async function findBrowser(root = process.cwd()) {
  if (process.env.CHROME_PATH) return { executablePath: process.env.CHROME_PATH, env: process.env };
  if (process.platform === 'linux' && process.arch === 'x64') return pinnedBrowser(root);
  const system = [
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:/Program Files/Google/Chrome/Application/chrome.exe',
  ].find((path) => existsSync(path));
  if (!system) throw new Error('No Chromium found for the browser tests: set CHROME_PATH to one.');
  return { executablePath: system, env: process.env };
}

async function pinnedBrowser(root) {
  const dir = join(root, 'node_modules/.cache/chromium-147.0.0');
  if (!existsSync(join(dir, 'ok'))) await unpack(dir);
  return {
    executablePath: join(dir, 'chromium'),
    env: { ...process.env, LD_LIBRARY_PATH: join(dir, 'al2023/lib'), FONTCONFIG_FILE: join(dir, 'fonts.conf') },
  };
}

/** The package unpacks into the temp folder without a lock, so we unpack aside and rename; it brings its own libraries only on this hint. */
async function unpack(dir) {
  const aside = `${dir}.${process.pid}`;
  const touched = ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH'];
  const before = Object.fromEntries(touched.map((key) => [key, process.env[key]]));
  mkdirSync(aside, { recursive: true });
  Object.assign(process.env, { TMPDIR: aside, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' });
  try {
    await (await import('@sparticuz/chromium')).default.executablePath();
  } finally {
    for (const key of touched) {
      if (before[key] === undefined) delete process.env[key];
      else process.env[key] = before[key];
    }
  }
  const fonts = `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${dir}/fonts</dir><cachedir>${dir}/fc</cachedir></fontconfig>`;
  writeFileSync(join(aside, 'fonts.conf'), fonts);
  writeFileSync(join(aside, 'ok'), '');
  try {
    renameSync(aside, dir);
  } catch {
    rmSync(aside, { recursive: true, force: true });
  }
}
