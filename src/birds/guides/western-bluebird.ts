import { bluebirdEdge, feederRisk, openCover, openSight, sparrowRisk, wrenRisk } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, foot, hole, inch, metres, span, words, yard } from '../make.ts';

export const westernBluebird: BirdGuide = {
  id: 'western-bluebird',
  name: 'Western Bluebird',
  latin: 'Sialia mexicana',
  regions: ['western-north-america'],
  box: {
    hole: hole(inch(1.5), 'C', ['PNW', 'HP'], { range: [inch(1.5), inch(1.5625)], note: 'A shop accepts 1 9/16 in.' }),
    floor: span(inch(5), inch(5), 'M', ['from memory']),
    depth: span(inch(8), inch(8), 'M', ['from memory']),
    holeAboveFloor: span(inch(6), inch(6), 'M', ['from memory']),
    mount: metres(foot(3), foot(6), 'C', ['PNW', 'NWW']),
  },
  spacing: {
    same: figure(yard(100), 'm', 'C', ['Ref', 'Env'], {
      range: [yard(100), yard(300)],
      note: 'Sources disagree: 100 yd (Ref), 300 yd (Env), 300 ft or out of sight (a plan page).',
    }),
    other: {
      'eastern-bluebird': figure(yard(100), 'm', 'ours', ['ours', 'common practice'], {
        note: 'No figure for sister species was found: the spacing of one species is used for both.',
      }),
      'mountain-bluebird': figure(yard(200), 'm', 'ours', ['ours', 'common practice'], {
        note: 'No figure for sister species was found: the spacing of one species is used for both.',
      }),
    },
    pairs: true,
  },
  habitat: {
    lowCoverShare: openCover,
    sight: openSight,
    woodsEdge: bluebirdEdge,
    woodsEdgeHard: null,
    brush: wrenRisk,
    building: sparrowRisk,
    feeder: feederRisk,
    water: null,
    perch: true,
    clearAround: null,
  },
  season: { from: '04-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('cup of grass and bark strips', 'M', ['from memory']),
  eggs: {
    text: words('plain pale blue', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: days(4, 11, 'C', ['BBNE'], { range: [2, 14] }),
    incubation: days(13, 14, 'M', ['from memory']),
    nestling: days(19, 22, 'M', ['from memory']),
  },
  note: 'Open rural land and forest edge; the hole toward the open field.',
};
