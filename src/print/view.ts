/** A window on the paper through which the ground is seen true to scale. */
import type { Point } from '../geometry/point.ts';
import type { Box } from './display.ts';

export interface View {
  /** Denominator: 2400 means 1 mm is 2.4 m. */
  readonly scale: number;
  /** Ground point in the middle of the window. */
  readonly centre: Point;
  readonly window: Box;
  /** Ground metres → paper mm. */
  toPaper(p: Point): [number, number];
  /** Paper mm → ground metres. */
  toGround(x: number, y: number): Point;
}

/** The window with `centre` in its middle. */
export function viewOf(scale: number, centre: Point, window: Box): View {
  const x0 = window.x + window.width / 2;
  const y0 = window.y + window.height / 2;
  const mm = 1000 / scale;
  return {
    scale,
    centre,
    window,
    toPaper: (p) => [x0 + (p.x - centre.x) * mm, y0 - (p.y - centre.y) * mm],
    toGround: (x, y) => ({ x: centre.x + (x - x0) / mm, y: centre.y - (y - y0) / mm }),
  };
}

/** Whether a paper place lies in a box, at least `margin` mm from its edges (negative = outside them). */
export function inside(box: Box, x: number, y: number, margin = 0): boolean {
  return (
    x >= box.x + margin && x <= box.x + box.width - margin && y >= box.y + margin && y <= box.y + box.height - margin
  );
}

/** A box made wider by `by` mm on every side. */
export function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}
