/** Offered places on the map: a lettered disc each, with a circle as wide as the place is unsure. */
import { circle } from '@turf/turf';
import type { Feature } from 'geojson';
import { chainsOf } from '../../../edits/chains.ts';
import type { SiteGeometry } from '../../../site/types.ts';
import type { Offer } from '../../land-state.ts';
import { shape } from './sketch.ts';

/** Letters of offers in their order: the same in the notebook and on the map. */
export const offerLetters = 'ABCDEFGH';

export function offerMarks(offers: readonly Offer[]): Feature[] {
  return offers.flatMap(({ at, radius }, i) => {
    const disc = shape('Point', at, 'offer', { text: offerLetters[i] ?? '' });
    if (!radius) return [disc];
    const ring = circle([...at], radius, { units: 'meters', steps: 48 }).geometry.coordinates;
    return [shape('Polygon', ring, 'near'), shape('LineString', ring[0], 'rim'), disc];
  });
}

/** Shapes that are only looked at yet. */
export function previewMarks(shapes: readonly SiteGeometry[]): Feature[] {
  return shapes.flatMap((geometry) =>
    geometry.type === 'Point'
      ? [shape('Point', geometry.coordinates, 'preview')]
      : chainsOf(geometry).map(({ corners, closed }) =>
          shape('LineString', closed ? [...corners, corners[0]] : corners, 'preview'),
        ),
  );
}
