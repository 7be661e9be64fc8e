import type { Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { importFile, readFile } from '../../../src/exchange/import.ts';
import type { ImportOptions } from '../../../src/exchange/import-types.ts';
import type { LonLat } from '../../../src/site/types.ts';

const read = (text: string, options: ImportOptions = {}, name = 'a.csv') =>
  importFile(new TextEncoder().encode(text), name, options);
const places = (text: string, options: ImportOptions = {}) =>
  read(text, options).features.map((one) => (one.geometry as Point).coordinates);
const here: LonLat[] = [
  [-81.25, 41.5],
  [-81.24, 41.51],
];

describe('columns and separators', () => {
  it.each([
    ['comma', 'name,lat,lon\nA,41.5,-81.25\nB,41.51,-81.24\n'],
    ['semicolon and decimal comma', 'name;lat;lon\nA;41,5;-81,25\nB;41,51;-81,24\n'],
    ['comma and quoted decimal comma', 'name,lat,lon\nA,"41,5","-81,25"\nB,"41,51","-81,24"\n'],
    ['tab', 'Name\tLatitude\tLongitude\nA\t41.5\t-81.25\nB\t41.51\t-81.24\n'],
    ['bar', 'y|x|name\n41.5|-81.25|A\n41.51|-81.24|B'],
    ['byte order mark and CRLF', '\ufeffname,lat,lon\r\nA,41.5,-81.25\r\nB,41.51,-81.24\r\n'],
    ['units in headings', 'id,Latitude (deg),Longitude [deg]\n1,41.5,-81.25\n2,41.51,-81.24'],
    ['longitude first', 'lon,lat\n-81.25,41.5\n-81.24,41.51'],
    ['degrees with marks', 'lat,lon\n"41°30\'00"" N","81°15\'00"" W"\n41.51,-81.24'],
    ['a column of positions', 'name,coordinates\nA,"41.5, -81.25"\nB,"41.51, -81.24"'],
    ['real minus signs', 'lat,lon\n41.5,−81.25\n41.51,−81.24'],
    ['empty rows', 'lat,lon\n\n41.5,-81.25\n,\n41.51,-81.24\n\n'],
  ])('%s', (_, text) => {
    const found = places(text);
    expect(found).toHaveLength(2);
    found.forEach((place, i) => {
      expect(place[0]).toBeCloseTo(here[i]![0], 9);
      expect(place[1]).toBeCloseTo(here[i]![1], 9);
    });
  });

  it('reads a column of grid references', () => {
    const [place] = places('name,usng\nA,17T NE 53703 74440');
    expect(place![1]).toBeCloseTo(40.41886, 4);
  });

  it('says when no column is found, lists them, and takes the answer', () => {
    const asked = readFile(new TextEncoder().encode('name,up,across\nA,41.5,-81.25'), 'a.csv');
    expect(asked.ask).toMatchObject({ what: 'columns', columns: ['name', 'up', 'across'] });
    expect(asked.issues[0]!.sentence).toContain('name, up, across');
    expect(places('name,up,across\nA,41.5,-81.25', { columns: { lat: 'up', lon: 'across' } })).toEqual([here[0]]);
  });
});

describe('swapped axes', () => {
  it('are exchanged where the latitudes would be in Antarctica, also without a site; one place there is left alone', () => {
    const eastern = read('name,lat,lon\nA,-83.547,41.2145\nB,-83.5471,41.2146\n');
    expect(eastern.issues.map((one) => one.id)).toEqual(['lat-lon-swapped']);
    const station = read('name,lat,lon\nA,-77.85,-166.67\n');
    expect(station.issues.map((one) => one.id)).toEqual([]);
  });

  it('are exchanged when most latitudes would be beyond the poles', () => {
    const { features, issues } = read('lat,lon\n-101.25,41.5\n-101.24,41.6');
    expect(features.map((one) => (one.geometry as Point).coordinates)).toEqual([
      [-101.25, 41.5],
      [-101.24, 41.6],
    ]);
    expect(issues.map((one) => one.id)).toEqual(['lat-lon-swapped']);
  });

  it('are exchanged when only then they lie near the site', () => {
    const { issues } = read('lat,lon\n10.2,50.1\n10.3,50.2', { near: [10.25, 50.15] });
    expect(issues.map((one) => one.id)).toEqual(['lat-lon-swapped']);
    expect(places('lat,lon\n10.2,50.1', { near: [10.25, 50.15] })).toEqual([[10.2, 50.1]]);
    expect(places('lat,lon\n50.1,10.2', { near: [10.25, 50.15] })).toEqual([[10.2, 50.1]]);
  });

  it('one row beyond the poles is that row’s fault', () => {
    const { report } = read('name,lat,lon\nA,41.5,-81\nB,41.6,-81\nC,141.6,-81');
    expect(report.dropped).toEqual([{ what: 'row 3 “C”', why: 'latitude 141.6 is beyond the poles' }]);
    expect(report.kept).toBe(2);
  });

  it('things far from the site are pointed out', () => {
    expect(read('lat,lon\n41.5,-81', { near: [10, 50] }).issues.map((one) => one.id)).toEqual(['far-from-site']);
  });
});

it('rows without a place are named, with what stood there', () => {
  const { report } = read('name,lat,lon\nA,,\nB,north,west\nC,NaN,1e999\nD,41.5,-81');
  expect(report).toMatchObject({ read: 4, kept: 1 });
  expect(report.dropped.map((one) => one.what)).toEqual(['row 1 “A”', 'row 2 “B”', 'row 3 “C”']);
  expect(report.dropped[1]!.why).toContain('north, west');
});

it('old encodings are read and said', () => {
  const latin = Uint8Array.from('name,lat,lon\nGr\u00fcn,1,2', (letter) => letter.charCodeAt(0));
  const { features, issues } = importFile(latin, 'a.csv');
  expect(features[0]!.properties.name).toBe('Grün');
  expect(issues.map((one) => one.id)).toEqual(['not-utf8']);
});

it('our guard before formulas is taken off again', () => {
  expect(read("name,lat,lon\n'=1+1,1,2").features[0]!.properties.name).toBe('=1+1');
});

it('cells beyond the headings are said', () => {
  expect(read('name,lat,lon\nA,1,2,3').issues.map((one) => one.id)).toEqual(['csv-ragged']);
});
