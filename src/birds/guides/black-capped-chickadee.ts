import { openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const blackCappedChickadee: BirdGuide = {
  id: 'black-capped-chickadee',
  name: 'Black-capped Chickadee',
  latin: 'Poecile atricapillus',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.125), 'B', ['FB609', 'HFB', 'USFWS'], {
      range: [inch(1.125), inch(1.25)],
      note: '1 1/8 in keeps House Sparrows out (USFWS).',
    }),
    floor: span(inch(4), inch(4), 'B', ['FB609', 'HFB']),
    depth: span(inch(8), inch(10), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(6), inch(8), 'B', ['FB609', 'HFB']),
    mount: metres(foot(5), foot(6), 'B', ['USFWS'], {
      range: [foot(5), foot(15)],
      note: 'Eye level (USFWS); 5–15 ft (BWS); 6–15 ft (FB609).',
    }),
  },
  spacing: {
    same: figure(foot(650), 'm', 'C', ['BWS'], { note: 'One source only.' }),
    other: {
      'carolina-chickadee': figure(foot(650), 'm', 'ours', ['ours', 'common practice'], {
        note: 'The two chickadees hold territories against each other where they meet; no figure was found.',
      }),
    },
    pairs: false,
  },
  habitat: {
    lowCover: openGround,
    lowCoverName: 'Open ground',
    lowCoverShare: byShare(
      [
        [0, 0.6],
        [0.2, 1],
        [0.6, 1],
        [0.95, 0.15],
      ],
      'C',
      ['BWS', 'ours'],
      { note: 'Trees with 40–60 % sun (BWS); read here as share of low cover, which is ours.' },
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [-60, 0.7],
        [-20, 1],
        [8, 1],
        [30, 0.6],
        [80, 0.1],
      ],
      'C',
      ['DCCL', 'ours'],
      { note: 'At or in cover (DCCL); the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  weights: { openness: 0.6 },
  season: { from: '04-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('moss base with hair and plant down', 'C', ['common practice']),
  eggs: {
    text: words('white with reddish-brown spots', 'C', ['common practice']),
    count: figure([5, 8], 'eggs', 'C', ['common practice'], { range: [4, 9], note: 'The range is from memory.' }),
  },
  clock: {
    build: null,
    incubation: days(12, 13, 'M', ['from memory']),
    nestling: days(16, 16, 'M', ['from memory']),
  },
  note: 'Trees with sun between them; the box at or in cover, one inch of shavings inside (common practice).',
};
