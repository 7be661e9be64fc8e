/** The lie of the land as areas between contours, and the contours themselves, in meters. */
import { contours } from 'd3-contour';
import type { Point } from '../../../geometry/point.ts';
import type { LandScores } from '../../../placement/lie-of-the-land.ts';

export interface LieArea {
  readonly from: number;
  /** Rings of each polygon, outer first: everything that scores at least `from`. */
  readonly polygons: readonly (readonly (readonly Point[])[])[];
}

export interface LieContour {
  readonly value: number;
  readonly line: readonly Point[];
}

/** A contour shorter than so many corners carries no figure. */
const shortest = 8;

/** Each area holds those above it: they are painted one over the other. Where no box may stand there is none. */
export function lieAreas(scores: LandScores, starts: readonly number[]): LieArea[] {
  const { columns, rows, values } = scores;
  // Where no box may stand the value is lower than any step.
  const flat = Array.from(values, (value) => (Number.isNaN(value) ? -1 : value));
  const made = contours()
    .size([columns, rows])
    .thresholds([...starts])(flat);
  return made.map(({ value, coordinates }) => ({
    from: value,
    polygons: coordinates.map((polygon) => polygon.map((ring) => ring.map((place) => inMetres(scores, place)))),
  }));
}

/** The lines between two steps, without the stretches that only follow the edge of what may hold a box. */
export function lieContours(scores: LandScores, areas: readonly LieArea[]): LieContour[] {
  return areas
    .filter(({ from }) => from > 0)
    .flatMap(({ from, polygons }) =>
      polygons.flatMap((rings) => rings.flatMap((ring) => inner(scores, ring).map((line) => ({ value: from, line })))),
    );
}

function inMetres({ origin, cell }: LandScores, [x = 0, y = 0]: readonly number[]): Point {
  return { x: origin.x + x * cell, y: origin.y + y * cell };
}

function inner(scores: LandScores, ring: readonly Point[]): Point[][] {
  const lines: Point[][] = [];
  let line: Point[] = [];
  for (const point of ring) {
    if (!atEdge(scores, point)) {
      line.push(point);
      continue;
    }
    if (line.length >= shortest) lines.push(line);
    line = [];
  }
  return line.length >= shortest ? [...lines, line] : lines;
}

/** Whether a cell without a value, or the end of the picture, touches the point. */
function atEdge({ origin, cell, columns, rows, values }: LandScores, { x, y }: Point): boolean {
  const column = Math.round((x - origin.x) / cell);
  const row = Math.round((y - origin.y) / cell);
  if (column < 1 || row < 1 || column >= columns || row >= rows) return true;
  return [0, 1].some((i) => [0, 1].some((j) => Number.isNaN(values[(row - i) * columns + column - j] ?? Number.NaN)));
}
