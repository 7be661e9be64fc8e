/** `npm run meadowpost -- COMMAND …`: the same engine without a screen. */
import { argv, exit as leave, stderr, stdout } from 'node:process';
import { run } from './run.ts';

leave(
  await run(argv.slice(2), {
    out: (line) => void stdout.write(`${line}\n`),
    err: (line) => void stderr.write(`${line}\n`),
  }),
);
