import { describe, expect, it } from 'vitest';
import { makeFrame } from '../../../src/ground/frame.ts';
import { latticeIn } from '../../../src/ground/lattice.ts';
import type { LonLat } from '../../../src/site/types.ts';

const square = (half: number) => ({ min: { x: -half, y: -half }, max: { x: half, y: half } });

/** Least and greatest distance from a place to its nearest other, places near the rim left out. */
function nearest(centre: LonLat, gap: number, half: number) {
  const all = [...latticeIn(makeFrame(centre), square(half), gap)];
  const inner = all.filter(({ at }) => Math.max(Math.abs(at.x), Math.abs(at.y)) < half - 2 * gap);
  const off = inner.map(({ at }) =>
    Math.min(...all.flatMap((other) => (other.at === at ? [] : [Math.hypot(other.at.x - at.x, other.at.y - at.y)]))),
  );
  return { least: Math.min(...off), most: Math.max(...off), count: all.length, ids: new Set(all.map(({ id }) => id)) };
}

describe('a lattice fixed on the earth', () => {
  it.each([0.1, 12.4, -33.9, 43.1, 51.6, -46.4, 60.2, 69.6])(
    'is as wide as asked at %s°, and no narrower',
    (latitude) => {
      const found = nearest([17.3, latitude], 20, 400);
      expect(found.least).toBeGreaterThan(20 - 1e-5);
      expect(found.most).toBeLessThan(20 * 1.02);
      // A hexagonal lattice has one place for each gap² × √0.75.
      expect(found.count / (800 ** 2 / (400 * Math.sqrt(0.75)))).toBeGreaterThan(0.94);
      expect(found.count / (800 ** 2 / (400 * Math.sqrt(0.75)))).toBeLessThan(1.06);
      expect(found.ids.size).toBe(found.count);
    },
  );

  it.each([40.25, -40.25, 0])('keeps its width where it begins anew, at %s°', (latitude) => {
    expect(nearest([-84, latitude], 20, 300).least).toBeGreaterThan(20 - 1e-5);
  });

  it('has the same places and ids from every frame', () => {
    const [here, there] = [makeFrame([-84.06, 40.24]), makeFrame([-84.05, 40.26])];
    const places = new Map([...latticeIn(here, square(1500), 25)].map(({ id, at }) => [id, here.toLonLat(at)]));
    let shared = 0;
    for (const { id, at } of latticeIn(there, square(1500), 25)) {
      const known = places.get(id);
      if (!known) continue;
      const [lon, lat] = there.toLonLat(at);
      expect(Math.abs(lon - known[0])).toBeLessThan(1e-9);
      expect(Math.abs(lat - known[1])).toBeLessThan(1e-9);
      shared++;
    }
    // Both boxes lie over one another by more than a sixth.
    expect(shared).toBeGreaterThan(places.size / 6);
  });

  it('runs on over the date line', () => {
    expect(nearest([179.999, -16.5], 20, 400).least).toBeGreaterThan(20 - 1e-5);
  });
});
