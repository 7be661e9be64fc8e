import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { distance } from '../../../src/geometry/point.ts';
import { waysBetween } from '../../../src/route/surface.ts';
import { box, type Drawing, type Metres, metreGround } from './metre-ground.ts';

/** Even–odd rule written out again, apart from the code under test; `margin` metres from the rim do not count as inside. */
function deepInside(ring: readonly Point[], p: Point, margin: number): boolean {
  let inside = false;
  let rim = Infinity;
  ring.forEach((a, k) => {
    const b = ring[(k + 1) % ring.length];
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
    const along = Math.max(
      0,
      Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / (distance(a, b) ** 2 || 1)),
    );
    rim = Math.min(rim, distance(p, { x: a.x + along * (b.x - a.x), y: a.y + along * (b.y - a.y) }));
  });
  return inside && rim > margin;
}

const star = fc
  .tuple(
    fc.double({ min: -120, max: 120, noNaN: true }),
    fc.double({ min: -120, max: 120, noNaN: true }),
    fc.array(fc.double({ min: 4, max: 60, noNaN: true }), { minLength: 3, maxLength: 14 }),
  )
  .map(([x, y, radii]) =>
    radii.map((r, k): Metres => {
      const turn = (2 * Math.PI * k) / radii.length;
      return [x + r * Math.sin(turn), y + r * Math.cos(turn)];
    }),
  );
const spot = fc.tuple(fc.double({ min: -150, max: 150, noNaN: true }), fc.double({ min: -150, max: 150, noNaN: true }));

describe('ways', () => {
  it('never cross water, buildings or off-limits, and are no shorter than the crow flies', () => {
    const kinds = ['water', 'building', 'off-limits'] as const;
    fc.assert(
      fc.property(
        fc.array(star, { minLength: 1, maxLength: 5 }),
        fc.array(spot, { minLength: 2, maxLength: 4 }),
        (rings, spots) => {
          const drawings: Drawing[] = rings.map((area, k) => ({ kind: kinds[k % 3], area }));
          const { ground, at } = metreGround(drawings);
          const areas = rings.map((ring) => ring.map(([x, y]) => at(x, y)));
          const places = spots.map(([x, y]) => at(x, y));
          const ways = waysBetween(ground, places);
          for (let a = 0; a < places.length; a++) {
            for (let b = a + 1; b < places.length; b++) {
              const way = ways.way(a, b);
              if (!way) continue;
              expect(way.metres).toBeGreaterThan(distance(ways.stands[a]!, ways.stands[b]!) - 1e-6);
              for (let k = 1; k < way.line.length; k++) {
                const [p, q] = [way.line[k - 1], way.line[k]];
                const parts = Math.ceil(distance(p, q) / 0.5);
                for (let m = 0; m <= parts; m++) {
                  const here = { x: p.x + (m / parts || 0) * (q.x - p.x), y: p.y + (m / parts || 0) * (q.y - p.y) };
                  expect(areas.some((ring) => deepInside(ring, here, 0.01))).toBe(false);
                }
              }
            }
          }
        },
      ),
      { seed: 5, numRuns: 25 },
    );
  });

  it('go through a gap one metre wide that no cell of the net lines up with', () => {
    const { ground, at } = metreGround([
      { kind: 'building', area: box(-10, 30.5, 10, 200) },
      { kind: 'building', area: box(-10, -200, 10, 29.5) },
    ]);
    const way = waysBetween(ground, [at(-100, 0), at(100, 0)]).way(0, 1)!;
    expect(way.metres).toBeCloseTo(2 * Math.hypot(90, 29.5) + 20, 2);
  });

  it('lose half a minute at a fence, none where a path goes through', () => {
    const fence: Drawing = {
      kind: 'fence',
      line: [
        [0, -900],
        [0, 900],
      ],
    };
    const lawn: Drawing = { kind: 'short-grass', area: box(-300, -300, 300, 300) };
    const open = metreGround([lawn]);
    const fenced = metreGround([lawn, fence]);
    const minutes = ({ ground, at }: typeof open) => waysBetween(ground, [at(-100, 0), at(100, 0)]).way(0, 1)!.minutes;
    expect(minutes(fenced) - minutes(open)).toBeCloseTo(0.5, 6);
    const gate: Drawing = {
      kind: 'path',
      line: [
        [-100, 0],
        [100, 0],
      ],
    };
    expect(minutes(metreGround([lawn, fence, gate]))).toBeCloseTo(200 * (60 / 5000), 6);
  });

  it('follow a path where that is quicker, and leave thick brush aside', () => {
    const path: Drawing = {
      kind: 'path',
      line: [
        [-100, 10],
        [100, 10],
      ],
    };
    const { ground, at } = metreGround([{ kind: 'meadow', area: box(-200, -200, 200, 200) }, path]);
    const way = waysBetween(ground, [at(-100, 0), at(100, 0)]).way(0, 1)!;
    expect(way.minutes).toBeLessThan(200 * (60 / 3600));
    const mid = way.line.filter((p) => Math.abs(p.y - at(0, 10).y) < 0.01);
    expect(mid.length).toBeGreaterThanOrEqual(2);
    const brush = metreGround([
      { kind: 'meadow', area: box(-200, -200, 200, 200) },
      { kind: 'brush', area: box(-40, -20, 40, 60) },
    ]);
    const round = waysBetween(brush.ground, [brush.at(-100, 0), brush.at(100, 0)]).way(0, 1)!;
    expect(round.metres).toBeGreaterThan(200);
    expect(round.minutes).toBeLessThan(220 * (60 / 3600));
  });
});
