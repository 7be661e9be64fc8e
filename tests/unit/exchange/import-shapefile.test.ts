import { describe, expect, it } from 'vitest';
import { importFile, readFile } from '../../../src/exchange/import.ts';
import { toUtm } from '../../../src/exchange/utm.ts';
import type { LonLat } from '../../../src/site/types.ts';
import { dbf, shp, utm17, zipped } from './make-shapefile.ts';

const corners: LonLat[] = [
  [-81.25, 41.5],
  [-81.25, 41.501],
  [-81.249, 41.501],
  [-81.249, 41.5],
];
const metres = corners.map((corner) => {
  const { easting, northing } = toUtm(corner, 17)!;
  return [easting, northing] as const;
});
// Shapefiles wind outlines clockwise.
const area = { type: 5 as const, parts: [[...metres, metres[0]!]] };
const layer = {
  'land.shp': shp(5, [area, null, area]),
  'land.dbf': dbf('natural', ['wood', 'scrub', 'grassland']),
};

describe('a zipped shapefile in UTM', () => {
  it('lands in longitude and latitude with its attributes, and the empty shape is named', () => {
    const { features, report, issues, format } = importFile(zipped({ ...layer, 'land.prj': utm17 }), 'land.zip');
    expect(format).toBe('shapefile');
    expect(issues).toEqual([]);
    expect(features.map((one) => one.kind)).toEqual(['woods', 'meadow']);
    expect(report).toMatchObject({ read: 3, kept: 2, made: 2 });
    expect(report.dropped).toEqual([{ what: 'land, shape 2', why: 'it has no geometry' }]);
    const ring = (features[0]!.geometry as { coordinates: number[][][] }).coordinates[0]!;
    for (const corner of corners) {
      const near = ring.some(([x, y]) => Math.abs(x! - corner[0]) < 1e-8 && Math.abs(y! - corner[1]) < 1e-8);
      expect(near, String(corner)).toBe(true);
    }
  });

  it('asks for the projection when there is no .prj or it is not understood, and takes the answer', () => {
    for (const files of [layer, { ...layer, 'land.prj': 'PROJCS["nonsense"' }]) {
      const asked = readFile(zipped(files), 'land.zip');
      expect(asked.ask?.what).toBe('projection');
      expect(asked.features).toEqual([]);
      expect(asked.issues[0]!.severity).toBe('error');
      expect(importFile(zipped(files), 'land.zip', { projection: 'EPSG:32617' }).features).toHaveLength(2);
      expect(readFile(zipped(files), 'land.zip', { projection: 'EPSG:99999' }).ask?.what).toBe('projection');
    }
  });

  it('reads upper-case names, folders and several layers, and skips what belongs to no map', () => {
    const points = { type: 1 as const, at: metres[0]! };
    const zip = zipped({
      'park/LAND.SHP': layer['land.shp'],
      'park/LAND.DBF': layer['land.dbf'],
      'park/LAND.PRJ': utm17,
      'park/trees.shp': shp(1, [points]),
      'park/trees.dbf': dbf('natural', ['tree']),
      'park/trees.prj': utm17,
      '__MACOSX/park/._LAND.SHP': 'x',
      'readme.txt': 'hello',
    });
    const { report, features } = importFile(zip, 'park.zip');
    expect(report.read).toBe(4);
    expect(features.map((one) => one.kind).sort()).toEqual(['meadow', 'tree', 'woods']);
  });

  it('survives damage: cut-off shapes and tables that lie are named', () => {
    const cut = layer['land.shp'].slice(0, 150);
    const lying = layer['land.dbf'].slice();
    new DataView(lying.buffer).setUint32(4, 4_000_000_000, true);
    expect(
      importFile(zipped({ 'land.shp': cut, 'land.dbf': layer['land.dbf'], 'land.prj': utm17 }), 'x.zip').report.read,
    ).toBe(0);
    const answer = importFile(zipped({ 'land.shp': layer['land.shp'], 'land.dbf': lying, 'land.prj': utm17 }), 'x.zip');
    expect(answer.issues.map((one) => one.id)).toContain('shapefile-broken');
    const uneven = importFile(
      zipped({ 'land.shp': layer['land.shp'], 'land.dbf': dbf('natural', ['wood']), 'land.prj': utm17 }),
      'x.zip',
    );
    expect(uneven.issues.map((one) => one.id)).toContain('shapefile-uneven');
  });
});
