import { openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const whiteBreastedNuthatch: BirdGuide = {
  id: 'white-breasted-nuthatch',
  name: 'White-breasted Nuthatch',
  latin: 'Sitta carolinensis',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.25), 'B', ['FB609', 'HFB'], {
      range: [inch(1.25), inch(1.375)],
      note: 'Sources disagree: 1 3/8 in (PNW, NC Ext.).',
    }),
    floor: span(inch(4), inch(4), 'B', ['FB609', 'HFB']),
    depth: span(inch(8), inch(10), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(6), inch(8), 'B', ['FB609', 'HFB']),
    mount: metres(foot(5), foot(6), 'B', ['USFWS'], {
      range: [foot(5), foot(20)],
      note: 'Sources disagree: 5–6 ft on a trunk (USFWS), 5–20 ft (PNW), 12–20 ft (FB609).',
    }),
  },
  spacing: {
    same: figure(155.8, 'm', 'X', ['GA', 'arithmetic'], {
      note: 'None seen for this bird: one per 6 acres, quoted for the Brown-headed Nuthatch, as a square grid.',
    }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: openGround,
    lowCoverName: 'Open ground',
    lowCoverShare: byShare(
      [
        [0, 1],
        [0.25, 1],
        [0.7, 0.1],
      ],
      'ours',
      ['ours', 'common practice'],
      { note: 'Mature woods are named as habitat; the share is ours.' },
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [-80, 1],
        [-5, 1],
        [15, 0.6],
        [50, 0.05],
      ],
      'ours',
      ['ours', 'common practice'],
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '04-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('bark flakes and fur', 'M', ['from memory']),
  eggs: {
    text: words('white, speckled', 'M', ['from memory']),
    count: figure([5, 9], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(13, 14, 'M', ['from memory']),
    nestling: days(26, 26, 'M', ['from memory']),
  },
  note: 'Mature woods.',
};
