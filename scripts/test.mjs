// `npm test`: types, lint, then every test (unit, outside checks, browser). The last line counts them in plain words.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { installReaders } from './readers.mjs';

const report = 'out/tests.json';
mkdirSync('out', { recursive: true });
const run = (name, ...args) => {
  const started = Date.now();
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  console.log(`${name}: ${status === 0 ? 'clean' : 'FAILED'} (${((Date.now() - started) / 1000).toFixed(1)} s)`);
  return status === 0;
};
const only = process.argv.slice(2);
let good = true;
if (only.length === 0) {
  installReaders();
  good = run('types', 'node_modules/typescript/bin/tsc', '--noEmit') && good;
  good = run('lint', 'node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.') && good;
}
const vitest = [
  'node_modules/vitest/vitest.mjs',
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
];
good = run('tests', ...vitest, ...only) && good;
const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(report, 'utf8'));
console.log(
  `${numPassedTests} passed, ${numFailedTests} failed${numPendingTests ? `, ${numPendingTests} skipped` : ''}`,
);
process.exit(good && numFailedTests === 0 ? 0 : 1);
