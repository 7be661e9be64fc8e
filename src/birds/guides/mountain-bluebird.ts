import { bluebirdEdge, feederRisk, openCover, openSight, sparrowRisk, wrenRisk } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, foot, hole, inch, metres, span, words, yard } from '../make.ts';

export const mountainBluebird: BirdGuide = {
  id: 'mountain-bluebird',
  name: 'Mountain Bluebird',
  latin: 'Sialia currucoides',
  regions: ['western-north-america'],
  box: {
    hole: hole(inch(1.5625), 'C', ['HP', 'BestN'], { note: 'Two pages agree that 1 1/2 in is too small.' }),
    floor: span(inch(5.5), inch(5.5), 'M', ['from memory']),
    depth: span(inch(8), inch(12), 'M', ['from memory']),
    holeAboveFloor: span(inch(6), inch(7), 'M', ['from memory']),
    mount: metres(foot(4), foot(6), 'M', ['from memory']),
  },
  spacing: {
    same: figure(yard(200), 'm', 'C', ['Ref', 'Env'], {
      range: [yard(200), yard(300)],
      note: 'Sources disagree: 200–300 yd (Ref), 300 yd (Env). Measured: clear-cut patches held no more than one pair even with spare boxes (Holt & Martin 1997).',
    }),
    other: {
      'eastern-bluebird': figure(yard(200), 'm', 'ours', ['ours', 'common practice'], {
        note: 'No figure for sister species was found: the spacing of one species is used for both.',
      }),
      'western-bluebird': figure(yard(200), 'm', 'ours', ['ours', 'common practice'], {
        note: 'No figure for sister species was found: the spacing of one species is used for both.',
      }),
    },
    pairs: true,
  },
  habitat: {
    lowCover: figure({ meadow: 0.8 }, 'weight', 'ours', ['ours'], {
      note: 'Natural short grassland is often mapped as meadow.',
    }),
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
  season: { from: '04-20', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('cup of grass and bark strips', 'M', ['from memory']),
  eggs: {
    text: words('plain pale blue', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: days(4, 11, 'C', ['BBNE'], { range: [2, 14] }),
    incubation: days(13, 13, 'M', ['from memory']),
    nestling: days(18, 21, 'M', ['from memory']),
  },
  note: 'High open grassland, burns and clear-cuts.',
};
