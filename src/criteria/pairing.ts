import type { BirdGuide, Figure } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';
import { ours, reader } from './figures.ts';
import { lengthText, spanText } from './units.ts';

/** Figures of a pair, set in a site file as `pairing.most` and so on. */
export const pairingFigures = {
  least: { value: 1.524, unit: 'm', source: ['NFW', 'Fred', 'Berner'], grade: 'C', range: [0, 5], note: '5 ft.' },
  full: ours(4.572, 'm', [1.5, 9], '15 ft: pairs are set at 5–25 ft, most texts nearer the far end.'),
  most: {
    value: 7.62,
    unit: 'm',
    source: ['TWRA', 'Berner'],
    grade: 'B',
    range: [3, 10],
    note: '25 ft: beyond it two boxes act as two sites.',
  },
  apart: {
    value: 30.48,
    unit: 'm',
    source: ['TWRA', 'ours'],
    grade: 'B',
    range: [10, 100],
    note: '100 ft: between 25 and 100 ft two sites stand too close.',
  },
  atLeast: ours(0.6, 'score', [0.1, 1], 'Of a pair at the least distance.'),
} as const satisfies Record<string, Figure>;
const on = reader('pairing', pairingFigures);

export interface Pairing {
  /** `pair` one site; `touching` too close even for a pair; `between` the bad zone; `apart` two sites. */
  readonly kind: 'touching' | 'pair' | 'between' | 'apart';
  /** 0–1 as a pair; null where the two are no pair. */
  readonly score: number | null;
  readonly distance: number;
  readonly sentence: string;
  readonly sources: readonly string[];
}

/** Whether two boxes count as one site of a bird that takes pairs. Distances in metres. */
export function isPair(distance: number, site: SiteSettings): boolean {
  const { least, most } = on(site);
  return distance >= least && distance <= most + 1e-9;
}

/** What two boxes `distance` metres apart are to each other for a bird: one site, two sites, or neither one thing nor the other. */
export function pairing(distance: number, bird: BirdGuide, site: SiteSettings): Pairing {
  const { least, full, most, apart, atLeast } = on(site);
  const say = lengthText(distance, site.units);
  const wants = `a pair stands ${spanText(least, most, site.units)} apart`;
  const sources = [...new Set([...pairingFigures.least.source, ...pairingFigures.most.source])];
  const answer = (kind: Pairing['kind'], score: number | null, sentence: string) => ({
    kind,
    score,
    distance,
    sentence,
    sources,
  });
  if (distance > most + 1e-9) {
    if (distance >= apart) return answer('apart', null, `${say} apart: two sites; ${wants}`);
    return answer(
      'between',
      null,
      `${say} apart: too far for one site and too near for two; ${wants}, two sites at least ${lengthText(apart, site.units)}`,
    );
  }
  if (!bird.spacing.pairs)
    return answer('between', null, `${say} apart: ${bird.name} does not share a site; ${wants} only for birds that do`);
  if (distance < least)
    return answer('touching', (atLeast * distance) / least, `${say} apart: too close even for a pair; ${wants}`);
  const score = distance >= full ? 1 : atLeast + ((1 - atLeast) * (distance - least)) / (full - least);
  return answer('pair', score, `${say} apart: a pair, one site; ${wants}`);
}
