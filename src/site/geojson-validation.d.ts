/** The part of geojson-validation 1.0.2 that is used; the package brings no types. */
declare module 'geojson-validation' {
  /** With `trace` true: what is wrong, empty when nothing is. */
  export function valid(geoJSONObject: unknown, trace: true): unknown;
}
