import { insideWoods, openGround, woodedCover } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, hole, metres, span, words } from '../make.ts';

export const piedFlycatcher: BirdGuide = {
  id: 'pied-flycatcher',
  name: 'Pied Flycatcher',
  latin: 'Ficedula hypoleuca',
  regions: ['europe'],
  box: {
    hole: hole(28, 'C', ['RSPB']),
    floor: span(150, 150, 'C', ['BTO'], { note: '15 cm across at least.' }),
    depth: span(175, 250, 'M', ['from memory']),
    holeAboveFloor: span(125, 125, 'C', ['RSPB', 'BTO'], {
      range: [120, 125],
      note: 'A least figure, to the bottom of the hole: 125 mm (RSPB), 120 mm (BTO).',
    }),
    mount: metres(2, 4, 'C', ['RSPB']),
  },
  spacing: {
    same: figure(30, 'm', 'ours', ['ours', 'RSPB'], {
      note: 'RSPB gives no distance: one box of a kind is all that usually fills in a garden. 30 m is ours.',
    }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: openGround,
    lowCoverName: 'Open ground',
    lowCoverShare: woodedCover,
    sight: null,
    woodsEdge: insideWoods,
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '04-20', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('leaves and bark, no moss', 'M', ['from memory']),
  eggs: {
    text: words('pale blue', 'M', ['from memory']),
    count: figure([5, 7], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(13, 15, 'M', ['from memory']),
    nestling: days(14, 17, 'M', ['from memory']),
  },
  note: 'Mature woods.',
};
