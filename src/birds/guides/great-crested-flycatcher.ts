import { edgeOfWoods, mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const greatCrestedFlycatcher: BirdGuide = {
  id: 'great-crested-flycatcher',
  name: 'Great Crested Flycatcher',
  latin: 'Myiarchus crinitus',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(2), 'B', ['FB609', 'HFB'], {
      range: [inch(1.75), inch(2)],
      note: 'Sources disagree: 1 3/4 in (NC Ext.). Both let Starlings in.',
    }),
    floor: span(inch(6), inch(6), 'B', ['FB609', 'HFB']),
    depth: span(inch(8), inch(10), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(6), inch(8), 'B', ['FB609', 'HFB']),
    mount: metres(foot(8), foot(20), 'B', ['FB609', 'HFB']),
  },
  spacing: {
    same: figure(155.8, 'm', 'C', ['GA', 'arithmetic'], { note: 'One box per 6 acres, as a square grid.' }),
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
  season: { from: '05-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('leaves, hair and snake skin', 'M', ['from memory']),
  eggs: {
    text: words('cream with brown and purple streaks', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(14, 15, 'M', ['from memory']),
    nestling: days(13, 17, 'M', ['from memory']),
  },
  note: 'Wood edge and clearings.',
};
