import { edgeOfWoods } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byShare, days, figure, hole, metres, span, words } from '../make.ts';

export const commonStarlingEurope: BirdGuide = {
  id: 'common-starling-europe',
  name: 'Common Starling',
  latin: 'Sturnus vulgaris',
  regions: ['europe'],
  box: {
    hole: hole(45, 'C', ['RSPB']),
    floor: span(180, 180, 'M', ['from memory']),
    depth: span(400, 450, 'M', ['from memory']),
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
    lowCoverShare: byShare(
      [
        [0, 0.2],
        [0.4, 1],
      ],
      'ours',
      ['ours'],
    ),
    sight: null,
    woodsEdge: edgeOfWoods,
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '03-15', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('coarse bulky grass', 'M', ['from memory']),
  eggs: {
    text: words('plain pale blue-green, large', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(12, 12, 'M', ['from memory']),
    nestling: days(20, 22, 'M', ['from memory']),
  },
  note: 'At home in Europe, where it is a wanted bird: short grass to feed on.',
};
