// `npm run bench [name …]`: runs tests/bench/*.bench.ts one after the other; each prints ratios measured in its own run.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';

const wanted = process.argv.slice(2);
const files = readdirSync('tests/bench').filter((f) => f.endsWith('.bench.ts'));
const chosen = wanted.length ? files.filter((f) => wanted.some((w) => f.startsWith(w))) : files;
if (chosen.length === 0) {
  console.error(
    `No bench called ${wanted.join(', ')}. There are: ${files.map((f) => f.replace('.bench.ts', '')).join(', ')}`,
  );
  process.exit(1);
}
for (const file of chosen) {
  console.log(`\n== ${file.replace('.bench.ts', '')}`);
  const { status } = spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', `tests/bench/${file}`], {
    stdio: 'inherit',
  });
  if (status !== 0) process.exit(status ?? 1);
}
