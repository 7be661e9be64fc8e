import { openCover } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words } from '../make.ts';

export const purpleMartin: BirdGuide = {
  id: 'purple-martin',
  name: 'Purple Martin',
  latin: 'Progne subis',
  regions: ['eastern-north-america'],
  box: {
    hole: hole(inch(2.125), 'C', ['martin pages'], {
      range: [inch(2.125), inch(2.5)],
      note: 'Or a crescent 3 × 1 3/16 in; the 1914 table gives 2 1/2 in.',
    }),
    floor: span(inch(6), inch(12), 'C', ['martin pages'], {
      note: 'A room: 6–7 × 9–12 in; the 1914 table gives 6 × 6 in.',
    }),
    depth: span(inch(5), inch(7), 'C', ['martin pages']),
    holeAboveFloor: span(inch(1), inch(1), 'B', ['FB609', 'HFB']),
    mount: metres(foot(12), foot(15), 'C', ['martin pages'], { range: [foot(10), foot(20)] }),
  },
  spacing: {
    same: figure(0, 'm', 'C', ['martin pages'], { note: 'A colony: rooms share a pole.' }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure({ water: 1, wetland: 0.9, meadow: 0.8, paved: 0.7, crop: 0.6 }, 'weight', 'ours', ['ours'], {
      note: 'Feeds in the air over any open ground.',
    }),
    lowCoverShare: openCover,
    sight: byMetres(
      [
        [30, 0],
        [140, 1],
      ],
      'ours',
      ['ours', 'martin pages'],
      { note: 'The largest open space near; the distances are ours.' },
    ),
    woodsEdge: byMetres(
      [
        [foot(40), 0],
        [foot(60), 0.7],
        [foot(150), 1],
      ],
      'C',
      ['martin pages', 'ours'],
      { note: 'At least 40 ft, better 60 ft, from anything taller; far south 15–20 ft from a tree is tolerated.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: byMetres(
      [
        [foot(15), 0],
        [foot(30), 1],
        [foot(120), 1],
        [foot(300), 0.4],
      ],
      'C',
      ['martin pages', 'ours'],
      {
        note: 'Martins like people: 30–120 ft from a dwelling. Sources disagree: 30–100, 30–150 ft. House Sparrows and Starlings come too.',
      },
    ),
    feeder: null,
    water: null,
    perch: false,
    clearAround: metres(foot(40), foot(60), 'C', ['martin pages']),
  },
  season: { from: '04-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('mud, leaves and straw', 'M', ['from memory']),
  eggs: {
    text: words('white', 'M', ['from memory']),
    count: figure([3, 6], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(15, 18, 'M', ['from memory']),
    nestling: days(28, 29, 'M', ['from memory']),
  },
  note: 'The largest open space near people.',
};
