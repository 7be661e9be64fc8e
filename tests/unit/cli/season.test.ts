/** The season by command: made up, looked back on, and what is due – what they print, write, refuse, and how they end. */
import { existsSync, readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { readVisitFile, writeVisitFile } from '../../../src/visits/visit-file.ts';
import { smallSite } from '../../browser/sites.ts';
import { meadowpost, ownFolder } from './desk.ts';

const { at, file } = ownFolder('season');

const site = file('small.geojson', smallSite);
const visits = at('visits.json');
const read = (path: string) => readVisitFile(readFileSync(path, 'utf8')).file!;

beforeAll(async () => {
  const { status, stdout } = await meadowpost('invent', site, '--out', visits, '--seasons', '3', '--seed', '7');
  expect([status, stdout]).toEqual([0, expect.stringMatching(/visits\.json: \d+ INVENTED visits to 3 boxes/)]);
});

describe('meadowpost invent', () => {
  it('writes visits of the seasons asked for, every one marked, the same for the same seed', async () => {
    const made = read(visits);
    expect(made.invented).toBe(true);
    expect([...new Set(made.visits.map((one) => one.date.slice(0, 4)))]).toEqual(['2024', '2025', '2026']);
    expect(made.visits.every((one) => one.device === 'invented')).toBe(true);
    await meadowpost('invent', site, '--out', at('again.json'), '--seasons', '3', '--seed', '7');
    expect(readFileSync(at('again.json'), 'utf8')).toBe(readFileSync(visits, 'utf8'));
    await meadowpost('invent', site, '--out', at('other.json'), '--seasons', '3', '--seed', '8');
    expect(readFileSync(at('other.json'), 'utf8')).not.toBe(readFileSync(visits, 'utf8'));
  });
  it.each([
    [['invent', site], /wants --out FILE/, 2],
    [['invent', site, '--out', at('x.json'), '--seasons', '0'], /--seasons wants a number from 1 to 20/, 2],
    [['invent', site, '--out', at('x.json'), '--seasons', '1.5'], /whole number/, 2],
    [['due', site, visits], /--today DATE/, 2],
    [['due', site, visits, '--today', '2026-13-01'], /--today wants a date/, 2],
    [['due', site], /wants SITE VISITS|VISITS/, 2],
    [['review', site, visits, '--year', 'x'], /--year wants a number/, 2],
    [['review', site, at('no-such.json')], /no such file/i, 3],
    [['review', site, file('broken.json', '{"broken')], /could not be read as visits/, 1],
  ])('%j is refused in one line', async (words, sentence, code) => {
    const { status, stderr } = await meadowpost(...words);
    expect(stderr).toMatch(sentence);
    expect(status).toBe(code);
    expect(existsSync(at('x.json'))).toBe(false);
  });
});

describe('meadowpost review', () => {
  it('tells each year, each box with its advice and sources, and next year’s changes, marked as invented', async () => {
    const { status, stdout } = await meadowpost('review', site, visits);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^INVENTED visits: nothing here was seen by anybody\./);
    expect(stdout).toContain('Test meadow: 2024, 2025, 2026');
    for (const part of ['  Sites used: ', 'What told success from failure:', 'Boxes:', 'Next year:'])
      expect(stdout).toContain(part);
    for (const box of [1, 2, 3]) expect(stdout).toMatch(new RegExp(`^ {2}Box ${box}: 3 seasons looked at`, 'm'));
    expect(stdout.match(/^ {4}(keep|move|pair|guard|re-face|retire): .* \[.+\]$/gm)!.length).toBeGreaterThanOrEqual(3);
  });
  it('takes one year, and says the same as JSON', async () => {
    const { stdout } = await meadowpost('review', site, visits, '--year', '2025', '--json');
    const told = JSON.parse(stdout) as { invented: boolean; review: { years: number[]; occupancy: { of: number } } };
    expect(told).toMatchObject({ invented: true, review: { years: [2025], occupancy: { of: 3 } } });
  });
  it('ends with 1 when there is no nest to look back on', async () => {
    const { status, stdout } = await meadowpost('review', site, visits, '--year', '1999');
    expect([status, stdout]).toEqual([1, expect.stringContaining('no season')]);
  });
});

describe('meadowpost due', () => {
  it('lists every box, and writes a calendar that another program reads', async () => {
    const calendar = at('due.ics');
    const { status, stdout } = await meadowpost('due', site, visits, '--today', '2026-05-20', '--ics', calendar);
    expect(status).toBe(0);
    expect(stdout.match(/^Box \d: next visit /gm)).toHaveLength(3);
    const component = new ICAL.Component(ICAL.parse(readFileSync(calendar, 'utf8')));
    const events = component.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    expect(events).toHaveLength(3);
    expect(component.getFirstPropertyValue('name')).toBe('INVENTED – Test meadow: due visits');
    const dates = JSON.parse((await meadowpost('due', site, visits, '--today', '2026-05-20', '--json')).stdout) as {
      due: string;
    }[];
    expect(events.map((one) => one.startDate.toString()).sort()).toEqual(dates.map((one) => one.due).sort());
  });
  it('knows nothing of what comes after the day it is asked on', async () => {
    const early = await meadowpost('due', site, visits, '--today', '2023-04-10', '--json');
    expect((JSON.parse(early.stdout) as { due: string }[]).map((one) => one.due)).toEqual(Array(3).fill('2023-04-10'));
  });
});

describe('visits of another site', () => {
  it('are refused when none is to a post here, and named when some are', async () => {
    const strange = read(visits).visits.map((one) => ({ ...one, post: `far-${one.post}` }));
    const other = file('other-site.json', writeVisitFile({ site: 'Far Field', invented: true, visits: strange }));
    const refused = await meadowpost('review', site, other);
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain('Far Field');
    expect(refused.stderr).toContain('None of the visits in other-site.json is to a post of this site.');
    const mixed = [...read(visits).visits, ...strange];
    const both = file('mixed.json', writeVisitFile({ site: 'Far Field', invented: true, visits: mixed }));
    const { status, stderr } = await meadowpost('review', site, both);
    expect([status, stderr]).toEqual([0, expect.stringContaining('Far Field')]);
  });
});
