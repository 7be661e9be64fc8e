import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const prothonotaryWarbler: BirdGuide = {
  id: 'prothonotary-warbler',
  name: 'Prothonotary Warbler',
  latin: 'Protonotaria citrea',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(1.25), 'B', ['TWRA', 'Virginia park'], { range: [inch(1.25), inch(1.375)] }),
    floor: span(inch(4), inch(4), 'C', ['Virginia park']),
    depth: span(inch(8), inch(8), 'C', ['Virginia park']),
    holeAboveFloor: span(inch(4), inch(5), 'M', ['from memory']),
    mount: metres(0.4572, 1.016, 'C', ['Maryland trail'], { note: '18–40 in above standing water 1–2 ft deep.' }),
  },
  spacing: {
    same: figure(foot(235), 'm', 'M', ['from memory'], { note: 'None seen in print; 235 ft is often quoted.' }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure(
      {
        water: 1,
        wetland: 1,
        woods: 0.15,
        'short-grass': 0,
        meadow: 0,
        orchard: 0,
        crop: 0,
        paved: 0,
        brush: 0.1,
      },
      'weight',
      'ours',
      ['ours'],
      { note: 'For this bird the disc counts wooded swamp, not lawn.' },
    ),
    lowCoverName: 'Swamp and water',
    lowCoverShare: byShare(
      [
        [0.05, 0],
        [0.45, 1],
      ],
      'ours',
      ['ours', 'Maryland trail'],
      { note: 'The share counts water and wetland, woods in part: wooded swamp.' },
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [-80, 1],
        [0, 1],
        [10, 0.8],
        [40, 0.1],
      ],
      'C',
      ['Maryland trail', 'ours'],
      { note: 'Branches close by; in open water swallows take the box.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: byMetres(
      [
        [0, 1],
        [3, 1],
        [30, 0.3],
        [100, 0],
      ],
      'C',
      ['Maryland trail', 'ours'],
      { note: 'Over standing water, 4–8 ft from the bank; the ramp on land is ours.' },
    ),
    perch: false,
    clearAround: null,
  },
  weights: { water: 8, openness: 1.5 },
  season: { from: '04-20', to: '07-31', source: ['Maryland trail', 'from memory'], grade: 'M' },
  nest: words('moss, leaves and rootlets', 'M', ['from memory']),
  eggs: {
    text: words('cream with heavy rust spots', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(12, 14, 'M', ['from memory']),
    nestling: days(9, 10, 'M', ['from memory']),
  },
  note: 'Wooded swamp, the box over water. Boxes ready by 15 April (Maryland trail).',
};
