import { mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, hole, metres, span, words } from '../make.ts';

export const blueTit: BirdGuide = {
  id: 'blue-tit',
  name: 'Blue Tit',
  latin: 'Cyanistes caeruleus',
  regions: ['europe'],
  box: {
    hole: hole(25, 'C', ['RSPB']),
    floor: span(150, 150, 'C', ['BTO'], { note: '15 cm across at least.' }),
    depth: span(175, 250, 'M', ['from memory']),
    holeAboveFloor: span(125, 125, 'C', ['RSPB', 'BTO'], {
      range: [120, 125],
      note: 'A least figure, to the bottom of the hole: 125 mm (RSPB), 120 mm (BTO).',
    }),
    mount: metres(2, 4, 'C', ['RSPB']),
  },
  spacing: {
    same: figure(30, 'm', 'ours', ['ours', 'RSPB'], {
      note: 'RSPB gives no distance: one box of a kind is all that usually fills in a garden. 30 m is ours.',
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
        [-60, 1],
        [10, 1],
        [40, 0.6],
        [120, 0.1],
      ],
      'ours',
      ['ours', 'common practice'],
      { note: 'Woods and gardens; the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: byMetres(
      [
        [5, 0],
        [30, 1],
      ],
      'C',
      ['RSPB', 'ours'],
      { note: 'Not beside a feeding table; the distances are ours.' },
    ),
    water: null,
    perch: false,
    clearAround: null,
  },
  weights: { openness: 0.6 },
  season: { from: '04-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('moss and hair', 'M', ['from memory']),
  eggs: {
    text: words('white with red spots', 'M', ['from memory']),
    count: figure([7, 10], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(12, 16, 'M', ['from memory']),
    nestling: days(16, 22, 'M', ['from memory']),
  },
  note: 'Woods and gardens.',
};
