import { bluebirdEdge, feederRisk, openCover, openSight, sparrowRisk, wrenRisk } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { days, figure, foot, hole, inch, metres, span, words, yard } from '../make.ts';

export const easternBluebird: BirdGuide = {
  id: 'eastern-bluebird',
  name: 'Eastern Bluebird',
  latin: 'Sialia sialis',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(1.5), 'B', ['FB609', 'HFB']),
    floor: span(inch(5), inch(5), 'B', ['FB609', 'HFB']),
    depth: span(inch(8), inch(8), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(5.5), inch(8), 'B', ['TXMN', 'FB609'], { note: 'The 1914 table gives 6 in.' }),
    mount: metres(foot(3), foot(5), 'B', ['USFWS', 'Penn. agency'], {
      range: [foot(3), foot(10)],
      note: 'Sources disagree: the 1914 table gives 5–10 ft, trail pages 4–6 ft. Heights people can reach are chosen.',
    }),
  },
  spacing: {
    same: figure(yard(100), 'm', 'B', ['NRCS-NH', 'KS', 'BWS'], {
      range: [yard(75), yard(150)],
      note: 'Sources disagree: 100 yd in most, 125–150 yd in Ref and Sial, 75 yd used by some.',
    }),
    other: {
      'western-bluebird': figure(yard(100), 'm', 'ours', ['ours', 'common practice'], {
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
  season: { from: '04-01', to: '08-15', source: ['Penn. agency'], grade: 'C' },
  nest: words('neat cup of fine grass or pine needles', 'C', ['common practice', 'BBNE']),
  eggs: {
    text: words('plain powder blue, rarely white', 'C', ['trail pages']),
    count: figure([4, 6], 'eggs', 'C', ['trail pages'], { range: [2, 7], note: 'The range is from memory.' }),
  },
  clock: {
    build: days(4, 11, 'C', ['BBNE'], { range: [2, 14] }),
    incubation: days(13, 14, 'C', ['trail pages'], { range: [12, 14] }),
    nestling: days(16, 21, 'C', ['trail pages'], { range: [16, 22] }),
  },
  note: 'Short grass with scattered trees: pasture, orchard, cemetery, golf course.',
};
