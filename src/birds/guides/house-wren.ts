import { edgeOfWoods, mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const houseWren: BirdGuide = {
  id: 'house-wren',
  name: 'House Wren',
  latin: 'Troglodytes aedon',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.25), 'B', ['HFB'], {
      range: [inch(0.875), inch(1.25)],
      note: 'Sources disagree: 7/8 in (FB609), 1 1/4 in (HFB).',
    }),
    floor: span(inch(4), inch(4), 'B', ['FB609', 'HFB']),
    depth: span(inch(6), inch(8), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(1), inch(6), 'B', ['FB609', 'HFB']),
    mount: metres(foot(5), foot(10), 'C', ['PNW', 'DCCL'], { range: [foot(3), foot(10)] }),
  },
  spacing: {
    same: figure(foot(100), 'm', 'C', ['GA']),
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
    brush: byMetres(
      [
        [0, 1],
        [foot(50), 1],
        [foot(200), 0.15],
      ],
      'C',
      ['BBNE', 'DCCL', 'Willner 1983', 'ours'],
      { note: 'Wrens like cover and nest up to 200 ft from it; the ramp is ours.' },
    ),
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  weights: { brush: 1.5 },
  season: { from: '05-20', to: '08-15', source: ['BBNE', 'from memory'], grade: 'C' },
  nest: words('box nearly filled with twigs, a small deep cup at the back', 'C', ['common practice', 'BBNE']),
  eggs: {
    text: words('white with dense fine brown speckles', 'C', ['common practice']),
    count: figure([6, 8], 'eggs', 'C', ['common practice'], { range: [4, 9], note: 'The range is from memory.' }),
  },
  clock: {
    build: days(12, 14, 'C', ['BBNE'], { note: 'Male base 8–10 days, then the female 4 days.' }),
    incubation: days(12, 14, 'M', ['from memory']),
    nestling: days(15, 17, 'M', ['from memory']),
  },
  note: 'Brush, yards and edges. Twigs without eggs may be a dummy nest.',
};
