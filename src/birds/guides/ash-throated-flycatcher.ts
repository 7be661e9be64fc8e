import { mixedCover, openGround } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const ashThroatedFlycatcher: BirdGuide = {
  id: 'ash-throated-flycatcher',
  name: 'Ash-throated Flycatcher',
  latin: 'Myiarchus cinerascens',
  regions: ['western-north-america'],
  box: {
    hole: hole(inch(1.5), 'M', ['from memory'], { range: [inch(1.5), inch(1.75)] }),
    floor: span(inch(6), inch(6), 'M', ['from memory']),
    depth: span(inch(8), inch(10), 'M', ['from memory']),
    holeAboveFloor: span(inch(6), inch(8), 'M', ['from memory']),
    mount: metres(foot(5), foot(15), 'M', ['from memory']),
  },
  spacing: {
    same: figure(155.8, 'm', 'ours', ['ours', 'GA'], {
      note: 'None seen for this bird: the figure of the Great Crested Flycatcher is used.',
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
        [-40, 0.6],
        [-5, 1],
        [15, 1],
        [80, 0.4],
      ],
      'B',
      ['SWOR', 'ours'],
      { note: 'Lowest live limbs of hardwoods, 1–3 ft from the trunk (SWOR); the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '05-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('leaves, hair and snake skin', 'M', ['from memory']),
  eggs: {
    text: words('cream with brown and purple streaks', 'M', ['from memory']),
    count: figure([4, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(14, 15, 'M', ['from memory']),
    nestling: days(13, 17, 'M', ['from memory']),
  },
  note: 'Open woods and wood edge.',
};
