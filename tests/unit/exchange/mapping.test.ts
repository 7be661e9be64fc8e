import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import { attributeValues, sourceKey } from '../../../src/exchange/attribute-values.ts';
import { importFile, mapFile, readFile, reportSentence } from '../../../src/exchange/import.ts';
import { readLength } from '../../../src/exchange/lengths.ts';
import { type Mapping, readMapping } from '../../../src/exchange/mapping.ts';
import { openStreetMapPreset } from '../../../src/exchange/openstreetmap-preset.ts';
import { shapeOf } from '../../../src/site/kinds.ts';

const square: Geometry = {
  type: 'Polygon',
  coordinates: [
    [
      [0, 0],
      [0.001, 0],
      [0.001, 0.001],
      [0, 0.001],
      [0, 0],
    ],
  ],
};
const line: Geometry = {
  type: 'LineString',
  coordinates: [
    [0, 0],
    [0.001, 0],
  ],
};
const loop: Geometry = {
  type: 'LineString',
  coordinates: [
    [0, 0],
    [0, 0.001],
    [0.001, 0],
    [0, 0],
  ],
};
const point: Geometry = { type: 'Point', coordinates: [0, 0] };

function file(...features: readonly (readonly [Record<string, unknown>, Geometry])[]): Uint8Array {
  const json = {
    type: 'FeatureCollection',
    features: features.map(([properties, geometry]) => ({ type: 'Feature', properties, geometry })),
  };
  return new TextEncoder().encode(JSON.stringify(json));
}

describe('the OpenStreetMap preset', () => {
  it.each([
    [{ natural: 'wood' }, square, 'woods'],
    [{ landuse: 'forest' }, square, 'woods'],
    [{ natural: 'scrub' }, square, 'brush'],
    [{ landuse: 'grass' }, square, 'short-grass'],
    [{ leisure: 'park' }, square, 'short-grass'],
    [{ landuse: 'meadow' }, square, 'meadow'],
    [{ landuse: 'farmland' }, square, 'crop'],
    [{ landuse: 'orchard' }, square, 'orchard'],
    [{ natural: 'water' }, square, 'water'],
    [{ natural: 'wetland' }, square, 'wetland'],
    [{ building: 'yes' }, square, 'building'],
    [{ building: 'barn', landuse: 'farmland' }, square, 'building'],
    [{ building: 'no', natural: 'wood' }, square, 'woods'],
    [{ highway: 'footway' }, line, 'path'],
    [{ highway: 'track' }, line, 'path'],
    [{ highway: 'residential' }, line, 'road'],
    [{ highway: 'pedestrian' }, square, 'paved'],
    [{ amenity: 'parking' }, square, 'paved'],
    [{ barrier: 'fence' }, line, 'fence'],
    [{ barrier: 'hedge' }, line, 'hedge'],
    [{ barrier: 'hedge' }, square, 'brush'],
    [{ power: 'line' }, line, 'overhead-wire'],
    [{ waterway: 'ditch' }, line, 'stream'],
    [{ natural: 'tree' }, point, 'tree'],
    [{ natural: 'Tree' }, point, 'tree'],
    [{ boundary: 'protected_area' }, square, 'boundary'],
  ])('%j', (properties, geometry, kind) => {
    const { features, report } = importFile(file([properties, geometry as Geometry]), 'a.geojson');
    expect(features.map((one) => one.kind)).toEqual([kind]);
    expect(report).toMatchObject({ read: 1, kept: 1, dropped: [] });
  });

  it('has only rows whose kind can be drawn in the shape they ask for', () => {
    const wrong = openStreetMapPreset.rules.filter(({ kind, shape }) => kind && shape && shapeOf(kind) !== shape);
    expect(wrong).toEqual([]);
  });

  it('takes heights in meters, feet and storeys, and says which it cannot use', () => {
    const height = (properties: Record<string, unknown>) =>
      importFile(file([{ building: 'yes', ...properties }, square]), 'a.geojson').features[0]!.properties.height;
    expect(height({ height: '12.5 m' })).toBe(12.5);
    expect(height({ height: '40 ft' })).toBe(12.19);
    expect(height({ height: 9 })).toBe(9);
    expect(height({ 'building:levels': '2' })).toBe(6);
    expect(height({ height: '8', 'building:levels': '2' })).toBe(8);
    expect(height({})).toBeUndefined();
    const { report, features } = importFile(file([{ building: 'yes', height: '5000' }, square]), 'a.geojson');
    expect(features[0]!.properties.height).toBeUndefined();
    expect(report.repaired[0]!.why).toContain('height “5000” was not used');
  });

  it('finds tags one level down and in capitals', () => {
    const kinds = (properties: Record<string, unknown>) =>
      importFile(file([properties, square]), 'a.geojson').features.map((one) => [one.kind, one.properties.height]);
    expect(kinds({ tags: { natural: 'wood', height: '9' } })).toEqual([['woods', 9]]);
    expect(kinds({ other_tags: '"height"=>"9","note"=>"a \\"big\\" one","natural"=>"wood"' })).toEqual([['woods', 9]]);
    expect(kinds({ NATURAL: 'Wood', HEIGHT: 9 })).toEqual([['woods', 9]]);
    expect(kinds({ tags: { __proto__: { natural: 'wood' } } })).toEqual([]);
  });

  it('keeps the file’s own words beside ours', () => {
    const [feature] = importFile(
      file([{ natural: 'wood', ref: 'W 7', description: 'Old oaks' }, square]),
      'a.geojson',
    ).features;
    expect(feature!.properties).toEqual({
      note: 'Old oaks',
      imported: { natural: 'wood', ref: 'W 7', description: 'Old oaks' },
    });
  });
});

describe('shapes', () => {
  it('a closed line may be an area, the outline of an area a fence; both are named', () => {
    const { features, report } = importFile(
      file([{ natural: 'wood' }, loop], [{ barrier: 'fence' }, square]),
      'a.geojson',
      {
        mapping: { ...openStreetMapPreset, rules: openStreetMapPreset.rules.map(({ shape: _, ...rule }) => rule) },
      },
    );
    expect(features.map((one) => [one.kind, one.geometry.type])).toEqual([
      ['woods', 'Polygon'],
      ['fence', 'LineString'],
    ]);
    expect(report.repaired.map((one) => one.why)).toEqual([
      'its closed line was read as an area',
      'the outline of its area was read as a line',
    ]);
  });

  it('a misfit is left out with the reason', () => {
    const mapping: Mapping = {
      ...openStreetMapPreset,
      rules: [{ attribute: 'natural', value: 'wood', kind: 'woods' }],
    };
    const { report } = importFile(file([{ natural: 'wood' }, point]), 'a.geojson', { mapping });
    expect(report.dropped[0]!.why).toBe('woods must be drawn as an area, but this is a point');
  });

  it('points of one thing become several shapes and count once', () => {
    const { report, features } = importFile(
      file([
        { natural: 'tree' },
        {
          type: 'MultiPoint',
          coordinates: [
            [0, 0],
            [1, 1],
            [1e9, 0],
          ],
        },
      ]),
      'a.geojson',
    );
    expect(features).toHaveLength(2);
    expect(report).toMatchObject({ read: 1, kept: 1, made: 2, dropped: [] });
    expect(report.repaired[0]!.why).toContain('a part was left out: longitude 1000000000 is beyond 180');
    expect(reportSentence(report)).toBe('Read 1 thing: 1 kept (2 shapes), 0 left out, 1 repaired.');
  });
});

describe('a person’s own mapping', () => {
  const own = file(
    [{ CLASS: 'Conifer', HGT: '55 ft' }, square],
    [{ CLASS: 'Mown' }, square],
    [{ CLASS: 'Unknown' }, square],
  );

  it('starts from the file’s attributes and values', () => {
    const summary = readFile(own, 'a.geojson').attributes;
    expect(summary[0]).toMatchObject({ attribute: 'CLASS', count: 3, different: 3 });
    expect(summary[0]!.values.map((one) => one.value).sort()).toEqual(['Conifer', 'Mown', 'Unknown']);
    expect(summary[0]!.values[0]!.shapes).toEqual(['area']);
    expect(sourceKey('geojson', summary)).toBe('geojson: CLASS, HGT');
    expect(attributeValues([])).toEqual([]);
  });

  it('is plain data that survives being stored, and maps again without reading again', () => {
    const mapping: Mapping = {
      id: 'county',
      title: 'County land cover',
      rules: [
        { attribute: 'CLASS', value: 'conifer', kind: 'woods' },
        { attribute: 'CLASS', value: 'Mown', kind: 'short-grass', set: { sprayed: true } },
        { attribute: 'CLASS', value: 'Unknown', kind: null },
      ],
      transfers: [{ from: 'HGT', to: 'height', as: 'length' }],
      otherwise: {},
    };
    const stored = readMapping(JSON.parse(JSON.stringify(mapping)));
    expect(stored).toEqual(mapping);
    const { features, report } = mapFile(readFile(own, 'a.geojson'), stored!);
    expect(features.map((one) => [one.kind, one.properties.height, one.properties.sprayed])).toEqual([
      ['woods', 16.76, undefined],
      ['short-grass', undefined, true],
    ]);
    expect(report.dropped).toEqual([{ what: 'feature 3', why: 'CLASS = Unknown is left out on purpose' }]);
  });

  it.each([
    null,
    5,
    {},
    { rules: [] },
    { rules: [{ attribute: 'a', value: 'b', kind: 'swamp' }], transfers: [] },
    { rules: [], transfers: [{ from: 'a', to: 'nonsense' }] },
  ])('%j is no mapping', (value) => {
    expect(readMapping(value)).toBeNull();
  });
});

it.each([
  ['12', 12],
  ['12.5 m', 12.5],
  ['12,5', 12.5],
  ['40 ft', 12.192],
  ["40'", 12.192],
  ['5\'11"', 1.8034],
  ['100 cm', 1],
  ['10 yd', 9.144],
  ['tall', null],
  ['', null],
  ['12 parsecs', null],
  ['-3', null],
  ['12-15', null],
])('a length of %j', (text, metres) => {
  const read = readLength(text);
  if (metres === null) expect(read).toBeNull();
  else expect(read).toBeCloseTo(metres, 9);
});
