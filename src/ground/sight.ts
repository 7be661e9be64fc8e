/** Sight, sun and horizon from a point, over everything with a height. */
import { columnAt, rowAt } from '../geometry/grid.ts';
import type { Point } from '../geometry/point.ts';
import { makeRays, type RaySet } from '../geometry/rays.ts';
import { squareToSegment } from '../geometry/segment.ts';
import type { Rays } from '../sky/sun-table.ts';
import type { Drawn } from './drawn.ts';
import type { Layer } from './layer.ts';
import { lookAround, type Question, View } from './look-around.ts';
import { makeObstacles, type Obstacles, type Stand } from './obstacles.ts';
import type { Ground } from './types.ts';

export type Sight = Pick<Ground, 'eyeLevel' | 'under' | 'sight' | 'meanSight' | 'shaded' | 'horizon'>;

const everyDegree = Array.from({ length: 360 }, (_, degree) => degree);

/** Whether the point stands within something round of a stand (hedges, crowns) that is taller than the eye. */
function within(stand: Stand, p: Point, eye: number, rim: boolean): boolean {
  const { grid, pad, height, radius } = stand;
  const { ends } = grid;
  const [column0, column1] = [columnAt(grid, p.x - pad), columnAt(grid, p.x + pad)];
  for (let row = rowAt(grid, p.y - pad); row <= rowAt(grid, p.y + pad); row++) {
    const last = grid.start[row * grid.columns + column1 + 1]!;
    for (let k = grid.start[row * grid.columns + column0]!; k < last; k++) {
      if (height[k]! <= eye || radius[k] === 0) continue;
      const e = 4 * k;
      const square = squareToSegment(p.x, p.y, ends[e]!, ends[e + 1]!, ends[e + 2]!, ends[e + 3]!);
      const round = radius[k]! * radius[k]!;
      if (square < round || (rim && square === round)) return true;
    }
  }
  return false;
}

/** The sun's rays, with what each asks of an obstacle when nothing stands in the way. */
interface SunView {
  readonly view: View;
  readonly open: Float64Array;
}

function makeSunView({ azimuth, tangent }: Rays): SunView {
  const view = new View(makeRays(azimuth));
  // A sun just at an edge counts as behind it, and one below the horizon is hidden from the start.
  const open = Float64Array.from(view.rays.order, (ray) =>
    tangent[ray]! > 0 ? tangent[ray]! * (1 - 1e-12) : Infinity,
  );
  return { view, open };
}

/** Every height that stands anywhere, rising, from the ground up. */
function levelsOf(layer: Layer, stands: readonly Stand[]): number[] {
  const heights = new Set([0]);
  for (const { height } of layer.areas) heights.add(height);
  for (const { height } of stands) {
    // Runs of one height are the rule.
    let last = 0;
    for (const h of height) if (h !== last) heights.add((last = h));
  }
  return [...heights].sort((a, b) => a - b);
}

/** Makes the looking-around part of a ground; `topAt` gives the area on top at a point. */
export function makeSight(layer: Layer, drawn: Drawn, topAt: (p: Point) => number): Sight {
  const obstacles: Obstacles = makeObstacles(layer, drawn);
  const stands = [obstacles.crowns, obstacles.walls].filter((stand) => stand !== null);
  const room = Math.max(0, ...stands.map(({ grid }) => 2 * (grid.columns + grid.rows) + 4));
  const cells = new Int32Array(room);
  const around = new View(makeRays(everyDegree));
  const views = new WeakMap<Rays, SunView>();

  const inside = (p: Point, eye: number): boolean => {
    const top = topAt(p);
    if (top >= 0 && layer.areas[top]!.height > eye) return true;
    return obstacles.hedges !== null && within(obstacles.hedges, p, eye, false);
  };
  /** Fills the view's best; true when the point is inside something taller than the eye. */
  const look = (p: Point, question: Question, view: View): boolean => {
    if (inside(p, question.eye)) return true;
    view.begin();
    return stands.some((stand) => lookAround(stand, p.x, p.y, question, view, cells));
  };
  const lookLevel = (p: Point, eye: number, reach: number): boolean => {
    if (!(reach > 0)) throw new RangeError(`reach must be above 0 m: ${reach}`);
    around.best.fill(1 / reach);
    return look(p, { eye, level: true, once: false }, around);
  };
  const sunView = (rays: Rays): SunView => {
    let sun = views.get(rays);
    if (!sun) {
      sun = makeSunView(rays);
      views.set(rays, sun);
    }
    return sun;
  };

  const levels = levelsOf(layer, stands);
  return {
    eyeLevel(eye) {
      let level = eye;
      for (let k = 0; k < levels.length && levels[k]! <= eye; k++) level = levels[k]!;
      return level;
    },
    under: (p, eye) => inside(p, eye) || (obstacles.crowns !== null && within(obstacles.crowns, p, eye, true)),
    sight(p, eye, reach, free = new Float64Array(360)) {
      if (lookLevel(p, eye, reach)) return free.fill(0);
      const { order } = around.rays;
      for (let ray = 0; ray < 360; ray++) free[order[ray]!] = Math.min(reach, 1 / around.best[ray]!);
      return free;
    },
    meanSight(p, eye, reach) {
      if (lookLevel(p, eye, reach)) return 0;
      let sum = 0;
      for (let ray = 0; ray < 360; ray++) sum += Math.min(reach, 1 / around.best[ray]!);
      return sum / 360;
    },
    shaded(p, eye, rays, hidden = new Uint8Array(rays.azimuth.length)) {
      const { view, open } = sunView(rays);
      const { best, rays: set } = view;
      best.set(open);
      if (look(p, { eye, level: false, once: true }, view)) return hidden.fill(1);
      for (let ray = 0; ray < set.count; ray++) hidden[set.order[ray]!] = best[ray] === Infinity ? 1 : 0;
      return hidden;
    },
    horizon(p, eye, azimuths) {
      const rays: RaySet = makeRays(azimuths);
      const view = new View(rays);
      const altitude = new Float64Array(azimuths.length);
      if (look(p, { eye, level: false, once: false }, view)) return altitude.fill(90);
      for (let ray = 0; ray < rays.count; ray++) {
        altitude[rays.order[ray]!] = (Math.atan(view.best[ray]!) * 180) / Math.PI;
      }
      return altitude;
    },
  };
}
