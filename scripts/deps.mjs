// Installs the packages when they are missing or older than the lock file, so that one command is enough on a fresh clone.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Meadowpost needs Node 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}
const changed = (file) => (existsSync(file) ? statSync(file).mtimeMs : 0);
const done = 'node_modules/.package-lock.json';
if (!existsSync(done) || changed('package-lock.json') > changed(done) + 1000) {
  console.log('Installing packages (npm ci) …');
  const npm = process.env.npm_execpath;
  const run = npm
    ? spawnSync(process.execPath, [npm, 'ci'], { stdio: 'inherit' })
    : spawnSync('npm', ['ci'], { stdio: 'inherit', shell: true });
  if (run.status !== 0) {
    console.error('npm ci failed: check the network and try again.');
    process.exit(run.status ?? 1);
  }
}
