/** Routes between neighbors, for a first answer, beside the routes between all places. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/geometry/random.ts';
import { allRoutes, nearRoutes } from '../../../src/route/routes.ts';
import { walkGrid } from '../../../src/route/walk-grid.ts';
import { walkableOf } from '../../../src/route/walkable.ts';
import { box, type Drawing, metreGround } from './metre-ground.ts';

/** Meadow cut in two by a brook without a bridge, with ponds; places on both sides. */
function country(seed: number, places: number) {
  const random = seededRandom(seed);
  const ponds = Array.from({ length: 8 }, (): Drawing => {
    const [x, y] = [500 * random() - 300, 500 * random() - 250];
    return { kind: 'water', area: box(x, y, x + 30 + 50 * random(), y + 20 + 60 * random()) };
  });
  const { ground, at } = metreGround([
    { kind: 'boundary', area: box(-320, -270, 320, 270) },
    { kind: 'meadow', area: box(-320, -270, 320, 270) },
    { kind: 'water', area: box(150, -270, 158, 270) },
    ...ponds,
  ]);
  const middle = at(0, 0);
  const frame = { cell: 12, minX: middle.x - 340, minY: middle.y - 290, columns: 57, rows: 49 };
  const stops = Array.from({ length: 400 }, () => at(620 * random() - 310, 520 * random() - 260))
    .filter((p) => ground.forbidden(p) === null)
    .slice(0, places);
  return { net: walkGrid(walkableOf(ground, frame.cell), frame, stops), count: stops.length };
}

describe('routes between neighbors', () => {
  it.each([1, 2, 3])(
    'are the quickest to those near, never quicker anywhere, and lead where the quickest do (%i)',
    (seed) => {
      const { net, count } = country(seed, 45);
      const [all, near] = [allRoutes(net, count), nearRoutes(net, count)];
      // Asked before any route is: one not looked for is found when it is asked for, and its minutes with it.
      const before = Array.from({ length: count * count }, (_, p) => near.minutes(Math.floor(p / count), p % count));
      let [apart, equal, longer] = [0, 0, 0];
      for (let k = 0; k < count; k++) {
        for (let m = k + 1; m < count; m++) {
          const [least, found] = [all.minutes(k, m), before[k * count + m]];
          expect(found === Infinity).toBe(least === Infinity);
          expect(before[m * count + k]).toBe(found);
          if (least === Infinity) {
            apart++;
            expect(near.route(k, m)).toEqual([]);
            continue;
          }
          expect(found).toBeGreaterThan(least - 1e-6);
          if (found < least + 1e-6) equal++;
          longer = Math.max(longer, found / least);
          const route = near.route(k, m);
          expect([route[0], route.at(-1)]).toEqual([net.firstPlace + k, net.firstPlace + m]);
          expect(near.minutes(k, m)).toBeCloseTo(least, 6);
        }
      }
      expect(apart).toBeGreaterThan(50);
      expect(equal).toBeGreaterThan(count * 7);
      expect(longer).toBeLessThan(1.35);
    },
  );
});
