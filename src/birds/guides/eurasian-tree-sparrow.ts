import { edgeOfWoods, mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, hole, metres, span, words } from '../make.ts';

export const eurasianTreeSparrow: BirdGuide = {
  id: 'eurasian-tree-sparrow',
  name: 'Eurasian Tree Sparrow',
  latin: 'Passer montanus',
  regions: ['europe'],
  box: {
    hole: hole(28, 'C', ['RSPB'], { range: [28, 32], note: 'Sources disagree: a second RSPB page gives 32 mm.' }),
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
    lowCover: openGround,
    lowCoverName: 'Open ground',
    lowCoverShare: mixedCover,
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
  season: { from: '04-01', to: '08-31', source: ['from memory'], grade: 'M' },
  nest: words('straw and feathers', 'M', ['from memory']),
  eggs: {
    text: words('grey-brown with dark marks', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(11, 14, 'M', ['from memory']),
    nestling: days(15, 20, 'M', ['from memory']),
  },
  note: 'Farmland edges and old trees; two or three broods.',
};
