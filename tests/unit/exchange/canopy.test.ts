import { area as turfArea } from '@turf/turf';
import type { Point, Polygon } from 'geojson';
import { describe, expect, it } from 'vitest';
import { canopyFeatures } from '../../../src/exchange/canopy.ts';
import { closed, eachCellInside, type Mask, opened } from '../../../src/exchange/mask.ts';
import { type HeightRaster, heightAboveGround } from '../../../src/exchange/raster.ts';
import { makeFrame } from '../../../src/ground/frame.ts';
import type { LonLat } from '../../../src/site/types.ts';
import { seeded } from './random-site.ts';

const frame = makeFrame([-81.25, 41.5]);

/** A raster of 1 m cells (or another size), top left at the frame's middle, heights by a function of metres east and south. */
function raster(width: number, height: number, at: (x: number, y: number) => number, cell = 1): HeightRaster {
  const values = Float32Array.from({ length: width * height }, (_, i) =>
    at(((i % width) + 0.5) * cell, (Math.floor(i / width) + 0.5) * cell),
  );
  const toLonLat = (column: number, row: number): LonLat => frame.toLonLat({ x: column * cell, y: -row * cell });
  return { width, height, values, cellWidth: cell, cellHeight: cell, toLonLat };
}

const inside = (x: number, y: number, cx: number, cy: number, r: number) => Math.hypot(x - cx, y - cy) < r;

describe('a made-up park of 200 × 150 m', () => {
  // A round wood of 40 m radius with a clearing of 10 m, a strip of brush 60 × 20 m, one tree of 4 m radius, a speck of noise.
  const park = raster(200, 150, (x, y) => {
    if (inside(x, y, 60, 60, 10)) return 0;
    if (inside(x, y, 60, 60, 40)) return 15 + 5 * Math.sin(x);
    if (x > 120 && x < 180 && y > 20 && y < 40) return 1.5;
    if (inside(x, y, 150, 100, 4)) return 9;
    if (inside(x, y, 20, 130, 0.8)) return 12;
    return 0.05;
  });
  const { features, tooSmall, unknownShare } = canopyFeatures(park);
  const of = (kind: string) => features.filter((one) => one.kind === kind);

  it('becomes one wood with its clearing, one brush, one tree; the speck is left out and counted', () => {
    expect(features.map((one) => one.kind).sort()).toEqual(['brush', 'tree', 'woods']);
    expect((of('woods')[0]!.geometry as Polygon).coordinates).toHaveLength(2);
    expect(tooSmall).toBeLessThanOrEqual(1);
    expect(unknownShare).toBe(0);
  });

  it('has the areas drawn, within the width of a cell around the edge', () => {
    const wood = turfArea(of('woods')[0]!.geometry as Polygon);
    const want = Math.PI * (40 ** 2 - 10 ** 2);
    expect(Math.abs(wood - want)).toBeLessThan(2 * Math.PI * 50 * 0.75);
    // turf's sphere is up to 0.5 % off.
    expect(Math.abs(turfArea(of('brush')[0]!.geometry as Polygon) - 1200)).toBeLessThan(60);
  });

  it('lies where it was drawn', () => {
    const tree = frame.toPlane((of('tree')[0]!.geometry as Point).coordinates as LonLat);
    expect(Math.hypot(tree.x - 150, tree.y + 100)).toBeLessThan(0.75);
    const edge = (of('woods')[0]!.geometry as Polygon).coordinates[0]!.map((at) => frame.toPlane(at as LonLat));
    for (const { x, y } of edge) expect(Math.abs(Math.hypot(x - 60, y + 60) - 40)).toBeLessThan(1.5);
  });

  it('has heights and a crown', () => {
    expect(of('woods')[0]!.properties.height).toBeGreaterThan(18);
    expect(of('woods')[0]!.properties.height).toBeLessThanOrEqual(20);
    expect(of('brush')[0]!.properties.height).toBe(1.5);
    expect(of('tree')[0]!.properties.height).toBe(9);
    expect(of('tree')[0]!.properties.crownRadius).toBeCloseTo(4, 0);
  });
});

it('a wood with a sloping rim has no ring of brush around it', () => {
  const slope = raster(120, 120, (x, y) => Math.max(0, Math.min(20, (45 - Math.hypot(x - 60, y - 60)) * 2)));
  expect(canopyFeatures(slope).features.map((one) => one.kind)).toEqual(['woods']);
});

it('gives every outline sound, whatever the noise', () => {
  for (let seed = 1; seed <= 10; seed++) {
    const random = seeded(seed);
    const noise = raster(60, 60, () => (random() < 0.1 ? Number.NaN : random() < 0.5 ? 0 : random() * 25), 2);
    const { features, unknownShare } = canopyFeatures(noise);
    expect(unknownShare).toBeGreaterThan(0.05);
    for (const { geometry, properties } of features) {
      expect(Number.isFinite(properties.height)).toBe(true);
      const ring = geometry.type === 'Polygon' ? geometry.coordinates[0]! : [];
      expect(ring.flat().every(Number.isFinite)).toBe(true);
      if (ring.length > 0) expect(ring[0]).toEqual(ring.at(-1));
    }
  }
});

it('nothing tall, nothing known, nothing at all: no features', () => {
  expect(canopyFeatures(raster(20, 20, () => 0)).features).toEqual([]);
  expect(canopyFeatures(raster(20, 20, () => Number.NaN))).toMatchObject({ features: [], unknownShare: 1 });
  expect(canopyFeatures(raster(20, 20, () => 500)).features).toEqual([]);
  expect(canopyFeatures(raster(0, 0, () => 0)).features).toEqual([]);
});

it('all woods is one wood to the edges', () => {
  const { features } = canopyFeatures(raster(50, 40, () => 12));
  expect(features).toHaveLength(1);
  expect(Math.abs(turfArea(features[0]!.geometry as Polygon) - 2000)).toBeLessThan(100);
});

describe('surface minus ground', () => {
  it('is the height above ground', () => {
    const above = heightAboveGround(
      raster(3, 2, (x) => 300 + x),
      raster(3, 2, () => 301),
    );
    if (typeof above === 'string') throw new Error(above);
    expect([...above.values]).toEqual([0, 0.5, 1.5, 0, 0.5, 1.5]);
  });

  it('says why two rasters do not fit', () => {
    expect(
      heightAboveGround(
        raster(3, 2, () => 1),
        raster(2, 2, () => 1),
      ),
    ).toContain('differ in size');
    const moved = { ...raster(3, 2, () => 1), toLonLat: () => [-81.2, 41.5] as LonLat };
    expect(
      heightAboveGround(
        raster(3, 2, () => 1),
        moved,
      ),
    ).toContain('do not lie over each other');
  });
});

describe('masks', () => {
  const mask = (rows: readonly string[]): Mask => ({
    width: rows[0]!.length,
    height: rows.length,
    cells: Uint8Array.from(rows.join(''), (c) => (c === '#' ? 1 : 0)),
  });
  const rows = ({ width, height, cells }: Mask) =>
    Array.from({ length: height }, (_, y) =>
      Array.from(cells.subarray(y * width, (y + 1) * width), (c) => (c ? '#' : '.')).join(''),
    );

  it('opening takes specks away and keeps the rest, closing fills pinholes', () => {
    const drawn = mask(['.......', '.###...', '.###.#.', '.###...', '.......']);
    expect(rows(opened(drawn, 1))).toEqual(['.......', '.###...', '.###...', '.###...', '.......']);
    const holed = mask(['.......', '.#####.', '.##.##.', '.#####.', '.......']);
    expect(rows(closed(holed, 1))[2]).toBe('.#####.');
    expect(opened(drawn, 0)).toBe(drawn);
  });

  it('fills an outline with a hole by the even-odd rule', () => {
    const found = new Set<number>();
    const outer = [
      [1, 1],
      [6, 1],
      [6, 6],
      [1, 6],
      [1, 1],
    ];
    const hole = [
      [3, 3],
      [4, 3],
      [4, 4],
      [3, 4],
      [3, 3],
    ];
    eachCellInside([outer, hole], { width: 8, height: 8 }, (index) => found.add(index));
    expect(found.size).toBe(24);
    expect(found.has(3 * 8 + 3)).toBe(false);
    expect(found.has(1 * 8 + 1)).toBe(true);
  });
});
