/** Way round, start and kept plans from the command line. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../../src/cli/run.ts';
import { keepPlan } from '../../../src/edits/keep-plan.ts';
import { keptPlan } from '../../../src/plan/kept.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import { writeSite } from '../../../src/site/write.ts';
import { done } from '../edits/make.ts';

const folder = mkdtempSync(join(tmpdir(), 'meadowpost-plan-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const yard = 'demo-sites/yard.geojson';
const quick = ['--seconds', '0', '--draws', '0'];

async function meadowpost(...words: string[]) {
  const said = { stdout: '', stderr: '' };
  const status = await run(words, {
    out: (line) => void (said.stdout += `${line}\n`),
    err: (line) => void (said.stderr += `${line}\n`),
  });
  return { status, ...said };
}

const planned = async (...words: string[]) =>
  JSON.parse((await meadowpost('plan', ...words, ...quick, '--json')).stdout) as Plan;

describe('plan', () => {
  it('walks the way round it is told', async () => {
    const [one, other] = [
      await planned(yard, '--direction', 'clockwise'),
      await planned(yard, '--direction', 'counterclockwise'),
    ];
    expect(one.boxes.map(({ post }) => post)).toEqual(other.boxes.map(({ post }) => post).reverse());
    expect((await meadowpost('plan', yard, '--direction', 'left')).stderr).toContain('clockwise or counterclockwise');
  });

  it('names the trailheads there are when the start is none', async () => {
    const { status, stderr } = await meadowpost('plan', yard, '--start', 'moon');
    expect(status).toBe(2);
    expect(stderr).toContain('There are: back-door');
  });

  it('makes a kept plan again, and says which there are', async () => {
    expect((await meadowpost('plan', yard, '--kept', 'A')).stderr).toContain('keeps no plans');
    const site = readSite(readFileSync(yard, 'utf8'), 'yard').site!;
    const one = { ...site, settings: { ...site.settings, wanted: [{ bird: 'house-wren', sites: 1 }] } };
    const file = join(folder, 'kept.geojson');
    const path = join(folder, 'one.geojson');
    writeFileSync(path, writeSite({ ...one, readFrom: undefined }));
    const made = await planned(path);
    const kept = done(keepPlan(site, keptPlan(one, made, 'One wren')));
    writeFileSync(file, writeSite(kept));
    const again = await planned(file, '--kept', 'One wren');
    expect(again.boxes.map(({ post, bird }) => [post, bird])).toEqual(made.boxes.map(({ post, bird }) => [post, bird]));
    expect((await meadowpost('plan', file, '--kept', 'Two')).stderr).toContain('It keeps: One wren');
  });
});
