import { writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { readGeoPicture, readHeightRaster } from '../../../src/exchange/geotiff-in.ts';
import { toUtm } from '../../../src/exchange/utm.ts';
import type { LonLat } from '../../../src/site/types.ts';

const corner: LonLat = [-81.25, 41.5];
const utm = toUtm(corner, 17)!;

/** A GeoTIFF of 4 × 3 cells of 2 m, its top left corner at `corner`, in UTM 17 north unless said otherwise. */
function tiff(values: Float32Array | Uint8Array, keys: Record<string, unknown> = {}): Uint8Array {
  const metadata = {
    height: 3,
    width: 4,
    ModelPixelScale: [2, 2, 0],
    ModelTiepoint: [0, 0, 0, utm.easting, utm.northing, 0],
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: 32617,
    GDAL_NODATA: '-9999',
    ...keys,
  };
  return new Uint8Array(writeArrayBuffer(values, metadata as Parameters<typeof writeArrayBuffer>[1]));
}

const heights = Float32Array.from([0, 1, 2, 3, 4, 5, -9999, 7, 8, 9, 10, 11]);

describe('a raster of heights', () => {
  it('has its values, missing ones as NaN, and its place', async () => {
    const { value, issues } = await readHeightRaster(tiff(heights));
    expect(issues).toEqual([]);
    expect([...value!.values]).toEqual([0, 1, 2, 3, 4, 5, Number.NaN, 7, 8, 9, 10, 11]);
    expect([value!.width, value!.height]).toEqual([4, 3]);
    const [lon, lat] = value!.toLonLat(0, 0)!;
    expect(lon).toBeCloseTo(corner[0], 8);
    expect(lat).toBeCloseTo(corner[1], 8);
    const [east, south] = value!.toLonLat(4, 3)!;
    const far = toUtm([east, south], 17)!;
    expect(far.easting - utm.easting).toBeCloseTo(8, 4);
    expect(utm.northing - far.northing).toBeCloseTo(6, 4);
    expect(value!.cellWidth).toBeCloseTo(2, 1);
  });

  it('shifts by half a cell where the file means the middle of cells', async () => {
    const { value } = await readHeightRaster(tiff(heights, { GTRasterTypeGeoKey: 2 }));
    const at = toUtm(value!.toLonLat(0, 0)!, 17)!;
    expect(at.easting - utm.easting).toBeCloseTo(-1, 4);
    expect(at.northing - utm.northing).toBeCloseTo(1, 4);
  });

  it('asks for a projection it does not know, and takes the answer', async () => {
    const unknown = tiff(heights, { ProjectedCSTypeGeoKey: 3035 });
    const asked = await readHeightRaster(unknown);
    expect(asked.value).toBeNull();
    expect('ask' in asked && asked.ask?.what).toBe('projection');
    expect(asked.issues[0]!.sentence).toContain('EPSG:3035');
    expect((await readHeightRaster(unknown, { projection: 'EPSG:32617' })).value).not.toBeNull();
  });

  it('refuses what is no GeoTIFF, with a reason', async () => {
    for (const bytes of [
      new Uint8Array(0),
      new Uint8Array([0x49, 0x49, 0x2a, 0, 255, 255, 255, 255]),
      new TextEncoder().encode('hello'),
    ]) {
      const { value, issues } = await readHeightRaster(bytes);
      expect(value).toBeNull();
      expect(issues[0]!.severity).toBe('error');
    }
    expect((await readHeightRaster(tiff(heights), { band: 3 })).issues[0]!.id).toBe('no-band');
  });
});

it('a picture has its colors and corners', async () => {
  const grey = Uint8Array.from({ length: 12 }, (_, i) => i * 20);
  const { value, issues } = await readGeoPicture(
    tiff(grey, { PhotometricInterpretation: 1, BitsPerSample: [8], SampleFormat: [1] }),
  );
  expect(issues).toEqual([]);
  expect([value!.width, value!.height, value!.rgba.length]).toEqual([4, 3, 48]);
  expect([...value!.rgba.slice(4, 8)]).toEqual([20, 20, 20, 255]);
  expect(value!.corners[0][0]).toBeCloseTo(corner[0], 8);
  expect(value!.corners[2][1]).toBeLessThan(corner[1]);
});
