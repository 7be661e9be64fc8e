/** A folder of its own for a file of tests, and the command line run in it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { run } from '../../../src/cli/run.ts';

/** Runs a command in this process: its exit code and all it said. */
export async function meadowpost(...words: string[]) {
  const said = { stdout: '', stderr: '' };
  const out = (line: string) => void (said.stdout += `${line}\n`);
  const err = (line: string) => void (said.stderr += `${line}\n`);
  const status = await run(words, { out, err });
  expect(said.stderr, 'never a stack trace').not.toMatch(/\n\s+at /);
  return { status, ...said };
}

/** A new folder, gone after the file's tests: the path of a name in it, and a file written there. */
export function ownFolder(name: string) {
  const folder = mkdtempSync(join(tmpdir(), `meadowpost-${name}-`));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const at = (file: string) => join(folder, file);
  const file = (name: string, text: string) => {
    writeFileSync(at(name), text);
    return at(name);
  };
  return { folder, at, file };
}
