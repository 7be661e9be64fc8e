import type { BirdGuide } from '../guide.ts';
import { byMetres, byShare, days, figure, foot, inch, metres, span, words } from '../make.ts';

export const woodDuck: BirdGuide = {
  id: 'wood-duck',
  name: 'Wood Duck',
  latin: 'Aix sponsa',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: figure({ width: inch(4), height: inch(3), shape: 'oval' }, 'mm', 'C', ['PNW', 'RustD'], {
      note: 'FB609 gives 6 in round, HFB 4 in round; now an oval 4 in wide, 3 in high.',
    }),
    floor: span(inch(10), inch(18), 'B', ['FB609', 'HFB']),
    depth: span(inch(10), inch(24), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(12), inch(16), 'B', ['FB609', 'HFB'], { note: 'FB609 gives 3 in, HFB 12–16 in.' }),
    mount: metres(foot(4), foot(15), 'B', ['POLK'], {
      range: [foot(4), foot(20)],
      note: '4 ft above high water, or 15 ft and more on land.',
    }),
  },
  spacing: {
    same: figure(foot(600), 'm', 'B', ['POLK', 'PNW'], { note: 'Boxes not visible to each other.' }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure(
      {
        water: 1,
        wetland: 1,
        woods: 0.1,
        'short-grass': 0,
        meadow: 0.1,
        orchard: 0,
        crop: 0,
        paved: 0,
        brush: 0.1,
      },
      'weight',
      'ours',
      ['ours'],
      { note: 'For this bird the disc counts swamp, pond and river woods, not lawn.' },
    ),
    lowCoverName: 'Swamp and water',
    lowCoverShare: byShare(
      [
        [0.05, 0],
        [0.35, 1],
      ],
      'ours',
      ['ours', 'POLK'],
      { note: 'The share counts water and wetland, woods a little, lawn not at all.' },
    ),
    sight: null,
    woodsEdge: byMetres(
      [
        [-60, 1],
        [10, 1],
        [80, 0.4],
      ],
      'ours',
      ['ours', 'common practice'],
      { note: 'Swamp, pond and river with trees; the distances are ours.' },
    ),
    woodsEdgeHard: null,
    brush: null,
    building: null,
    feeder: null,
    water: byMetres(
      [
        [0, 0.9],
        [foot(30), 1],
        [foot(150), 1],
        [foot(600), 0.3],
        [804.672, 0],
      ],
      'B',
      ['POLK', 'PNW', 'duck pages', 'ours'],
      { note: 'Sources disagree: 30–150 ft from shore (POLK), 30–100 ft (PNW), up to half a mile (several).' },
    ),
    perch: false,
    clearAround: null,
  },
  weights: { water: 8, openness: 1.5 },
  season: { from: '04-01', to: '06-30', source: ['duck pages'], grade: 'C' },
  nest: words('down on 2–4 in of shavings', 'C', ['duck pages']),
  eggs: {
    text: words('dull white', 'B', ['POLK']),
    count: figure([9, 14], 'eggs', 'B', ['POLK'], {
      range: [6, 40],
      note: 'Several hens may lay in one box: \u201cdump\u201d nests hold up to 40.',
    }),
  },
  clock: {
    build: null,
    incubation: days(27, 30, 'C', ['duck pages']),
    nestling: days(1, 2, 'C', ['duck pages'], { note: 'Ducklings leave within about a day of hatching.' }),
  },
  note: 'No road or mesh fence on the ducklings’ way to water.',
};
