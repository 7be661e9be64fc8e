/** The site's flat frame: a local transverse Mercator with scale 1 at its centre. The one file that knows proj4. */
import proj4 from 'proj4';
import type { Point } from '../geometry/point.ts';
import type { LonLat, SiteFeature, SiteGeometry } from '../site/types.ts';
import type { Frame } from './types.ts';

/** A transverse Mercator's own figures, as published examples give them; the site's frame uses the defaults. */
export interface Mercator {
  /** Scale at the centre line. */
  readonly scale?: number;
  /** Added to x and y, metres. */
  readonly falseEasting?: number;
  readonly falseNorthing?: number;
  /** The earth's shape in PROJ's words. */
  readonly earth?: string;
}

const radians = Math.PI / 180;

/** A transverse Mercator around a place: lon/lat ⇄ metres. */
export function transverseMercator([lon, lat]: LonLat, figures: Mercator = {}): Frame {
  const { scale = 1, falseEasting = 0, falseNorthing = 0, earth = '+datum=WGS84' } = figures;
  const plane = `+proj=tmerc +lat_0=${lat} +lon_0=${lon} +k=${scale} +x_0=${falseEasting} +y_0=${falseNorthing}`;
  // Asked itself, without the change of datums that two projections of one earth do not need: a site has a hundred thousand positions.
  const projection = proj4.Proj(`${plane} ${earth} +units=m +no_defs`);
  return {
    centre: [lon, lat],
    toPlane(position: LonLat): Point {
      const { x, y } = projection.forward({ x: position[0] * radians, y: position[1] * radians });
      return { x, y };
    },
    toLonLat({ x, y }: Point): LonLat {
      const place = projection.inverse({ x, y });
      return [place.x / radians, place.y / radians];
    },
  };
}

/** The frame around a place, WGS84. 5 km from it lengths agree with the geodesic within 1 mm per 100 m. */
export function makeFrame(centre: LonLat): Frame {
  const [lon, lat] = centre;
  if (!(Math.abs(lon) <= 360 && Math.abs(lat) <= 90)) throw new RangeError(`no such place: ${lon}, ${lat}`);
  return transverseMercator(centre);
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
