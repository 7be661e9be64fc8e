/** Shares, distances and sight lines against what GEOS measured on part of a made-up park (source in the excerpt). */
import { describe, expect, it } from 'vitest';
import { planeGround } from '../unit/ground/plane-site.ts';
import { patches, posts } from './park-excerpt.ts';

const shift = 900;

describe('part of a made-up park against shapely and GEOS', () => {
  const ground = planeGround(
    patches.map(({ kind, rings }) => ({
      kind,
      rings: rings.map((ring) => ring.map(([x, y]) => [x - shift, y - shift] as const)),
    })),
  );
  for (const { post, inWoods, shares, edge, rays } of posts) {
    const p = { x: post[0] - shift, y: post[1] - shift };
    it(`shares of 60 m at ${post}`, () => {
      const measured = ground.shares(p, 60);
      for (const kind of ['woods', 'brush', 'meadow', 'water'] as const) {
        // The 2,048-sided disc is 1.6e-6 too small and the printed share has 6 places.
        expect(Math.abs(measured[kind] - shares[kind])).toBeLessThan(2.5e-6);
      }
    });
    it(`distances at ${post}`, () => {
      const sign = inWoods ? -1 : 1;
      expect(Math.abs(ground.nearest(p, 'woods-edge')!.distance - sign * edge.woods)).toBeLessThan(6e-5);
      if (edge.water !== null) {
        expect(Math.abs(ground.nearest(p, 'water')!.distance - edge.water)).toBeLessThan(6e-5);
      }
      if (edge.brush !== null && edge.brush < edge.woods) {
        expect(Math.abs(ground.nearest(p, 'brush')!.distance - edge.brush)).toBeLessThan(6e-5);
      }
    });
    it(`sight lines at ${post}`, () => {
      // Eyes above the brush: only woods stand in the way, as in the figures.
      const sight = ground.sight(p, 3, 300);
      rays.forEach((free, i) => {
        if (inWoods) expect(sight[10 * i]).toBe(0);
        else expect(Math.abs(sight[10 * i]! - free)).toBeLessThan(6e-5);
      });
    });
  }
});
