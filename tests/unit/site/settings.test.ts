import { describe, expect, it } from 'vitest';
import { isDay } from '../../../src/site/day.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';
import { isReadOnly } from '../../../src/site/migrate.ts';
import { readSite } from '../../../src/site/read.ts';
import { settingTable } from '../../../src/site/setting-table.ts';
import { cleanFeatures, file } from './make.ts';

const read = (settings: unknown) => readSite(file(cleanFeatures(), settings), 'try.geojson');
const good = { name: 'Hill', region: 'europe' };

describe('settings', () => {
  it('are the defaults where the file says nothing', () => {
    expect(read({}).site?.settings).toEqual({ ...defaultSettings, name: 'try' });
    expect(read(null).issues.map(({ id }) => id)).toEqual(['settings-missing']);
  });

  it('are taken as they stand', () => {
    const all = {
      ...good,
      fileVersion: 1,
      units: 'metric',
      wanted: [{ bird: 'tree-swallow', sites: 3, paired: true }],
      stormFrom: 290,
      julyMaximum: 29.5,
      box: 'pale',
      start: null,
      direction: 'counterclockwise',
      date: '2027-02-28',
      suggestGrid: 20,
      reachOfPaths: 50,
      minimumScore: 0,
      walkLimit: 4000,
      minutesPerBox: 5,
      walkers: 2,
      seed: 9,
      weights: { openness: 2 },
      figures: { 'openness.radius': 30 },
      order: ['p', 'grid-1-2'],
      plans: [],
    };
    const { site, issues } = read(all);
    expect(issues).toEqual([]);
    expect(site?.settings).toEqual(all);
  });

  it.each([
    [{ units: 'furlong' }, 'setting-not-a-choice', 'units'],
    [{ stormFrom: 'west' }, 'setting-wrong-type', 'stormFrom'],
    [{ stormFrom: 361 }, 'setting-out-of-range', 'stormFrom'],
    [{ julyMaximum: 95 }, 'setting-out-of-range', 'julyMaximum'],
    [{ box: 'green' }, 'setting-not-a-choice', 'box'],
    [{ date: '2026-02-30' }, 'date-unreadable', 'date'],
    [{ date: '6/15/2026' }, 'date-unreadable', 'date'],
    [{ date: 20_260_615 }, 'date-unreadable', 'date'],
    [{ suggestGrid: 0 }, 'setting-out-of-range', 'suggestGrid'],
    [{ minimumScore: -1 }, 'setting-out-of-range', 'minimumScore'],
    [{ walkLimit: -5 }, 'setting-out-of-range', 'walkLimit'],
    [{ walkers: 1.5 }, 'setting-wrong-type', 'walkers'],
    [{ seed: 1.5 }, 'setting-wrong-type', 'seed'],
    [{ direction: 'left' }, 'setting-not-a-choice', 'direction'],
    [{ order: 'p' }, 'setting-wrong-type', 'order'],
    [{ plans: {} }, 'setting-wrong-type', 'plans'],
    [{ name: 7 }, 'setting-wrong-type', 'name'],
    [{ fileVersion: 'old' }, 'setting-out-of-range', 'file version'],
  ])('%j falls back to the default and is named', (settings, id, word) => {
    const { site, issues } = read({ ...good, ...settings });
    expect(issues.map((issue) => [issue.id, issue.severity])).toEqual([[id, 'warning']]);
    expect(issues[0]!.sentence).toContain(word);
    expect(issues[0]!.fix).not.toBe('');
    expect(site?.settings).toMatchObject({
      ...defaultSettings,
      name: 'name' in settings ? 'try' : 'Hill',
      region: 'europe',
    });
  });

  it.each([
    [
      [
        { bird: 'a', sites: 1 },
        { bird: 'a', sites: 2 },
      ],
      'wanted-twice',
      /names a twice/,
    ],
    [
      [
        { bird: 'a', sites: 1 },
        { bird: 'b', sites: -1 },
      ],
      'wanted-unreadable',
      /Line 2 of wanted asks for -1/,
    ],
    [
      [
        { bird: 'a', sites: 1 },
        { bird: 'b', sites: 1.5 },
      ],
      'wanted-unreadable',
      /whole number/,
    ],
    [
      [
        { bird: 'a', sites: 1 },
        { bird: '', sites: 1 },
      ],
      'wanted-unreadable',
      /names no bird/,
    ],
    [[{ bird: 'a', sites: 1 }, null], 'wanted-unreadable', /names no bird/],
    [
      [
        { bird: 'a', sites: 1 },
        { bird: 'b', sites: 1, paired: 'yes' },
      ],
      'wanted-unreadable',
      /paired/,
    ],
  ])('wanted %j', (wanted, id, sentence) => {
    const { site, issues } = read({ ...good, wanted });
    expect(issues.map((issue) => issue.id)).toEqual([id]);
    expect(issues[0]!.sentence).toMatch(sentence);
    expect(site?.settings.wanted).toEqual([{ bird: 'a', sites: 1 }]);
  });

  it('drops weights and figures that are no numbers, and names them', () => {
    const { site, issues } = read({ ...good, weights: { openness: 'big', water: -1, perch: 2 }, figures: [] });
    expect(issues.map(({ id }) => id)).toEqual(['setting-wrong-type', 'setting-out-of-range', 'setting-wrong-type']);
    expect(site?.settings.weights).toEqual({ perch: 2 });
  });

  it('names a start that is no trailhead', () => {
    expect(read({ ...good, start: 'p' }).issues.map(({ id }) => id)).toEqual(['start-unknown']);
  });

  it('opens a newer file, read-only', () => {
    const { site, issues } = read({ ...good, fileVersion: 2, brandNew: { kept: true } });
    expect(issues.map(({ id }) => id)).toEqual(['newer-version']);
    expect(isReadOnly(issues)).toBe(true);
    expect(isReadOnly(read(good).issues)).toBe(false);
    expect(site?.settings.extra).toEqual({ brandNew: { kept: true } });
  });

  it('every row has a default', () => {
    expect(Object.keys(settingTable).filter((key) => !(key in defaultSettings))).toEqual([]);
  });
});

describe('days', () => {
  it.each(['2024-02-29', '2000-02-29', '2026-12-31', '1900-01-01'])('%s is one', (day) =>
    expect(isDay(day)).toBe(true),
  );
  it.each([
    '2026-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-1-1',
    '0026-01-01',
    ' 2026-01-01',
    5,
    null,
  ])('%s is none', (day) => expect(isDay(day)).toBe(false));
});
