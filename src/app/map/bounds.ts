/** The box around a site on the map. */
import type { Position } from 'geojson';
import type { Site } from '../../site/types.ts';

export type LonLatBox = [west: number, south: number, east: number, north: number];

/** The corners of everything placed, a boundary alone when there is one; null when nothing is placed. */
export function siteBounds(site: Site): LonLatBox | null {
  const boundary = site.features.filter((f) => f.kind === 'boundary' && f.geometry);
  const box: LonLatBox = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const feature of boundary.length > 0 ? boundary : site.features)
    if (feature.geometry) grow(box, feature.geometry.coordinates as Nested);
  return box.every(Number.isFinite) ? box : null;
}

type Nested = Position | Nested[];

function grow(box: LonLatBox, nested: Nested): void {
  if (typeof nested[0] !== 'number') {
    for (const inner of nested as Nested[]) grow(box, inner);
    return;
  }
  const [x = 0, y = 0] = nested as Position;
  box[0] = Math.min(box[0], x);
  box[1] = Math.min(box[1], y);
  box[2] = Math.max(box[2], x);
  box[3] = Math.max(box[3], y);
}
