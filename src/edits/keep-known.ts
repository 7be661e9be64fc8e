/** Rounds what an operation made without moving what was there. */
import type { Position } from 'geojson';
import type { SiteGeometry } from '../site/types.ts';
import { chainsOf, mapPositions } from './chains.ts';
import { rounded } from './edit.ts';

/** The geometry with new positions rounded to 7 decimals; positions of the `old` geometries keep their digits and so their neighbours. */
export function roundedButKnown(geometry: SiteGeometry, old: readonly (SiteGeometry | null)[]): SiteGeometry {
  const key = (position: Position) => `${position[0]} ${position[1]}`;
  const known = new Set(old.flatMap((one) => chainsOf(one).flatMap(({ corners }) => corners.map(key))));
  return mapPositions(geometry, (position) => (known.has(key(position)) ? position : rounded(position)));
}
