/**
 * A hexagonal lattice that lies fixed on the earth: a place of it, and its id, stay the same however a site grows. Rows run along parallels
 * and begin anew at every quarter degree of latitude, so that one width of column serves all rows between.
 */
import type { Point } from '../geometry/point.ts';
import type { Bounds } from './drawn.ts';
import type { Frame } from './types.ts';

export interface LatticePlace {
  /** `grid-40.31275n-84.06102w`: degrees to about a meter. */
  readonly id: string;
  readonly at: Point;
}

/** Degrees of latitude between two beginnings. */
const band = 0.25;
const radians = Math.PI / 180;
/** WGS84: equatorial radius in metres and squared eccentricity. */
const radius = 6_378_137;
const eccentricity2 = 0.00669437999014;

/** Metres of a degree of latitude and of longitude. */
function degreeAt(latitude: number): { readonly north: number; readonly east: number } {
  const bend = 1 - eccentricity2 * Math.sin(latitude * radians) ** 2;
  return {
    north: (radians * radius * (1 - eccentricity2)) / bend ** 1.5,
    east: (radians * radius * Math.cos(latitude * radians)) / Math.sqrt(bend),
  };
}

/** What a band's rows and columns are apart, in degrees: never less than `gap` metres from place to place, up to a hundredth more. */
function stepsOf(south: number, gap: number) {
  const [low, high] = [degreeAt(south), degreeAt(Math.min(89.9, south + band))];
  const north = Math.min(low.north, high.north);
  return { row: (gap * Math.sqrt(0.75)) / north, column: gap / Math.min(low.east, high.east), clear: gap / north };
}

const degrees = (value: number, [plus, minus]: readonly [string, string]) =>
  `${Math.abs(value).toFixed(5)}${value < 0 ? minus : plus}`;

/** Degrees around a box on the frame; longitudes run on over ±180 beside the frame's own. */
function extentOf(frame: Frame, { min, max }: Bounds) {
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const rim = [min.x, middle.x, max.x].flatMap((x) => [min.y, middle.y, max.y].map((y) => frame.toLonLat({ x, y })));
  const [centre] = frame.centre;
  const lons = rim.map(([lon]) => centre + ((((lon - centre + 180) % 360) + 360) % 360) - 180);
  const lats = rim.map(([, lat]) => lat);
  return { west: Math.min(...lons), east: Math.max(...lons), south: Math.min(...lats), north: Math.max(...lats) };
}

/** Places of the lattice in a box on the frame, about `gap` metres apart (and no less), by row from the south-west. */
export function* latticeIn(frame: Frame, box: Bounds, gap: number): Generator<LatticePlace> {
  const { west, east, south, north } = extentOf(frame, box);
  for (let b = Math.floor(south / band); b * band <= north; b++) {
    const from = b * band;
    const { row, column, clear } = stepsOf(from, gap);
    // The last row keeps clear of the next band's first, whose columns lie otherwise.
    const last = Math.min(north, from + band - clear);
    for (let r = Math.max(0, Math.ceil((south - from) / row)); from + r * row <= last; r++) {
      const lat = from + r * row;
      const shift = r % 2 === 0 ? 0 : 0.5;
      for (let c = Math.ceil(west / column - shift); (c + shift) * column <= east; c++) {
        const lon = (c + shift) * column;
        const at = frame.toPlane([lon, lat]);
        if (at.x < box.min.x || at.x > box.max.x || at.y < box.min.y || at.y > box.max.y) continue;
        yield { id: `grid-${degrees(lat, ['n', 's'])}-${degrees(lon, ['e', 'w'])}`, at };
      }
    }
  }
}
