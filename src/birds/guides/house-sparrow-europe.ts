import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, hole, metres, span, words } from '../make.ts';

export const houseSparrowEurope: BirdGuide = {
  id: 'house-sparrow-europe',
  name: 'House Sparrow',
  latin: 'Passer domesticus',
  regions: ['europe'],
  box: {
    hole: hole(32, 'C', ['RSPB']),
    floor: span(150, 150, 'C', ['BTO'], { note: '15 cm across at least.' }),
    depth: span(175, 250, 'M', ['from memory']),
    holeAboveFloor: span(125, 125, 'C', ['RSPB', 'BTO'], {
      range: [120, 125],
      note: 'A least figure, to the bottom of the hole: 125 mm (RSPB), 120 mm (BTO).',
    }),
    mount: metres(2, 4, 'C', ['RSPB']),
  },
  spacing: {
    same: figure(0, 'm', 'C', ['RSPB'], { note: 'Nests in groups: several boxes may hang on one wall.' }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure({ building: 1, paved: 1, wetland: 0.1, meadow: 0.3 }, 'weight', 'ours', ['ours'], {
      note: 'Lives about farms and streets, not in marsh and moor.',
    }),
    lowCoverName: 'Built, paved and short ground',
    lowCoverShare: byShare(
      [
        [0, 0.15],
        [0.3, 1],
        [0.8, 1],
        [1, 0.6],
      ],
      'ours',
      ['ours'],
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [-30, 0.2],
        [5, 0.8],
        [30, 1],
      ],
      'ours',
      ['ours'],
    ),
    woodsEdgeHard: null,
    brush: null,
    building: byMetres(
      [
        [0, 1],
        [30, 1],
        [150, 0.05],
      ],
      'ours',
      ['ours', 'common practice'],
      { note: 'Lives on and near houses; the distances are ours.' },
    ),
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  weights: { 'buildings-and-feeders': 3 },
  season: { from: '04-01', to: '08-31', source: ['from memory'], grade: 'M' },
  nest: words('untidy dome of coarse grass, feathers and litter, entered from the side', 'C', ['common practice']),
  eggs: {
    text: words('grey-white, speckled', 'C', ['common practice']),
    count: figure([5, 6], 'eggs', 'C', ['common practice']),
  },
  clock: {
    build: null,
    incubation: days(10, 13, 'M', ['from memory']),
    nestling: days(14, 14, 'M', ['from memory']),
  },
  note: 'At home in Europe, where it is a wanted bird: near houses.',
};
