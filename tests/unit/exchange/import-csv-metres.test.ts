/** Tables of eastings and northings: where the zone comes from, what is asked, and what is said. */
import type { Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { importFile } from '../../../src/exchange/import.ts';
import type { ImportOptions } from '../../../src/exchange/import-types.ts';
import { latitudeBand, toUtm } from '../../../src/exchange/utm.ts';
import type { LonLat } from '../../../src/site/types.ts';
import { dice } from '../print/fixture.ts';

const read = (text: string, options: ImportOptions = {}) =>
  importFile(new TextEncoder().encode(text), 'a.csv', options);
const places = (text: string, options: ImportOptions = {}) =>
  read(text, options).features.map((one) => (one.geometry as Point).coordinates as [number, number]);
const ids = (text: string, options: ImportOptions = {}) => read(text, options).issues.map((one) => one.id);

/** Degrees of a metre of latitude on a sphere of 6,371 km, for tolerances. */
const metre = 1 / 111_195;

function expectNear(found: readonly number[] | undefined, [lon, lat]: readonly [number, number], metres: number) {
  expect(Math.abs(found![1]! - lat)).toBeLessThan(metres * metre);
  expect(Math.abs(found![0]! - lon)).toBeLessThan((metres * metre) / Math.cos((lat * Math.PI) / 180));
}

/** FGDC-STD-011-2001 (US National Grid) §5.2.2: Washington Monument, NAD83 UTM 18N; degrees by PROJ 9.3 of that place. */
const monument = {
  easting: 323483.168,
  northing: 4306479.498,
  place: [-77.0352402156242, 38.889467309501576],
} as const;

describe('published worked examples', () => {
  it.each([
    ['a zone column', 'name,easting,northing,zone\nM,323483.168,4306479.498,18S', {}],
    ['a number and a half of the earth', 'name;UTM_E;UTM_N;UTM zone;hemisphere\nM;323483,168;4306479,498;18;N', {}],
    ['EPSG code, NAD83', 'name,Easting (m),Northing (m)\nM,323483.168,4306479.498', { projection: 'EPSG:26918' }],
    ['zone typed', 'name,northing,easting\nM,4306479.498 mN,323483.168 mE', { projection: '18 north' }],
    ['x and y of that size', 'name,x,y,zone\nM,323483.168,4306479.498,UTM zone 18N', {}],
    ['thousands', 'name,easting,northing\nM,"323,483.168","4,306,479.498"', { projection: '18S' }],
    [
      'columns picked by the person',
      'name,right,up\nM,323483.168,4306479.498',
      { projection: 'EPSG:32618', columns: { lat: 'up', lon: 'right' } },
    ],
  ] as [string, string, ImportOptions][])('Washington Monument by %s', (_, text, options) => {
    expectNear(places(text, options)[0], monument.place, 0.01);
    expect(ids(text, options)).toContain('projected');
  });

  it('Snyder, USGS Professional Paper 1395 (1987), p. 269–270: Clarke 1866, 40.5 N 73.5 W, x without false easting 127106.5, y 4484124.4', () => {
    const [found] = places('easting,northing\n627106.5,4484124.4', {
      projection: '+proj=utm +zone=18 +ellps=clrk66 +units=m +no_defs',
    });
    expectNear(found, [-73.5, 40.5], 0.1);
  });

  it('IOGP Guidance Note 7-2, Transverse Mercator, Airy 1830: 50.5 N 0.5 E at 577274.99 E 69740.50 N', () => {
    const [found] = places('easting,northing\n577274.99,69740.50', {
      projection:
        '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +a=6377563.396 +rf=299.32496 +units=m +no_defs',
    });
    expectNear(found, [0.5, 50.5], 0.02);
  });
});

it('places all over the earth come back, their zones mixed in one table, with letters of bands or of halves', () => {
  const random = dice(11);
  const made = Array.from({ length: 200 }, () => [random() * 360 - 180, random() * 160 - 79] as LonLat);
  for (const half of ['band', 'north or south']) {
    const rows = made.map((place) => {
      const { zone, band, easting, northing } = toUtm(place)!;
      const letter = half === 'band' ? latitudeBand(place[1]) : band < 'N' ? 'south' : 'north';
      return `${zone}${letter},${easting},${northing}`;
    });
    const found = places(['zone,easting,northing', ...rows].join('\n'));
    expect(found).toHaveLength(made.length);
    for (const [i, place] of made.entries()) expectNear(found[i], place, 0.01);
  }
});

describe('what only the person knows', () => {
  it('the zone is asked for, and the answer is taken', () => {
    const text = 'name,easting,northing\nA,453703,4474440';
    const asked = read(text);
    expect(asked.features).toEqual([]);
    expect(asked.ask).toMatchObject({ what: 'projection' });
    expect(asked.ask!.sentence).toContain('“easting” and “northing” hold meters');
    expect(read(text, { projection: 'EPSG:99999' }).ask!.sentence).toContain('EPSG:99999');
    expect(read(text, { projection: '17T' }).ask).toBeNull();
    expect(places(text, { projection: '17T' })).toEqual(places(text, { projection: 'EPSG:32617' }));
  });

  it('a zone without its half of the earth is asked about; rows of another zone than the answer are named', () => {
    const text = 'name,easting,northing,zone\nA,453703,4474440,17\nB,453703,4474440,18';
    expect(read(text).ask!.sentence).toContain('(17)');
    const { report } = read(text, { projection: 'EPSG:32617' });
    expect(report).toMatchObject({ read: 2, kept: 1 });
    expect(report.dropped[0]).toMatchObject({
      what: 'row 2 “B”',
      why: 'its zone is 18, but UTM zone 17 north was given',
    });
  });

  it('easting and northing as small as degrees are asked about, not read as either', () => {
    const text = 'easting,northing\n-81.25,41.5';
    const asked = read(text);
    expect(asked.ask!.sentence).toContain('look like degrees');
    expect(places(text, { projection: 'EPSG:4326' })).toEqual([[-81.25, 41.5]]);
  });
});

describe('what is said', () => {
  it('x and y read as degrees are said to be; lat and lon need no word', () => {
    expect(ids('x,y\n-81.25,41.5')).toEqual(['xy-as-degrees']);
    expect(places('x,y\n-81.25,41.5')).toEqual([[-81.25, 41.5]]);
    expect(ids('lon,lat\n-81.25,41.5')).toEqual([]);
    expect(read('x,y\n-81.25,41.5', { projection: '17T' }).issues[0]!.sentence).toContain('was not used');
  });

  it('S is a latitude band where it can be, and that is said; "south" is the half of the earth', () => {
    const band = 'easting,northing,zone\n323483,4306479,18S';
    expect(ids(band)).toEqual(['projected', 'utm-band-s']);
    const south = 'easting,northing,zone\n323483,4306479,18 south';
    expect(ids(south)).toEqual(['projected']);
    expect(places(south)[0]![1]).toBeLessThan(-50);
    // No band S has this northing: only the southern half is left.
    expect(ids('easting,northing,zone\n323483,6306479,18S')).toEqual(['projected']);
  });

  it('a zone the rows name goes before the one given, and that is said', () => {
    const { issues } = read('easting,northing,zone\n323483,4306479,18N', { projection: 'EPSG:32617' });
    expect(issues[0]!.sentence).toContain('UTM zone 17 north, which was given, was not needed');
  });

  it('rows without a place are named with the reason, and counted', () => {
    const rows = [
      'A,323483,4306479,18N',
      'B,,,18N',
      'C,4306479,323483,18N',
      'D,323483,4306479,',
      'E,323483,4306479,17X',
      'F,"323,483",4306479,18N',
      'G,east,4306479,18N',
    ];
    const { report } = read(['name,easting,northing,zone', ...rows].join('\n'));
    expect(report).toMatchObject({ read: 7, kept: 1 });
    expect(report.dropped.map(({ why }) => why)).toEqual([
      'it has no easting and northing',
      'easting 4306479, northing 323483 is no place in UTM zone 18N',
      'it has no UTM zone',
      'easting 323483, northing 4306479 is no place in UTM zone 17X',
      '“323,483” may be a decimal comma or thousands; write it without the comma',
      '“east” is no easting or northing',
    ]);
  });

  it('far from the site is pointed out, and computed axes are never swapped', () => {
    const text = 'easting,northing,zone\n323483,4306479,18N';
    expect(ids(text, { near: [-83, 40] })).toEqual(['projected', 'far-from-site']);
    expect(ids(text, { near: [38.9, -77] })).toEqual(['projected', 'far-from-site']);
  });
});

it('latitude and longitude go before easting and northing; a column called zone of another sort is kept as it is', () => {
  expect(places('easting,northing,lat,lon\n323483,4306479,41.5,-81.25')).toEqual([[-81.25, 41.5]]);
  const { features } = read('name,lat,lon,zone\nA,41.5,-81.25,17T\n');
  expect(JSON.stringify(features[0]!.properties)).toContain('17T');
  const meadow = read('name,x,y,zone\nA,323483,4306479,Lower field\n', { projection: '18N' });
  expect(JSON.stringify(meadow.features[0]!.properties)).toContain('Lower field');
});
