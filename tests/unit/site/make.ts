/** Small builders of site files for the tests. */

export type Json = Record<string, unknown>;

/** A square of about 0.01 degree, counter-clockwise, its south-west corner at [west, south]. */
export function square(west = -81, south = 41, side = 0.01): number[][] {
  return [
    [west, south],
    [west + side, south],
    [west + side, south + side],
    [west, south + side],
    [west, south],
  ];
}

export function polygon(...rings: unknown[]): Json {
  return { type: 'Polygon', coordinates: rings };
}

export function point(lon = -81, lat = 41): Json {
  return { type: 'Point', coordinates: [lon, lat] };
}

export function feature(geometry: unknown, properties: unknown, id: unknown = 'a', more: Json = {}): Json {
  return { type: 'Feature', id, properties, geometry, ...more };
}

/** The text of a collection with settings that raise no issue. */
export function file(
  features: unknown[],
  settings: unknown = { name: 'Test', region: 'europe' },
  more: Json = {},
): string {
  return JSON.stringify({ type: 'FeatureCollection', meadowpost: settings, ...more, features });
}

/** Woods, meadow and a post: nothing to say about it. */
export function cleanFeatures(): Json[] {
  return [
    feature(polygon(square(-81.02)), { kind: 'woods', name: 'Long Spinney' }, 'w'),
    feature(polygon(square(-81)), { kind: 'meadow' }, 'm'),
    feature(point(-80.995, 41.005), { kind: 'post' }, 'p'),
  ];
}
