import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const europeanStarling: BirdGuide = {
  id: 'european-starling',
  name: 'European Starling',
  latin: 'Sturnus vulgaris',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(1.625), 'M', ['from memory'], {
      note: 'The smallest hole that lets it in. The box table (HFB) gives 2 in.',
    }),
    floor: span(inch(6), inch(6), 'B', ['HFB']),
    depth: span(inch(16), inch(18), 'B', ['HFB']),
    holeAboveFloor: span(inch(14), inch(16), 'B', ['HFB']),
    mount: metres(foot(10), foot(25), 'B', ['HFB']),
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
  season: { from: '03-01', to: '06-30', source: ['from memory'], grade: 'M' },
  nest: words('coarse bulky grass', 'M', ['from memory']),
  eggs: {
    text: words('plain pale blue-green, larger than a bluebird’s', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(12, 12, 'M', ['from memory']),
    nestling: days(20, 22, 'M', ['from memory']),
  },
  note: 'Not protected in the United States (FWS2002); make sure of the bird first, and check local law.',
};
