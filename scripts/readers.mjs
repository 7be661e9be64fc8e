// Programs that read our files back (tests/outside): put in by apt-get where this is root, once for each checkout and with a time limit.
// Anywhere else, and offline, nothing happens: the checks then say that they were skipped, and why.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';

const packages = { xmllint: 'libxml2-utils', gpsbabel: 'gpsbabel', ogr2ogr: 'gdal-bin', pdftotext: 'poppler-utils' };
const tried = 'out/readers-tried';
/** Milliseconds all of it may take. */
const patience = 90_000;

export function installReaders() {
  const missing = Object.keys(packages).filter((name) => spawnSync(name, ['--version']).error);
  if (missing.length === 0 || process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).error) return;
  if (existsSync(tried)) return;
  mkdirSync('out', { recursive: true });
  writeFileSync(tried, `${missing.join(' ')}\n`);
  const wanted = missing.map((name) => packages[name]);
  console.log(`Installing ${wanted.join(', ')} for the outside checks (once; at most ${patience / 1000} s) …`);
  const until = Date.now() + patience;
  const quick = ['-q', '-o', 'Acquire::Retries=0', '-o', 'Acquire::http::Timeout=5', '-o', 'Acquire::https::Timeout=5'];
  const apt = (...args) =>
    spawnSync('apt-get', [...quick, ...args], {
      stdio: 'ignore',
      timeout: Math.max(1000, until - Date.now()),
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  const install = () => apt('install', '-y', '--no-install-recommends', ...wanted);
  const done = install() || (apt('update') && install());
  console.log(done ? 'Installed.' : 'They could not be installed: those checks are skipped.');
}
