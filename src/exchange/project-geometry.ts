/** A geometry out of a foreign projection. A position that is none becomes NaN, to be named by `tidyFeature`. */
import type { Geometry, Position } from 'geojson';
import type { Projection } from './projection.ts';

type Nested = Position | Nested[];

/** The geometry in longitude and latitude; heights are dropped. */
export function projectGeometry(geometry: Geometry, projection: Projection): Geometry {
  return mapPositions(geometry, ([x, y]) => [
    ...(projection.toLonLat(Number(x), Number(y)) ?? [Number.NaN, Number.NaN]),
  ]);
}

/** Latitude and longitude exchanged. */
export function swapGeometry(geometry: Geometry): Geometry {
  return mapPositions(geometry, ([a, b]) => [b!, a!]);
}

/** Every position of a geometry through `change`; what is no position is left for the checks. */
export function mapPositions(geometry: Geometry, change: (position: Position) => Position): Geometry {
  if (geometry.type === 'GeometryCollection') {
    return { ...geometry, geometries: (geometry.geometries ?? []).map((one) => mapPositions(one, change)) };
  }
  return { type: geometry.type, coordinates: deep(geometry.coordinates as Nested, change) } as Geometry;
}

function deep(value: Nested, change: (position: Position) => Position): Nested {
  if (!Array.isArray(value)) return value;
  return Array.isArray(value[0]) ? (value as Nested[]).map((one) => deep(one, change)) : change(value as Position);
}

/** Every position of a geometry that has two numbers, in order. */
export function positionsOf(geometry: Geometry): Position[] {
  const found: Position[] = [];
  mapPositions(geometry, (position) => {
    if (typeof position[0] === 'number' && typeof position[1] === 'number') found.push(position);
    return position;
  });
  return found;
}
