import { openCover } from '../curves.ts';
import type { BirdGuide } from '../guide.ts';
import { byMetres, days, figure, foot, hole, inch, metres, span, words, yard } from '../make.ts';

export const americanKestrel: BirdGuide = {
  id: 'american-kestrel',
  name: 'American Kestrel',
  latin: 'Falco sparverius',
  regions: ['eastern-north-america', 'western-north-america'],
  box: {
    hole: hole(inch(3), 'B', ['FB609', 'HFB']),
    floor: span(inch(8), inch(8), 'B', ['FB609', 'HFB']),
    depth: span(inch(12), inch(15), 'B', ['FB609', 'HFB']),
    holeAboveFloor: span(inch(9), inch(12), 'B', ['FB609', 'HFB']),
    mount: metres(foot(15), foot(20), 'B', ['NRCS-K'], {
      range: [foot(6), foot(30)],
      note: 'Sources disagree: 10–30 ft (FB609), 6–12 ft (kestrel pages); study boxes stood at 2.5–3 m (Butler 2009). Above reach: ladder work.',
    }),
  },
  spacing: {
    same: figure(804.672, 'm', 'B', ['NRCS-K', 'BWS'], {
      note: 'Half a mile. The NRCS-K sheet also prints \u201c1/2 ac\u201d, an internal slip.',
    }),
    other: {},
    pairs: false,
  },
  habitat: {
    lowCover: figure({ meadow: 0.9, crop: 0.6, orchard: 0.7 }, 'weight', 'ours', ['ours'], {
      note: 'Hunts over tall grass and fields too.',
    }),
    lowCoverShare: openCover,
    sight: byMetres(
      [
        [40, 0],
        [140, 1],
      ],
      'ours',
      ['ours', 'NRCS-K'],
    ),
    woodsEdge: byMetres(
      [
        [40, 0],
        [100, 1],
      ],
      'B',
      ['NRCS-K', 'ours'],
      { note: 'More than 50 yd from a woodland edge (NRCS-K); the ramp beyond is ours.' },
    ),
    woodsEdgeHard: figure(yard(50), 'm', 'B', ['NRCS-K']),
    brush: null,
    building: byMetres(
      [
        [foot(50), 0],
        [foot(300), 1],
      ],
      'B',
      ['NRCS-K', 'ours'],
      { note: 'Away from dwellings (NRCS-K); the distances are ours.' },
    ),
    feeder: null,
    water: null,
    perch: false,
    clearAround: null,
  },
  season: { from: '04-01', to: '07-31', source: ['from memory'], grade: 'M' },
  nest: words('none: eggs on 2 in of shavings', 'B', ['NRCS-K']),
  eggs: {
    text: words('buff, mottled brown', 'M', ['from memory']),
    count: figure([4, 5], 'eggs', 'M', ['from memory']),
  },
  clock: {
    build: null,
    incubation: days(29, 30, 'M', ['from memory']),
    nestling: days(28, 31, 'M', ['from memory']),
    layEvery: days(1, 2, 'M', ['from memory'], {
      note: 'Lays about every second day and sits before the last egg: dates are upper bounds.',
    }),
    sitsEarly: true,
  },
  note: 'Open field of at least an acre; a high perch within 100–200 yd; the hole away from a road.',
};
