/**
 * Our exports read back by programs that are not ours (Debian: libxml2-utils, gpsbabel, gdal-bin): counts, names, coordinates ≤ 1e-7°.
 * Where a program is not installed the check is skipped and the reason printed.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FeatureCollection, Point } from 'geojson';
import { afterAll, describe, expect, it } from 'vitest';
import { writePlacesCsv } from '../../src/exchange/csv.ts';
import { siteThings } from '../../src/exchange/exported.ts';
import { writeGpx } from '../../src/exchange/gpx.ts';
import { importFile } from '../../src/exchange/import.ts';
import { writeKml } from '../../src/exchange/kml.ts';
import { writePlanGeojson } from '../../src/exchange/plan-geojson.ts';
import { planThings } from '../../src/exchange/plan-things.ts';
import { shortNames } from '../../src/exchange/short-names.ts';
import { writeSite } from '../../src/site/write.ts';
import { zipped } from '../unit/exchange/make-shapefile.ts';
import { fixturePlan, frame } from '../unit/exchange/plan-fixture.ts';
import { randomSite } from '../unit/exchange/random-site.ts';

const folder = mkdtempSync(join(tmpdir(), 'exports-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function installed(program: string): boolean {
  const found = spawnSync(program, ['--version']).error === undefined;
  if (!found) console.log(`skipped: ${program} is not installed (apt-get install libxml2-utils gpsbabel gdal-bin)`);
  return found;
}

const [hasXmllint, hasGpsbabel, hasOgr] = ['xmllint', 'gpsbabel', 'ogr2ogr'].map(installed);

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const plans = [fixturePlan(), fixturePlan('<b>&"\' ]]> Žluť 木 =1+1 \u0001 \ud800'), fixturePlan('long '.repeat(2000))];
const sites = Array.from({ length: 60 }, (_, i) => randomSite(i + 5000));
const exported = [...plans.map((plan) => planThings(plan, frame)), ...sites.map(siteThings)];

/** Everything a GDAL program makes of a file, as GeoJSON. */
function ogr(path: string, layer?: string, ...options: string[]): FeatureCollection {
  const out = execFileSync(
    'ogr2ogr',
    ['-f', 'GeoJSON', '-lco', 'COORDINATE_PRECISION=10', '/vsistdout/', path, ...(layer ? [layer] : []), ...options],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] },
  );
  return JSON.parse(out) as FeatureCollection;
}

function expectPlaces(got: readonly Point[], want: readonly Point[]): void {
  expect(got).toHaveLength(want.length);
  got.forEach((point, i) => {
    expect(Math.abs(point.coordinates[0]! - want[i]!.coordinates[0]!)).toBeLessThanOrEqual(1.001e-7);
    expect(Math.abs(point.coordinates[1]! - want[i]!.coordinates[1]!)).toBeLessThanOrEqual(1.001e-7);
  });
}

const pointsOf = (things: (typeof exported)[number]) => things.things.filter((one) => one.geometry?.type === 'Point');

describe.skipIf(!hasXmllint)('xmllint', () => {
  it('finds the GPX in order, with plain decimals and short plain names', () => {
    const paths = exported.map((things, i) => file(`g${i}.gpx`, writeGpx(things, { leftOut: true })));
    const rng = join(import.meta.dirname, 'gpx-ours.rng');
    const { status, stderr } = spawnSync('xmllint', ['--noout', '--relaxng', rng, ...paths], { encoding: 'utf8' });
    expect(stderr.split('\n').filter((line) => line && !line.endsWith('validates'))).toEqual([]);
    expect(status).toBe(0);
  });

  it('would notice a wrong order and an exponent', () => {
    const rng = join(import.meta.dirname, 'gpx-ours.rng');
    const good = writeGpx(exported[0]!, { leftOut: true });
    const wrong = [
      good.replace(/(<name>[^<]*<\/name>)\n(<cmt>[^<]*<\/cmt>)/, '$2\n$1'),
      good.replace('lat="41.5', 'lat="4.15e1"'.slice(0, -1)),
    ];
    for (const [i, text] of wrong.entries()) {
      expect(text).not.toBe(good);
      expect(spawnSync('xmllint', ['--noout', '--relaxng', rng, file(`wrong${i}.gpx`, text)]).status).not.toBe(0);
    }
  });

  it('finds the KML well-formed', () => {
    const paths = exported.map((things, i) => file(`k${i}.kml`, writeKml(things)));
    expect(spawnSync('xmllint', ['--noout', ...paths], { encoding: 'utf8' }).stderr).toBe('');
  });
});

describe.skipIf(!hasGpsbabel)('gpsbabel', () => {
  it.each([0, 1, 2])(
    'reads the waypoints of plan %d with their names and places, and the route with the same names',
    (i) => {
      const things = exported[i]!;
      const path = file('plan.gpx', writeGpx(things, { leftOut: true }));
      const csv = execFileSync('gpsbabel', ['-i', 'gpx', '-f', path, '-o', 'unicsv,grid=0,prec=8', '-F', '-'], {
        encoding: 'utf8',
      });
      const names = shortNames(things.things);
      for (const thing of pointsOf(things)) expect(csv).toContain(names.get(thing.id)!);
      expect(csv.trim().split('\n')).toHaveLength(pointsOf(things).length + 1);
      const back = execFileSync('gpsbabel', ['-r', '-i', 'gpx', '-f', path, '-o', 'gpx', '-F', '-'], {
        encoding: 'utf8',
      });
      const stops = things.rounds.flatMap((round) => round.stops.map((id) => names.get(id)!));
      expect([...back.matchAll(/<rtept[\s\S]*?<name>([^<]*)</g)].map((found) => found[1])).toEqual(stops);
    },
  );

  it('turns KML into the same number of places', () => {
    const path = file('plan.kml', writeKml(exported[0]!));
    const back = execFileSync('gpsbabel', ['-i', 'kml', '-f', path, '-o', 'gpx', '-F', '-'], { encoding: 'utf8' });
    expect(back.match(/<wpt /g)).toHaveLength(pointsOf(exported[0]!).length);
  });
});

describe.skipIf(!hasOgr)('ogr2ogr', () => {
  it('reads the same places from GPX, CSV and plan GeoJSON', () => {
    for (const [i, plan] of plans.entries()) {
      const things = exported[i]!;
      const want = pointsOf(things).map((one) => one.geometry as Point);
      const places = (collection: FeatureCollection) => collection.features.map((one) => one.geometry as Point);
      const gpx = ogr(file('p.gpx', writeGpx(things, { leftOut: true })), 'waypoints');
      expectPlaces(places(gpx), want);
      expect(gpx.features.map((one) => one.properties!.cmt)).toEqual(pointsOf(things).map((one) => one.name));
      const csv = ogr(
        file('p.csv', writePlacesCsv(things)),
        undefined,
        '-oo',
        'X_POSSIBLE_NAMES=lon',
        '-oo',
        'Y_POSSIBLE_NAMES=lat',
        '-oo',
        'AUTODETECT_TYPE=YES',
      );
      expectPlaces(places(csv), want);
      expect(csv.features.map((one) => typeof one.properties!.lon)).toEqual(want.map(() => 'number'));
      const json = ogr(file('p.geojson', writePlanGeojson(plan, frame)));
      const boxes = json.features.filter((one) => one.geometry.type === 'Point');
      expectPlaces(places({ type: 'FeatureCollection', features: boxes }), want);
      expect(json.features.filter((one) => one.geometry.type === 'LineString')).toHaveLength(4);
    }
  });

  it('reads every placemark of the KML with its name and our kind', () => {
    const things = exported[0]!;
    const path = file('p.kml', writeKml(things));
    const layers = ['boxes', 'walk', 'left out'];
    const all = layers.flatMap((layer) => ogr(path, layer).features);
    expect(all.map((one) => one.properties!.Name)).toEqual(
      [...things.things.map((one) => one.name)]
        .sort((a, b) => order(things, a) - order(things, b))
        .concat()
        .toSpliced(5, 0, 'Round 1'),
    );
    expect(all.filter((one) => one.geometry.type === 'Point')).toHaveLength(pointsOf(things).length);
  });

  it('finds the rings of the site GeoJSON wound as RFC 7946 says: its own rewinding changes nothing', () => {
    const features = sites.flatMap((site, i) =>
      site.features.filter((one) => one.geometry).map((one) => ({ ...one, id: `${i}-${one.id}` })),
    );
    const path = file('sites.geojson', writeSite({ ...sites[0]!, features }));
    const plain = ogr(path);
    const wound = ogr(path, undefined, '-lco', 'RFC7946=YES', '-lco', 'WRITE_BBOX=NO');
    const shapes = (collection: FeatureCollection) => JSON.stringify(collection.features.map((one) => one.geometry));
    expect(plain.features).toHaveLength(features.length);
    expect(shapes(wound)).toBe(shapes(plain));
  });

  it('writes a zipped shapefile in UTM that comes in where it was', () => {
    const things = exported[0]!;
    const source = file('plan-out.geojson', writePlanGeojson(plans[0]!, frame));
    execFileSync('ogr2ogr', [
      '-f',
      'ESRI Shapefile',
      '-t_srs',
      'EPSG:32617',
      '-lco',
      'ENCODING=UTF-8',
      '-where',
      "OGR_GEOMETRY='Point'",
      '-select',
      'name,kind,number',
      '-overwrite',
      join(folder, 'boxes.shp'),
      source,
    ]);
    const part = (ending: string) => new Uint8Array(readFileSync(join(folder, `boxes.${ending}`)));
    const zip = zipped({
      'boxes.shp': part('shp'),
      'boxes.dbf': part('dbf'),
      'boxes.prj': part('prj'),
      'boxes.cpg': part('cpg'),
    });
    const { features, report } = importFile(zip, 'boxes.zip');
    expect(report.dropped).toEqual([]);
    expectPlaces(
      features.map((one) => one.geometry as Point),
      pointsOf(things).map((one) => one.geometry as Point),
    );
    expect(features.map((one) => one.properties.name)).toEqual(pointsOf(things).map((one) => one.name));
  });

  it('makes a GeoPackage of the plan by the line the docs give', () => {
    const source = file('plan.geojson', writePlanGeojson(plans[0]!, frame));
    execFileSync('ogr2ogr', ['-f', 'GPKG', join(folder, 'plan.gpkg'), source], {
      stdio: ['ignore', 'ignore', 'ignore'],
    });
    expect(execFileSync('ogrinfo', ['-so', join(folder, 'plan.gpkg'), 'plan'], { encoding: 'utf8' })).toContain(
      'Feature Count: 11',
    );
  });
});

/** Folder order: boxes, walk, left out. */
function order(things: (typeof exported)[number], name: string): number {
  const groups = ['boxes', 'walk', 'left out', 'land'];
  const thing = things.things.find((one) => one.name === name)!;
  return groups.indexOf(thing.group) * 1000 + things.things.indexOf(thing);
}
