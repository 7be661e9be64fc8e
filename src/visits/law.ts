/** What the law says in general words, by region. The tool never replaces the local rule. */

import type { Region } from '../birds/guide.ts';

export interface LawText {
  readonly sentence: string;
  readonly sources: readonly string[];
}

const northAmerica: LawText = {
  sentence:
    'Native birds, their eggs, young and nests with eggs or young are protected (in the United States by the Migratory Bird Treaty Act, 16 USC 703–711; Canada and Mexico have treaties of the same kind). House Sparrow and European Starling are not covered by it. State, provincial and local rules may differ: check them first.',
  sources: ['MBTA', 'FWS2002'],
};

const europe: LawText = {
  sentence:
    'All wild birds, their eggs and their nests in use are protected, House Sparrow and Starling too; some species may be looked at in the season only under license. Check the local law before opening an active box.',
  sources: ['common practice'],
};

/** Law text of each region. */
export const lawOf: Readonly<Record<Region, LawText>> = {
  'eastern-north-america': northAmerica,
  'western-north-america': northAmerica,
  europe,
};
