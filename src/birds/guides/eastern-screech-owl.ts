import { mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const easternScreechOwl: BirdGuide = {
  id: 'eastern-screech-owl',
  name: 'Eastern Screech-Owl',
  latin: 'Megascops asio',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(3), 'B', ['FB609', 'HFB']),
    floor: span(inch(8), inch(8), 'B', ['FB609', 'HFB']),
    depth: span(inch(12), inch(15), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(9), inch(12), 'B', ['FB609', 'HFB']),
    mount: metres(foot(10), foot(30), 'B', ['FB609', 'HFB']),
  },
  spacing: {
    same: figure(foot(100), 'm', 'C', ['BWS'], {
      range: [foot(100), 348.4],
      note: 'Soft: one per 30 acres or more is usual (from memory), which is 348 m on a square grid.',
    }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: openGround,
    lowCoverName: 'Open ground',
    lowCoverShare: mixedCover,
    sight: null,
    woodsEdge: byMetres(
      [
        [-60, 0.7],
        [-15, 1],
        [10, 1],
        [60, 0.2],
      ],
      'C',
      ['plan sheet', 'ours'],
      { note: 'In or at the edge of trees; the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '03-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('none: eggs on 2–3 in of shavings', 'C', ['PNW']),
  eggs: {
    text: words('round, white', 'M', ['from memory']),
    count: figure([3, 5], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(27, 34, 'M', ['from memory']),
    nestling: days(28, 28, 'M', ['from memory']),
    layEvery: days(1, 2, 'M', ['from memory'], {
      note: 'May lay every second day and sits before the last egg: dates are upper bounds.',
    }),
    sitsEarly: true,
  },
  note: 'Wood edge with big trees, away from paths.',
};
