import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const houseSparrow: BirdGuide = {
  id: 'house-sparrow',
  name: 'House Sparrow',
  latin: 'Passer domesticus',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.25), 'M', ['USFWS', 'RSPB', 'from memory'], {
      note: 'The smallest hole that lets it in: 1 1/8 in keeps it out (USFWS), 32 mm lets it in (RSPB).',
    }),
    floor: span(inch(4), inch(5), 'M', ['from memory']),
    depth: span(inch(6), inch(9), 'M', ['from memory']),
    holeAboveFloor: span(inch(1), inch(6), 'M', ['from memory']),
    mount: metres(foot(4), foot(20), 'M', ['from memory']),
  },
  spacing: {
    same: figure(0, 'm', 'ours', ['ours'], { note: 'Never planned for.' }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCoverShare: byShare(
      [
        [0, 1],
        [1, 1],
      ],
      'ours',
      ['ours'],
      { note: 'Never planned for: not scored.' },
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [0, 1],
        [1, 1],
      ],
      'ours',
      ['ours'],
      { note: 'Never planned for: not scored.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  pest: true,
  season: { from: '04-20', to: '08-31', source: ['BBNE', 'from memory'], grade: 'C' },
  nest: words('untidy dome of coarse grass, feathers and litter, entered from the side', 'C', [
    'common practice',
    'BBNE',
  ]),
  eggs: {
    text: words('grey-white, speckled or blotched', 'C', ['common practice']),
    count: figure([5, 6], 'eggs', 'C', ['common practice'], { range: [3, 7], note: 'The range is from memory.' }),
  },
  clock: {
    build: days(1, 7, 'C', ['BBNE', 'from memory'], {
      note: 'As little as one day (BBNE); the upper figure is from memory.',
    }),
    incubation: days(10, 13, 'M', ['from memory']),
    nestling: days(14, 14, 'M', ['from memory']),
  },
  note: 'Not protected in the United States (FWS2002); make sure of the bird first, and check local law.',
};
