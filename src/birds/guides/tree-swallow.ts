import { feederRisk, openCover, openSight, sparrowRisk, wrenRisk } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words, yard } from '../make.ts';

export const treeSwallow: BirdGuide = {
  id: 'tree-swallow',
  name: 'Tree Swallow',
  latin: 'Tachycineta bicolor',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.5), 'B', ['FB609', 'HFB', 'TWRA'], {
      range: [inch(1.25), inch(1.5)],
      note: 'TWRA accepts 1 1/4 in; Sawyer gives 1 3/8 in.',
    }),
    floor: span(inch(5), inch(5), 'B', ['FB609', 'HFB']),
    depth: span(inch(6), inch(6), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(1), inch(5), 'B', ['FB609', 'HFB'], { range: [inch(1), inch(6)] }),
    mount: metres(foot(4), foot(6), 'B', ['TWRA', 'AKSB', 'DCCL'], {
      note: 'About 5 ft (TWRA); the 10–15 ft of the 1914 table is obsolete.',
    }),
  },
  spacing: {
    same: figure(foot(100), 'm', 'B', ['TWRA', 'TSP'], {
      range: [10, 36],
      note: 'Sources disagree: 100 ft, 10 m (AKSB), 35 ft (GA), 22–25 yd grids (SialGrid). Measured: no preference once over 36 m apart (Muldal 1985).',
    }),
    other: {},
    pairs: true,
  },
  habitat: {
    lowCover: figure({ water: 1, wetland: 1, meadow: 0.9, crop: 0.6 }, 'weight', 'ours', ['ours'], {
      note: 'Swallows feed in the air over any open ground and over water.',
    }),
    lowCoverShare: openCover,
    sight: openSight,
    woodsEdge: byMetres(
      [
        [20, 0],
        [60, 1],
      ],
      'B',
      ['TWRA', 'Willner 1983', 'ours'],
      { note: 'At least 100 ft (TWRA); the ramp beyond it is ours: swallows nest farthest from trees.' },
    ),
    woodsEdgeHard: figure(foot(100), 'm', 'B', ['TWRA']),
    brush: wrenRisk,
    building: sparrowRisk,
    feeder: feederRisk,
    water: byMetres(
      [
        [-50, 0.3],
        [0, 0.4],
        [yard(50), 1],
        [400, 1],
        [1000, 0.5],
      ],
      'C',
      ['TSP', 'ours'],
      {
        note: 'Water or wetland near, but not nearer than 50 yd: raccoons hunt the shore (TSP). A risk and no bar: swallows do nest over marshes. Scores nearer than 50 yd and beyond 400 m are ours.',
      },
    ),
    perch: false,
    clearAround: null,
  },
  weights: { water: 2 },
  season: { from: '05-15', to: '07-31', source: ['BBNE', 'from memory'], grade: 'C' },
  nest: words('grass cup lined with feathers, often white', 'C', ['common practice']),
  eggs: {
    text: words('pure white', 'C', ['common practice']),
    count: figure([4, 6], 'eggs', 'C', ['common practice'], { range: [2, 8], note: 'The range is from memory.' }),
  },
  clock: {
    build: days(14, 21, 'C', ['BBNE']),
    incubation: days(14, 15, 'M', ['from memory']),
    nestling: days(18, 22, 'M', ['from memory']),
  },
  note: 'Very open land near wetland; takes either box of a pair.',
};
