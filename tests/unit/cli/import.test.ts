/** A foreign file made into a site by command: what is kept, dropped and refused, and how it ends. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSite } from '../../../src/site/read.ts';
import { meadowpost, ownFolder } from './desk.ts';

const { at, file } = ownFolder('import');
const square = [
  [-84, 40],
  [-83.998, 40],
  [-83.998, 40.002],
  [-84, 40.002],
  [-84, 40],
];
const foreign = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    { type: 'Feature', properties: { natural: 'wood' }, geometry: { type: 'Polygon', coordinates: [square] } },
    { type: 'Feature', properties: { shop: 'bakery' }, geometry: { type: 'Point', coordinates: [-84, 40] } },
  ],
});

describe('meadowpost import', () => {
  it('writes a site that opens, and accounts for every thing in the file', async () => {
    const site = at('woods.geojson');
    const { status, stdout } = await meadowpost(
      'import',
      file('map.geojson', foreign),
      '--as',
      site,
      '--mapping',
      'osm',
      '--name',
      'Woods',
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/map\.geojson: 2 things read = \d kept \+ \d dropped; \d features made/);
    const opened = readSite(readFileSync(site, 'utf8'), 'woods').site!;
    expect(opened.settings.name).toBe('Woods');
    expect(opened.features.map((one) => one.kind)).toContain('woods');
  });
  it.each([
    [['import', at('map.geojson')], /wants --as SITE/, 2],
    [['import', at('none.gpx'), '--as', at('x.geojson')], /no such file/i, 3],
    [['import', at('map.geojson'), '--as', at('x.geojson'), '--lat', 'y'], /--lat and --lon go together/, 2],
    [['import', at('map.geojson'), '--as', at('x.geojson'), '--mapping', at('map.geojson')], /is no mapping/, 2],
    [['import', file('words.txt', 'not a map'), '--as', at('x.geojson')], /./, 1],
  ])('%j is refused, and nothing is written', async (words, sentence, code) => {
    const { status, stderr } = await meadowpost(...words);
    expect(stderr).toMatch(sentence);
    expect(status).toBe(code);
    expect(existsSync(at('x.geojson'))).toBe(false);
  });
  it('asks for the zone of a table in meters, and takes it by --projection', async () => {
    const table = file('boxes.csv', 'name,easting,northing\nA,323483.168,4306479.498\n');
    const asked = await meadowpost('import', table, '--as', at('boxes.geojson'));
    expect(asked.status).toBe(1);
    expect(asked.stderr).toContain('nothing says in which projection or UTM zone');
    const told = await meadowpost('import', table, '--as', at('boxes.geojson'), '--projection', '18N');
    expect(told.status).toBe(0);
    expect(told.stderr).toContain('turned from UTM zone 18N');
    const opened = readSite(readFileSync(at('boxes.geojson'), 'utf8'), 'boxes').site!;
    expect(opened.features).toHaveLength(1);
  });
});
