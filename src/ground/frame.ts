/** The site's flat frame: a local transverse Mercator with scale 1 at its centre. The one file that knows proj4. */
import proj4 from 'proj4';
import type { Point } from '../geometry/point.ts';
import type { LonLat, SiteFeature, SiteGeometry } from '../site/types.ts';
import type { Frame } from './types.ts';

/** The frame around a place, WGS84. 5 km from it lengths agree with the geodesic within 1 mm per 100 m. */
export function makeFrame(centre: LonLat): Frame {
  const [lon, lat] = centre;
  if (!(Math.abs(lon) <= 360 && Math.abs(lat) <= 90)) throw new RangeError(`no such place: ${lon}, ${lat}`);
  const plane = `+proj=tmerc +lat_0=${lat} +lon_0=${lon} +k=1 +x_0=0 +y_0=0 +datum=WGS84 +units=m +no_defs`;
  const projection = proj4('+proj=longlat +datum=WGS84 +no_defs', plane);
  return {
    centre: [lon, lat],
    toPlane(position: LonLat): Point {
      const [x, y] = projection.forward([position[0], position[1]]) as [number, number];
      return { x, y };
    },
    toLonLat(point: Point): LonLat {
      const [east, north] = projection.inverse([point.x, point.y]) as [number, number];
      return [east, north];
    },
  };
}

/** Calls `visit` for every position of a geometry. */
export function eachPosition(geometry: SiteGeometry, visit: (lon: number, lat: number) => void): void {
  const walk = (part: unknown): void => {
    if (!Array.isArray(part)) return;
    if (typeof part[0] === 'number') visit(part[0], part[1] as number);
    else for (const inner of part) walk(inner);
  };
  walk(geometry.coordinates);
}

/** Middle of the box around everything drawn; [0, 0] when nothing is. */
export function middleOf(features: readonly SiteFeature[]): LonLat {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features) {
    if (!geometry) continue;
    eachPosition(geometry, (lon, lat) => {
      if (!Number.isFinite(lon) || !Number.isFinite(lat)) return;
      west = Math.min(west, lon);
      east = Math.max(east, lon);
      south = Math.min(south, lat);
      north = Math.max(north, lat);
    });
  }
  return west <= east ? [(west + east) / 2, (south + north) / 2] : [0, 0];
}
