import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { inventSeasons } from '../../../src/visits/invent.ts';
import { nestsFrom } from '../../../src/visits/nests.ts';
import { makeVisit } from '../../../src/visits/visit.ts';
import { otherSite, readVisitFile, type VisitFile, writeVisitFile } from '../../../src/visits/visit-file.ts';
import { dictionaryRows, nestRows, visitRows } from '../../../src/visits/visit-rows.ts';

const visit = makeVisit({
  id: 'a',
  post: 'p1',
  box: 1,
  date: '2026-05-01',
  time: '15:00',
  zone: -300,
  state: 'eggs',
  bird: 'eastern-bluebird',
  material: ['grass'],
  cup: 'neat-cup',
  eggs: { count: 4, color: 'blue', pattern: 'plain', size: null },
  trouble: ['ants'],
  action: ['photographed'],
  note: 'Line\n"two"; <b>',
  age: null,
  extra: { weather: 'fog' },
});
const file: VisitFile = { site: 'Alder Flat', invented: false, visits: [visit], extra: { club: 'none' } };
const write = (members: unknown) => JSON.stringify(members);

describe('there and back', () => {
  test('nothing is lost, unknown members neither; writing again gives the same text', () => {
    const read = readVisitFile(writeVisitFile(file));
    expect(read.issues).toEqual([]);
    expect(read.file).toEqual(file);
    expect(writeVisitFile(read.file!)).toBe(writeVisitFile(file));
  });
  test('words this program does not know are named, kept and written back', () => {
    const text = writeVisitFile(file)
      .replace('"neat-cup"', '"hammock"')
      .replace('"grass"', '"seaweed", "grass"')
      .replace(/"material": \[[^\]]*\]/, '"material": ["seaweed", "grass"]');
    const read = readVisitFile(text);
    expect(read.issues.map((issue) => issue.id)).toEqual(['visit-word-unknown']);
    expect(read.file!.visits[0]).toMatchObject({ cup: null, material: ['grass'] });
    const again = JSON.parse(writeVisitFile(read.file!)).visits[0];
    expect([again.cup, again.material, again.weather]).toEqual(['hammock', ['seaweed', 'grass'], 'fog']);
  });
  test('a season of forty boxes', () => {
    const boxes = Array.from({ length: 40 }, (_, i) => ({
      post: `p${i}`,
      number: i + 1,
      bird: birdById('tree-swallow'),
      score: 0.5,
    }));
    const whole: VisitFile = {
      site: 'Alder Flat',
      invented: true,
      visits: inventSeasons({ boxes, firstYear: 2026, years: 1, seed: 1 }),
    };
    expect(readVisitFile(writeVisitFile(whole)).file).toEqual(whole);
  });
});

describe('bad files', () => {
  test.each<[string, string, string]>([
    ['empty', '', 'visits-not-json'],
    ['cut off', writeVisitFile(file).slice(0, 200), 'visits-not-json'],
    ['a web page', '<!DOCTYPE html>', 'visits-not-json'],
    ['a list', '[]', 'not-visits'],
    ['a site', write({ type: 'FeatureCollection', features: [] }), 'not-visits'],
    ['visits that are no list', write({ meadowpostVisits: 1, visits: {} }), 'not-visits'],
    ['null', 'null', 'not-visits'],
  ])('%s', (_, text, id) => {
    const read = readVisitFile(text);
    expect(read.file).toBeNull();
    expect(read.issues.map((issue) => issue.id)).toEqual([id]);
    expect(read.issues[0]!.fix).not.toBe('');
  });
  test('one unreadable visit does not cost the others', () => {
    const read = readVisitFile(
      write({
        meadowpostVisits: 1,
        site: 'A',
        visits: [null, 7, { id: 'x' }, visit, { ...visit, id: 'b', state: 'asleep' }],
      }),
    );
    expect(read.file!.visits.map((one) => one.id)).toEqual(['a']);
    expect(read.issues.map((issue) => issue.feature)).toEqual(['visit 1', 'visit 2', 'visit 3', 'visit 5']);
  });
  test('odd members are “not given”, a negative count is kept for the checks', () => {
    const read = readVisitFile(
      write({
        meadowpostVisits: 1,
        site: 7,
        visits: [
          {
            ...visit,
            box: '1',
            time: 5,
            zone: 'UTC',
            eggs: 'many',
            young: -2,
            age: [1],
            dead: null,
            note: null,
            madeAt: 3,
          },
        ],
      }),
    );
    expect(read.file!.site).toBe('');
    expect(read.file!.visits[0]).toMatchObject({
      box: null,
      time: null,
      zone: null,
      eggs: null,
      young: -2,
      age: null,
      dead: 0,
      note: '',
      madeAt: '2026-05-01T12:00:00Z',
    });
  });
  test('a newer version is said; a byte order mark is fine; __proto__ does no harm', () => {
    expect(readVisitFile(write({ meadowpostVisits: 2, visits: [] })).issues.map((issue) => issue.id)).toEqual([
      'visits-newer',
    ]);
    expect(readVisitFile(`\uFEFF${writeVisitFile(file)}`).issues).toEqual([]);
    const read = readVisitFile(
      '{"meadowpostVisits":1,"visits":[{"id":"a","post":"p","date":"2026-05-01","state":"empty","__proto__":{"x":1}}]}',
    );
    expect(Object.keys(read.file!.visits[0]!.extra ?? {})).toEqual([]);
    expect(({} as { x?: number }).x).toBeUndefined();
  });
  test('any text or JSON at all: an answer, never a throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => readVisitFile(text).issues.length > 0),
      { seed: 1, numRuns: 300 },
    );
    fc.assert(
      fc.property(
        fc.array(fc.object({ maxDepth: 2 })),
        (visits) => readVisitFile(write({ meadowpostVisits: 1, visits })).file !== null,
      ),
      { seed: 2, numRuns: 200 },
    );
  });
});

describe('which site', () => {
  test('this one, renamed, another', () => {
    expect(otherSite(file, 'Alder Flat', ['p1', 'p2'])).toBeNull();
    expect(otherSite(file, 'New name', ['p1'])).toMatchObject({ id: 'visits-site-renamed', severity: 'note' });
    expect(otherSite(file, 'Beech Hill', ['q1'])).toMatchObject({ id: 'visits-other-site', severity: 'error' });
    expect(otherSite(file, 'Alder Flat', ['q1'])).toMatchObject({ id: 'visits-other-site' });
    expect(otherSite({ ...file, visits: [] }, 'Beech Hill', [])).toBeNull();
  });
});

describe('rows', () => {
  const nests = nestsFrom([visit], birdGuides, '2026-05-02');
  test('every row has a cell for every column, and every column is in the dictionary', () => {
    for (const [name, rows] of [
      ['visits', visitRows([visit])],
      ['nests', nestRows(nests)],
    ] as const) {
      expect(rows).toHaveLength(2);
      expect(rows[1]!.length).toBe(rows[0]!.length);
      expect(new Set(rows[0]).size).toBe(rows[0]!.length);
      expect(
        dictionaryRows()
          .filter((row) => row[0] === name)
          .map((row) => row[1]),
      ).toEqual(rows[0]);
    }
    expect(
      dictionaryRows()
        .slice(1)
        .every((row) => row[3] !== ''),
    ).toBe(true);
  });
  test('not counted is an empty cell, not 0', () => {
    const [head, row] = visitRows([visit]);
    expect(row![head!.indexOf('young')]).toBeNull();
    expect(row![head!.indexOf('eggs')]).toBe(4);
    const [nestHead, nestRow] = nestRows(nests);
    expect(nestRow![nestHead!.indexOf('outcome')]).toBe('unfinished');
    expect(nestRow![nestHead!.indexOf('fledged_most')]).toBeNull();
  });
});
