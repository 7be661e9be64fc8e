import { insideWoods, openGround, woodedCover } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const tuftedTitmouse: BirdGuide = {
  id: 'tufted-titmouse',
  name: 'Tufted Titmouse',
  latin: 'Baeolophus bicolor',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(1.25), 'B', ['FB609', 'HFB']),
    floor: span(inch(4), inch(4), 'B', ['FB609', 'HFB']),
    depth: span(inch(8), inch(10), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(6), inch(8), 'B', ['FB609', 'HFB']),
    mount: metres(foot(6), foot(15), 'B', ['FB609', 'HFB']),
  },
  spacing: {
    same: figure(foot(580), 'm', 'C', ['GA']),
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
  season: { from: '04-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('moss, leaves, hair and snake skin', 'M', ['from memory']),
  eggs: {
    text: words('white, finely speckled', 'M', ['from memory']),
    count: figure([5, 7], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(12, 14, 'M', ['from memory']),
    nestling: days(15, 16, 'M', ['from memory']),
  },
  note: 'Woods and wooded yards.',
};
