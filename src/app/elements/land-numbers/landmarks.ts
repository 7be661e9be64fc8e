/** What a tape can be measured from: points, and corners of buildings, by names people find them by. */
import { chainsOf } from '../../../edits/chains.ts';
import { label } from '../../../site/label.ts';
import type { LonLat, Site } from '../../../site/types.ts';
import { compass } from '../../format.ts';
import type { Words } from '../../words/en.ts';

export interface Landmark {
  readonly id: string;
  readonly word: string;
  readonly at: LonLat;
}

/** Points first, then buildings' corners named by where they lie from the building's middle. */
export function landmarksOf(site: Site, words: Words): Landmark[] {
  const points = site.features.flatMap((feature): Landmark[] => {
    if (feature.geometry?.type !== 'Point') return [];
    const [lon = 0, lat = 0] = feature.geometry.coordinates;
    return [{ id: feature.id, word: label(feature), at: [lon, lat] }];
  });
  const corners = site.features
    .filter(({ kind }) => kind === 'building')
    .flatMap((building) => {
      const outline = chainsOf(building.geometry)[0]?.corners ?? [];
      const middle = [0, 1].map((axis) => outline.reduce((sum, p) => sum + p[axis]!, 0) / outline.length);
      const squash = Math.cos((middle[1]! * Math.PI) / 180);
      return outline.map((corner, i): Landmark => {
        const bearing = (Math.atan2((corner[0]! - middle[0]!) * squash, corner[1]! - middle[1]!) * 180) / Math.PI;
        const word = words.land.numbers.cornerWord(label(building), compass(bearing));
        return { id: `${building.id}/${i}`, word, at: [corner[0]!, corner[1]!] };
      });
    });
  return [...points, ...corners];
}
