/** Whether a drawn shape can be of a kind: a closed line may be an area, an area's outline may be a fence; nothing else is bent. */
import type { Position } from 'geojson';
import { type Shape, shapeOf } from '../site/kinds.ts';
import type { Kind, SiteGeometry } from '../site/types.ts';

/** Which of the three shapes a geometry is. */
export function geometryShape(geometry: SiteGeometry): Shape {
  if (geometry.type === 'Point') return 'point';
  return geometry.type === 'LineString' || geometry.type === 'MultiLineString' ? 'line' : 'area';
}

/** The geometry as the kind needs it, with what was changed; null when it cannot be. */
export function fitShape(
  geometry: SiteGeometry,
  kind: Kind,
): { readonly geometry: SiteGeometry; readonly notes: readonly string[] } | null {
  const [wanted, given] = [shapeOf(kind), geometryShape(geometry)];
  if (wanted === given) return { geometry, notes: [] };
  if (wanted === 'area' && geometry.type === 'LineString' && isClosed(geometry.coordinates)) {
    return {
      geometry: { type: 'Polygon', coordinates: [counterClockwise(geometry.coordinates)] },
      notes: ['its closed line was read as an area'],
    };
  }
  if (wanted === 'line' && given === 'area')
    return { geometry: outline(geometry), notes: ['the outline of its area was read as a line'] };
  return null;
}

function isClosed(line: readonly Position[]): boolean {
  const [first, last] = [line[0], line.at(-1)];
  return line.length >= 4 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
}

function counterClockwise(ring: Position[]): Position[] {
  const [x0, y0] = ring[0] as [number, number];
  const doubled = ring.slice(0, -1).reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[i + 1] as [number, number];
    return sum + (x! - x0) * (nextY - y0) - (nextX - x0) * (y! - y0);
  }, 0);
  return doubled < 0 ? [...ring].reverse() : ring;
}

function outline(geometry: SiteGeometry): SiteGeometry {
  const rings =
    geometry.type === 'Polygon'
      ? geometry.coordinates
      : geometry.type === 'MultiPolygon'
        ? geometry.coordinates.flat()
        : [];
  return rings.length === 1
    ? { type: 'LineString', coordinates: rings[0]! }
    : { type: 'MultiLineString', coordinates: rings };
}
