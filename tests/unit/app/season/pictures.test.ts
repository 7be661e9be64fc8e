import { writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { fitOf } from '../../../../src/app/actions/picture-place.ts';
import { makeCanopyFinder } from '../../../../src/app/engine/calls/canopy.ts';
import type { Tie } from '../../../../src/app/picture-state.ts';
import { importFeatures } from '../../../../src/edits/import-features.ts';
import { canopySettings } from '../../../../src/exchange/canopy.ts';
import { isFitted } from '../../../../src/exchange/control-points.ts';
import { draftFeatures } from '../../../../src/exchange/draft-features.ts';
import { toUtm } from '../../../../src/exchange/utm.ts';
import { makeFrame } from '../../../../src/ground/frame.ts';
import { newSite } from '../../../../src/site/new-site.ts';

const home = makeFrame([-81.5, 41.1]);
const tie = (pixel: [number, number], x: number, y: number): Tie => ({ pixel, ground: home.toLonLat({ x, y }) });

describe('control points', () => {
  it('lay a picture of half a meter a pixel down, with the misfit of a wrong point in meters', () => {
    const good = [tie([0, 0], 0, 0), tie([200, 0], 100, 0), tie([0, 100], 0, -50), tie([200, 100], 100, -50)];
    const fit = fitOf(good, 'similarity')!;
    if (!isFitted(fit)) throw new Error(fit.reason);
    expect(fit.metresPerPixel).toBeCloseTo(0.5, 3);
    expect(fit.rms).toBeLessThan(0.001);
    const wrong = fitOf([...good.slice(0, 3), tie([200, 100], 104, -50)], 'similarity')!;
    if (!isFitted(wrong)) throw new Error(wrong.reason);
    // Four points of a rectangle, one of them 4 m off: the rest of a least-squares fit shares it out, so it is under 4 m and over 0.5 m.
    expect(wrong.rms).toBeGreaterThan(0.5);
    expect(wrong.rms).toBeLessThan(4);
  });
  it('say nothing with two points, and why not when they lie in one line', () => {
    expect(fitOf([tie([0, 0], 0, 0), tie([10, 0], 5, 0)], 'affine')).toBeNull();
    const line = fitOf([tie([0, 0], 0, 0), tie([10, 0], 5, 0), tie([20, 0], 10, 0)], 'affine')!;
    expect(isFitted(line)).toBe(false);
  });
});

/** 60 × 40 cells of 2 m: a block of 20 × 20 cells 15 m tall, the rest grass. */
function tiff(lift = 0): Uint8Array {
  const utm = toUtm([-81.5, 41.1], 17)!;
  const values = Float32Array.from({ length: 60 * 40 }, (_, i) => {
    const [column, row] = [i % 60, Math.floor(i / 60)];
    return lift + (column >= 10 && column < 30 && row >= 10 && row < 30 ? 15 : 0.1);
  });
  const metadata = {
    height: 40,
    width: 60,
    ModelPixelScale: [2, 2, 0],
    ModelTiepoint: [0, 0, 0, utm.easting, utm.northing, 0],
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: 32617,
  };
  return new Uint8Array(writeArrayBuffer(values, metadata as Parameters<typeof writeArrayBuffer>[1]));
}

describe('woods from heights', () => {
  const ask = { key: 'a', surface: tiff(), ground: null, projection: null, settings: canopySettings };

  it('finds the one wood with its height, and it lands in a site as one edit', async () => {
    const find = makeCanopyFinder();
    const { canopy } = await find(ask);
    expect(canopy!.features.map((one) => one.kind)).toEqual(['woods']);
    expect(canopy!.features[0]!.properties.height).toBe(15);
    const made = importFeatures(newSite('x'), draftFeatures(canopy!.features), 'heights.tif');
    expect('site' in made && made.site.features.length).toBe(1);
    // The raster read last is kept: another threshold needs no bytes.
    const again = await find({ ...ask, surface: null, settings: { ...canopySettings, woodsFrom: 16 } });
    expect(again.canopy!.features.filter((one) => one.kind === 'woods')).toEqual([]);
  });

  it('takes the ground off a surface', async () => {
    const flat = new Uint8Array(tiff(250));
    const bare = await makeCanopyFinder()({ ...ask, surface: flat, ground: flat });
    expect(bare.canopy!.features).toEqual([]);
  });

  it('says what is wrong with a file that is none', async () => {
    const answer = await makeCanopyFinder()({ ...ask, surface: new Uint8Array([1, 2, 3]) });
    expect(answer.canopy).toBeNull();
    expect(answer.sentence).toContain('TIFF');
  });
});
