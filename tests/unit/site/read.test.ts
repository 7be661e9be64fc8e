import { describe, expect, it } from 'vitest';
import { readSite } from '../../../src/site/read.ts';
import type { Issue } from '../../../src/site/types.ts';
import { cleanFeatures, feature, file, type Json, point, polygon, square } from './make.ts';

/** Reads and gives the one issue of this id. */
function only(text: string, id: string): Issue {
  const { issues } = readSite(text, 'try.geojson');
  const found = issues.filter((issue) => issue.id === id);
  expect(found, `issues: ${issues.map((issue) => issue.id).join(', ')}`).toHaveLength(1);
  const [issue] = found;
  expect(issue!.sentence).toMatch(/^[A-Z“a-z].*[.]$/s);
  expect(issue!.fix).toMatch(/[.?]$/);
  return issue!;
}

const woods = (geometry: unknown, more: Json = {}) =>
  feature(geometry, { kind: 'woods', name: 'Long Spinney', ...more });
const withClean = (...features: unknown[]) => file([...cleanFeatures(), ...features]);

describe('a clean file', () => {
  it('is read without a word and written back byte for byte', () => {
    const text = file(cleanFeatures());
    const { site, issues } = readSite(text, 'clean.geojson');
    expect(issues).toEqual([]);
    expect(site?.features.map(({ id, kind }) => [id, kind])).toEqual([
      ['w', 'woods'],
      ['m', 'meadow'],
      ['p', 'post'],
    ]);
    expect(site?.readFrom?.text).toBe(text);
  });

  it('takes its name from the file when the settings have none', () => {
    expect(readSite(file([], {}), 'dir/Hill farm.geojson').site?.settings.name).toBe('Hill farm');
  });
});

describe('a file that cannot be opened says why, once', () => {
  const clean = file(cleanFeatures());
  const cases: [name: string, text: string, id: string, sentence: RegExp][] = [
    ['nothing', '', 'file-empty', /try\.geojson is empty/],
    ['white space', ' \n\t ', 'file-empty', /is empty/],
    ['UTF-16 read as UTF-8', 'p\u0000a\u0000', 'not-text', /not a text file/],
    ['a zip', 'PK\u0003\u0004', 'not-text', /not a text file/],
    ['XML', '<?xml version="1.0"?><gpx/>', 'not-json', /XML or a web page/],
    ['a table', 'id,lat,lon\n1,41,-81', 'not-json', /starts with “i”/],
    ['text cut in a list', clean.slice(0, 260), 'json-broken', /cut short: it stops at line 1, column 261/],
    ['text cut in a word', `{\n"type": "FeatureColl`, 'json-broken', /cut short: it stops at line 2/],
    ['a comma missing', '{"type": "FeatureCollection"\n"features": []}', 'json-broken', /at line 2, column 1/],
    ['a trailing comma', '{"type": "FeatureCollection",}', 'json-broken', /at line 1, column 30/],
    ['words after the end', `${clean} end`, 'json-broken', /goes on after its end/],
    ['10,000 brackets', '['.repeat(10_000) + ']'.repeat(10_000), 'too-deep', /more than 32 deep/],
    ['10,000 objects, not closed', '{"a":'.repeat(10_000), 'too-deep', /more than 32 deep/],
    ['two files glued together', `${clean}\n${clean}`, 'two-sites', /second one starts at line 2, column 1/],
    ['a list of collections', `[${clean},${clean}]`, 'two-sites', /list of collections/],
    ['a collection in a collection', file([JSON.parse(clean)]), 'two-sites', /collection inside/],
    ['a number', '5', 'not-a-site', /not a GeoJSON FeatureCollection/],
    ['null', 'null', 'not-a-site', /not a GeoJSON FeatureCollection/],
    ['a bare geometry', JSON.stringify(polygon(square())), 'not-a-site', /is a Polygon/],
    ['features that are no list', '{"type":"FeatureCollection","features":{}}', 'not-a-site', /no list of features/],
    [
      'metres throughout',
      file([
        woods(
          polygon([
            [481e3, 456e4],
            [482e3, 456e4],
            [482e3, 457e4],
            [481e3, 456e4],
          ]),
        ),
      ]),
      'metres-not-degrees',
      /UTM.*481000, 4560000/,
    ],
    ['swapped throughout', file([feature(point(41.2, -112), { kind: 'post' })]), 'lat-lon-swapped', /swapped/],
    [
      'too wide',
      file([feature(point(-81), { kind: 'post' }, 'a'), feature(point(-79), { kind: 'post' }, 'b')]),
      'site-too-wide',
      /spans 2\.0 degrees/,
    ],
    ['20,001 features', file(Array.from({ length: 20_001 }, () => null)), 'file-too-big', /20001 features/],
  ];
  it.each(cases)('%s', (_name, text, id, sentence) => {
    const { site, issues } = readSite(text, 'try.geojson');
    expect(site).toBeNull();
    const errors = issues.filter((issue) => issue.severity === 'error');
    expect(errors.map((issue) => issue.id)).toEqual([id]);
    expect(errors[0]!.sentence).toMatch(sentence);
    expect(errors[0]!.sentence).toContain('try.geojson');
    expect(errors[0]!.fix).not.toBe('');
    expect(errors[0]!.feature).toBeNull();
  });
});

describe('a feature with an error is kept but not used, and the rest opens', () => {
  const cross = [
    [-81, 41],
    [-80.99, 41.01],
    [-80.99, 41],
    [-81, 41.01],
    [-81, 41],
  ];
  const inner = (west: number, south: number, side = 0.001) => square(west, south, side);
  const cases: [name: string, feature: unknown, id: string, sentence: RegExp][] = [
    [
      'a bow-tie',
      woods(polygon(cross)),
      'ring-crosses-itself',
      /Woods “Long Spinney” crosses itself near 41\.0050, -80\.9950 \(a bow-tie/,
    ],
    [
      'a way back over itself',
      woods(
        polygon([
          [-81, 41],
          [-80.99, 41],
          [-80.99, 41.01],
          [-80.98, 41.02],
          [-80.99, 41.01],
          [-81, 41.01],
          [-81, 41],
        ]),
      ),
      'ring-crosses-itself',
      /runs back over itself near 41\.0100/,
    ],
    [
      'a hole outside',
      woods(polygon(square(), inner(-80.5, 41))),
      'hole-outside',
      /lies outside it near 41\.0000, -80\.5000/,
    ],
    ['a hole around it', woods(polygon(square(), square(-81.01, 40.99, 0.03))), 'hole-outside', /lies outside/],
    [
      'a hole across its edge',
      woods(polygon(square(), inner(-80.9905, 41.005))),
      'hole-crosses',
      /crosses the outline near/,
    ],
    [
      'two holes overlapping',
      woods(polygon(square(), inner(-80.995, 41.005), inner(-80.9945, 41.0055))),
      'holes-overlap',
      /overlap near/,
    ],
    [
      'a hole in a hole',
      woods(polygon(square(), inner(-80.998, 41.002, 0.004), inner(-80.997, 41.003))),
      'holes-overlap',
      /overlap near/,
    ],
    [
      'corners in one line',
      woods(
        polygon([
          [-81, 41],
          [-80.99, 41],
          [-80.98, 41],
          [-81, 41],
        ]),
      ),
      'ring-no-area',
      /encloses no area/,
    ],
    [
      'two corners',
      woods(
        polygon([
          [-81, 41],
          [-80.99, 41],
          [-81, 41],
        ]),
      ),
      'ring-too-short',
      /2 corners/,
    ],
    ['no outline', woods(polygon()), 'ring-too-short', /no outline/],
    [
      'parts overlapping',
      woods({ type: 'MultiPolygon', coordinates: [[square()], [square(-80.995)]] }),
      'parts-overlap',
      /Two parts of/,
    ],
    [
      'a part in a part',
      woods({ type: 'MultiPolygon', coordinates: [[square()], [inner(-80.995, 41.005)]] }),
      'parts-overlap',
      /Two parts of/,
    ],
    [
      'the same part twice',
      woods({ type: 'MultiPolygon', coordinates: [[square()], [square()]] }),
      'parts-overlap',
      /Two parts of/,
    ],
    [
      'metres in one feature',
      woods(
        polygon([
          [481e3, 456e4],
          [482e3, 456e4],
          [482e3, 457e4],
          [481e3, 456e4],
        ]),
      ),
      'metres-not-degrees',
      /Corner 1.*meters/,
    ],
    ['latitude 91', feature(point(170, 91), { kind: 'tree' }), 'position-out-of-range', /beyond the globe/],
    ['longitude 181', feature(point(181, 41), { kind: 'tree' }), 'position-out-of-range', /beyond the globe/],
    ['1e308', feature(point(1e308, 41), { kind: 'tree' }), 'position-out-of-range', /beyond the globe/],
    ['one swapped', feature(point(41, -112), { kind: 'tree' }), 'lat-lon-swapped', /swapped/],
    [
      'null in a position',
      woods(
        polygon([
          [-81, 41],
          [null, 41],
          [-80.98, 41.01],
          [-81, 41],
        ]),
      ),
      'position-not-a-number',
      /Corner 2 of/,
    ],
    [
      'text in a position',
      feature({ type: 'Point', coordinates: ['-81', '41'] }, { kind: 'tree' }),
      'position-not-a-number',
      /not two numbers/,
    ],
    [
      'one number',
      feature({ type: 'Point', coordinates: [-81] }, { kind: 'tree' }),
      'position-not-a-number',
      /not two numbers/,
    ],
    ['brackets missing', woods({ type: 'Polygon', coordinates: square() }), 'geometry-not-readable', /brackets/],
    ['no coordinates', woods({ type: 'Polygon' }), 'geometry-not-readable', /cannot be read/],
    ['no type', woods({ coordinates: [square()] }), 'geometry-not-readable', /no type/],
    ['woods as a point', woods(point()), 'wrong-geometry', /is a Point; woods needs an area/],
    [
      'a post as an area',
      feature(polygon(square()), { kind: 'post' }),
      'wrong-geometry',
      /is a Polygon; post needs one point/,
    ],
    [
      'a GeometryCollection',
      woods({ type: 'GeometryCollection', geometries: [point()] }),
      'wrong-geometry',
      /GeometryCollection/,
    ],
    [
      'a path of one place',
      feature(
        {
          type: 'LineString',
          coordinates: [
            [-81, 41],
            [-81, 41],
          ],
        },
        { kind: 'path' },
      ),
      'line-too-short',
      /fewer than two/,
    ],
    [
      'far away',
      feature(point(0, 0), { kind: 'post', name: 'Lost' }),
      'far-from-the-rest',
      /Post “Lost” at 0\.0000, 0\.0000 lies far/,
    ],
    ['beyond 85 degrees', feature(point(-81, 86), { kind: 'tree' }), 'near-pole', /85 degrees/],
    ['at the antimeridian', feature(point(179.995, 41), { kind: 'tree' }), 'near-antimeridian', /180 degree/],
    ['null', null, 'not-a-feature', /Feature 4 is not a GeoJSON Feature/],
    ['a geometry in the list', point(), 'not-a-feature', /Feature 4 is a Point/],
    ['a bbox of text', feature(point(), { kind: 'tree' }, 'a', { bbox: [1, 2, 3] }), 'not-geojson', /bbox/i],
  ];
  it.each(cases)('%s', (_name, bad, id, sentence) => {
    const text = withClean(bad);
    const issue = only(text, id);
    expect(issue.severity).toBe('error');
    expect(issue.sentence).toMatch(sentence);
    expect(issue.feature).not.toBeNull();
    const { site } = readSite(text, 'try.geojson');
    expect(site?.features.map((one) => one.id)).toEqual(['w', 'm', 'p']);
    expect(site?.kept).toEqual([{ before: 3, feature: bad, issue: id }]);
  });
});

describe('NaN, Infinity and 1e999', () => {
  it.each(['NaN', '-Infinity', '1e999'])('%s in a position costs that feature only', (word) => {
    const text = withClean(feature(point(-81, 77), { kind: 'tree' })).replace('77', word);
    const { site } = readSite(text, 'try.geojson');
    expect(site?.features).toHaveLength(3);
    expect(only(text, 'number-not-finite').sentence).toMatch(/line 1, column \d+/);
    expect(only(text, 'position-not-a-number').feature).toBe('a');
    expect(site?.readFrom).toBeUndefined();
  });

  it('1e999 as a height counts as not given', () => {
    const text = withClean(feature(point(), { kind: 'tree', height: 77 })).replace('77', '1e999');
    const { site } = readSite(text, 'try.geojson');
    expect(only(text, 'number-not-finite').severity).toBe('warning');
    expect(site?.features[3]?.properties.height).toBeNull();
  });
});

describe('a MultiPoint with one point far away', () => {
  it('stays in the file whole', () => {
    const many = feature(
      {
        type: 'MultiPoint',
        coordinates: [
          [-81, 41],
          [0, 0],
        ],
      },
      { kind: 'tree' },
    );
    const { site } = readSite(withClean(many), 'x');
    expect(site?.features).toHaveLength(3);
    expect(site?.kept).toEqual([{ before: 3, feature: many, issue: 'far-from-the-rest' }]);
  });
});

describe('sizes', () => {
  it('warns at 25 MB, refuses at 150 MB and at half a million corners', () => {
    expect(only(file(cleanFeatures()) + ' '.repeat(25_000_000), 'file-big').severity).toBe('warning');
    expect(only(' '.repeat(150_000_001), 'file-too-big').sentence).toMatch(/150 MB is the most/);
    const line = { type: 'LineString', coordinates: Array.from({ length: 500_001 }, (_, i) => [-81 + i * 1e-7, 41]) };
    const { site, issues } = readSite(file([feature(line, { kind: 'path' })]), 'x');
    expect(site).toBeNull();
    expect(issues.at(-1)?.sentence).toMatch(/500001 corners; 500000 is the most/);
  });
});

describe('long numbers', () => {
  it('are named when they change, and not when they do not', () => {
    const long = (n: string) => withClean(feature(point(), { kind: 'tree', 'x-id': 77 })).replace('77', n);
    expect(only(long('12345678901234567891'), 'number-too-long').sentence).toMatch(/12345678901234567891 at line 1/);
    for (const fine of ['9007199254740992', '0.12345678901234567', '100000000000000000000']) {
      expect(readSite(long(fine), 'x').issues, fine).toEqual([]);
    }
  });
});

describe('repairs are done and said', () => {
  it('closes an outline', () => {
    const text = withClean(woods(polygon(square().slice(0, 4))));
    expect(only(text, 'ring-not-closed')).toMatchObject({ severity: 'repaired', feature: 'a', place: [-81, 41] });
    const { site } = readSite(text, 'try.geojson');
    expect(site?.features[3]?.geometry).toEqual(polygon(square()));
    expect(site?.readFrom).toBeUndefined();
  });

  it('joins corners standing twice, and turns outline and hole the right way', () => {
    const hole = square(-80.998, 41.002, 0.001);
    const [first] = square();
    const text = withClean(woods(polygon([first, ...square()].toReversed(), hole)));
    expect(only(text, 'vertex-twice').sentence).toMatch(/a corner standing twice/);
    expect(only(text, 'ring-turned').severity).toBe('repaired');
    expect(readSite(text, 'x').site?.features[3]?.geometry).toEqual(polygon(square(), hole.toReversed()));
  });

  it('gives ids, never one the file uses elsewhere', () => {
    const tree = { kind: 'tree' };
    const text = file([
      feature(point(), tree, null),
      feature(point(), tree, 'tree-1'),
      feature(point(), tree, 'tree-1'),
      feature(point(), tree, {}),
      feature(point(), tree, 7),
    ]);
    const { site } = readSite(text, 'x');
    expect(site?.features.map(({ id }) => id)).toEqual(['tree-2', 'tree-1', 'tree-1-1', 'tree-3', '7']);
    expect(only(text, 'id-missing').feature).toBe('tree-2');
    expect(only(text, 'id-twice').sentence).toMatch(/“tree-1” of feature 3 .* “tree-1-1”/);
    expect(only(text, 'id-not-usable').feature).toBe('tree-3');
  });

  it('understands kinds in another spelling', () => {
    const text = withClean(feature(polygon(square(-80.98)), { kind: ' Short_Grass' }));
    expect(only(text, 'kind-respelled').sentence).toMatch(/“short-grass”/);
    expect(readSite(text, 'x').site?.features[3]?.kind).toBe('short-grass');
  });

  it('splits a MultiPoint, makes a closed line an area, drops a fourth number, adds a missing geometry', () => {
    const many = {
      type: 'MultiPoint',
      coordinates: [
        [-81, 41],
        [-81, 41.001],
      ],
    };
    const split = withClean(feature(many, { kind: 'tree' }));
    expect(only(split, 'points-split').sentence).toMatch(/MultiPoint of 2/);
    expect(
      readSite(split, 'x')
        .site?.features.slice(3)
        .map(({ id }) => id),
    ).toEqual(['a', 'a-1']);
    const line = withClean(woods({ type: 'LineString', coordinates: square(-80.98) }));
    expect(only(line, 'line-made-area').severity).toBe('repaired');
    const long = withClean(feature({ type: 'Point', coordinates: [-81, 41, 300, 4] }, { kind: 'tree' }));
    expect(only(long, 'extra-numbers').severity).toBe('repaired');
    expect(readSite(long, 'x').site?.features[3]?.geometry?.coordinates).toEqual([-81, 41, 300]);
    expect(
      only(withClean({ type: 'Feature', id: 'q', properties: { kind: 'tree' } }), 'geometry-missing').feature,
    ).toBe('q');
  });

  it('removes a byte order mark, wraps one feature, drops __proto__, and says that a member stands twice', () => {
    expect(only(`\uFEFF${file(cleanFeatures())}`, 'byte-order-mark').severity).toBe('repaired');
    expect(only(JSON.stringify(cleanFeatures()[0]), 'single-feature').severity).toBe('repaired');
    const hostile = file(cleanFeatures()).replace(
      '"kind":"post"',
      '"kind":"post","__proto__":{"kind":"woods","polluted":true}',
    );
    expect(only(hostile, 'unsafe-key').severity).toBe('repaired');
    const { site } = readSite(hostile, 'x');
    expect(Object.keys(site!.features[2]!.properties)).toEqual(['kind']);
    expect(({} as Json).polluted).toBeUndefined();
    expect(
      only(file(cleanFeatures()).replace('"kind":"post"', '"kind":"post","kind":"tree"'), 'key-twice').sentence,
    ).toMatch(/“kind” at line 1 is given twice/);
  });
});

describe('warnings and notes', () => {
  it('names the nearest known kind and keeps the feature', () => {
    const text = withClean(feature(polygon(square()), { kind: 'wods' }), feature(polygon(square()), null, 'b'));
    expect(only(text, 'kind-unknown').fix).toMatch(/“woods”/);
    expect(only(text, 'kind-missing').feature).toBe('b');
    expect(readSite(text, 'x').site?.kept?.map(({ issue }) => issue)).toEqual(['kind-unknown', 'kind-missing']);
  });

  it.each([
    [{ kind: 'woods', height: 'tall' }, 'property-wrong-type', /height of Woods a is "tall"/],
    [{ kind: 'woods', height: -1 }, 'property-out-of-range', /height/],
    [{ kind: 'woods', sprayed: 'yes' }, 'property-wrong-type', /sprayed/],
  ])('%j', (properties, id, sentence) => {
    expect(only(withClean(feature(polygon(square()), properties)), id).sentence).toMatch(sentence);
  });

  it.each([
    [{ facing: 400 }, 'property-out-of-range', /facing of Post a is 400/],
    [{ holeHeight: 40 }, 'property-out-of-range', /holeHeight of Post a is 40/],
    [{ number: 1.5 }, 'property-wrong-type', /number/],
    [{ state: 'new' }, 'property-not-a-choice', /state of Post a is "new"; used instead: candidate/],
    [{ pair: 'zz' }, 'pair-unknown', /“zz”, which is not there/],
    [{ pair: 'a' }, 'pair-unknown', /paired with itself/],
  ])('a post with %j', (properties, id, sentence) => {
    expect(only(withClean(feature(point(), { kind: 'post', ...properties })), id).sentence).toMatch(sentence);
  });

  it('tells two standing boxes with one number, not two candidates', () => {
    const box = (id: string, state: string) => feature(point(), { kind: 'post', state, number: 7 }, id);
    expect(only(withClean(box('a', 'fixed'), box('b', 'fixed')), 'number-twice').sentence).toMatch(
      /Post b and Post a both have the number 7/,
    );
    expect(readSite(withClean(box('a', 'fixed'), box('b', 'candidate')), 'x').issues).toEqual([]);
  });

  it('tells a lawn wholly inside woods, and not when the woods have a hole there', () => {
    const glade = square(-81.017, 41.003, 0.002);
    const lawn = feature(polygon(glade), { kind: 'short-grass', name: 'Glade' });
    expect(only(withClean(lawn), 'area-hidden').fix).toMatch(/Cut a hole into Woods “Long Spinney”/);
    const [wood, ...rest] = cleanFeatures();
    const opened = { ...wood, geometry: polygon(square(-81.02), glade.toReversed()) };
    expect(readSite(file([opened, ...rest, lawn]), 'x').issues).toEqual([]);
  });

  it('touches at a corner, tiny areas, places without nest boxes, other datums', () => {
    const pinched = [
      [-81, 41],
      [-80.99, 41.01],
      [-80.98, 41],
      [-80.98, 41.02],
      [-80.99, 41.01],
      [-81, 41.02],
      [-81, 41],
    ];
    expect(only(withClean(woods(polygon(pinched))), 'ring-touches-itself').place).toEqual([-80.99, 41.01]);
    expect(only(withClean(woods(polygon(square(-81, 41, 1e-6)))), 'area-tiny').sentence).toMatch(/0\.01 square meters/);
    expect(only(file([feature(point(41, -81), { kind: 'post' })]), 'looks-swapped').sentence).toMatch(
      /41\.0000, -81\.0000 may be meant/,
    );
    const crs = (name: string) =>
      file(cleanFeatures(), { region: 'europe' }, { crs: { type: 'name', properties: { name } } });
    expect(only(crs('urn:ogc:def:crs:EPSG::3857'), 'other-datum').sentence).toMatch(/3857/);
    expect(readSite(crs('urn:ogc:def:crs:OGC:1.3:CRS84'), 'x').issues).toEqual([]);
  });

  it('notes what is missing', () => {
    expect(only(file([]), 'nothing-drawn').severity).toBe('note');
    expect(only(file([woods(point())]), 'nothing-drawn').sentence).toMatch(/None of what the file holds/);
    const bare = file([feature(polygon(square()), { kind: 'meadow' })]);
    expect(only(bare, 'no-woods').sentence).toMatch(/No woods are drawn/);
    expect(only(bare, 'no-posts').severity).toBe('note');
    expect(only(file([feature(null, { kind: 'tree' }), ...cleanFeatures()]), 'not-placed').feature).toBe('a');
    expect(only('{"type":"FeatureCollection","features":[]}', 'settings-missing').severity).toBe('note');
  });

  it('tells a hundred of a kind in few words, but every error', () => {
    const many = Array.from({ length: 100 }, (_, i) => feature(point(), { kind: 'tree', height: 'tall' }, `t${i}`));
    const { issues } = readSite(withClean(...many), 'x');
    expect(issues).toHaveLength(25);
    expect(issues.at(-1)?.sentence).toMatch(/The same holds for 75 more/);
    const wrong = Array.from({ length: 100 }, (_, i) => woods(point(), { n: i })).map((one, i) => ({
      ...one,
      id: `w${i}`,
    }));
    expect(readSite(withClean(...wrong), 'x').issues).toHaveLength(100);
  });
});
