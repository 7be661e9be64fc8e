import { feederRisk } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const violetGreenSwallow: BirdGuide = {
  id: 'violet-green-swallow',
  name: 'Violet-green Swallow',
  latin: 'Tachycineta thalassina',
  regions: ['western-north-america'],
  box: {
    hole: hole(inch(1.375), 'C', ['PNW'], { range: [inch(1.375), inch(1.5)], note: 'The 1914 table gives 1 1/2 in.' }),
    floor: span(inch(5), inch(5), 'B', ['FB609', 'HFB']),
    depth: span(inch(6), inch(6), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(1), inch(5), 'B', ['FB609', 'HFB'], { range: [inch(1), inch(6)] }),
    mount: metres(foot(9), foot(15), 'C', ['PNW']),
  },
  spacing: {
    same: figure(foot(30), 'm', 'M', ['from memory'], {
      note: 'Two nests 23 ft apart, with a roof between, were seen (mailing list).',
    }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure({ water: 1, wetland: 1, meadow: 0.9, paved: 0.7, building: 0.5 }, 'weight', 'ours', ['ours'], {
      note: 'Feeds in the air over any open ground; lives in towns.',
    }),
    lowCoverShare: byShare(
      [
        [0.05, 0],
        [0.5, 1],
      ],
      'ours',
      ['ours', 'common practice'],
    ),
    sight: byMetres(
      [
        [10, 0.2],
        [80, 1],
      ],
      'ours',
      ['ours'],
    ),
    woodsEdge: byMetres(
      [
        [-20, 0.3],
        [0, 1],
        [20, 1],
        [120, 0.6],
      ],
      'ours',
      ['ours', 'common practice'],
      { note: 'Edges, canyons and towns are named as habitat; the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: feederRisk,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '05-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('grass and feathers', 'M', ['from memory']),
  eggs: {
    text: words('white', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(14, 15, 'M', ['from memory']),
    nestling: days(23, 24, 'M', ['from memory']),
  },
  note: 'Edges, canyons and towns.',
};
