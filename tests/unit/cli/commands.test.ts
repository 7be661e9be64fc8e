/** The command line as a person or a script meets it: what it prints, where it goes, how it ends. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { meadowpost, ownFolder } from './desk.ts';

const { folder, file } = ownFolder('cli');

const yard = 'demo-sites/yard.geojson';

describe('the command line', () => {
  it('starts from the shell and ends with its code', () => {
    const words = ['node_modules/tsx/dist/cli.mjs', 'src/cli/main.ts', 'check', yard];
    const { status, stdout } = spawnSync(process.execPath, words, { encoding: 'utf8' });
    expect(stdout).toContain('0 errors');
    expect(status).toBe(0);
  });

  it('lists its commands', async () => {
    const { status, stdout } = await meadowpost('help');
    expect(status).toBe(0);
    for (const command of ['check', 'score', 'plan', 'print', 'export'])
      expect(stdout).toContain(`meadowpost ${command} `);
  });

  it.each([
    [['frob'], /no command "frob"/, 2],
    [['plan'], /wants SITE/, 2],
    [['plan', yard, '--frob'], /--frob/, 2],
    [['plan', yard, '--seed', 'x'], /--seed wants a number/, 2],
    [['plan', yard, '--want', 'dodo 3'], /no bird "dodo"/, 2],
    [['export', yard, '--to', 'xls'], /--to gpx/, 2],
    [['score', yard, '--post', 'nobody'], /no post "nobody"/, 1],
    [['check', 'no-such-file.geojson'], /no such file/i, 3],
    [['check', 'demo-sites'], /folder/, 3],
  ])('%j is refused in one line', async (words, sentence, code) => {
    const { status, stderr } = await meadowpost(...words);
    expect(stderr).toMatch(sentence);
    expect(status).toBe(code);
  });

  it('says what is wrong with a bad file, and where', async () => {
    const cut = await meadowpost('check', file('cut.geojson', readFileSync(yard, 'utf8').slice(0, 900)));
    expect(cut.status).toBe(1);
    expect(cut.stdout).toMatch(/cut\.geojson is cut short: it stops at line \d+/);
    const deep = await meadowpost('check', file('deep.geojson', `${'['.repeat(10_000)}${']'.repeat(10_000)}`));
    expect(deep.status).toBe(1);
    expect(deep.stdout).toMatch(/deep/);
  });

  it('scores a post with a sentence, a source and the weakest named', async () => {
    const { status, stdout } = await meadowpost('score', yard, '--post', 'stake-1');
    expect(status).toBe(0);
    expect(stdout).toMatch(/stake-1: Eastern Bluebird, \d+ of 100/);
    expect(stdout).toMatch(/weakest: /);
    expect(stdout).toMatch(/(Woods edge|Nearest tree) \d+ (ft|yd) off, wants .* \[.*Horn 1996/);
    expect(stdout).toMatch(/By compass \d+° \(World Magnetic Model 2025/);
  });

  it('plans, writes the plan, and gives the same plan again', async () => {
    const out = join(folder, 'plan.json');
    const once = await meadowpost('plan', yard, '--draws', '20', '--out', out);
    expect(once.status).toBe(0);
    expect(once.stdout).toContain('2 boxes at 2 sites');
    const plan = JSON.parse(readFileSync(out, 'utf8'));
    expect(plan.proof.state).toBe('best-possible');
    expect(plan.boxes[0].sureness).toBeGreaterThan(0);
    expect((await meadowpost('plan', yard, '--draws', '20')).stdout).toBe(once.stdout);
  });

  it('prints sheets', async () => {
    const out = join(folder, 'sheets');
    const { status, stdout } = await meadowpost(
      'print',
      yard,
      '--out',
      out,
      '--sheets',
      'landowner,check',
      '--seconds',
      '0',
    );
    expect(status).toBe(0);
    expect(stdout).toContain('round.pdf');
    expect(readFileSync(join(out, 'round.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readdirSync(out).filter((name) => name.endsWith('.svg')).length).toBeGreaterThanOrEqual(2);
  });

  it('exports a route for a receiver, number first', async () => {
    const { status, stdout } = await meadowpost('export', yard, '--to', 'gpx', '--seconds', '0');
    expect(status).toBe(0);
    expect(stdout).toMatch(/<name>01 \w+<\/name>/);
    expect(stdout.match(/<rtept /g)!.length).toBeGreaterThanOrEqual(2);
  });
});
