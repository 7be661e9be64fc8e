/** The figures behind the facing advice. Sources conflict (handbook §4), so all of it is advice and a band, never one bearing. */
import type { Figure } from '../birds/guide.ts';
import { ours, reader } from './figures.ts';

const band = ['NRCS-NH', 'TWRA', 'RSPB', 'Ardia 2006', 'Dhondt & Phillips 2001', 'ours'];

/** All of these are settings of the entrance criterion. Bearings are for the northern half; south of the equator they are mirrored. */
export const facingFigures = {
  bandFrom: {
    value: 0,
    unit: '°',
    source: band,
    grade: 'ours',
    range: [0, 359],
    note: 'North through east to southeast.',
  },
  bandTo: { value: 135, unit: '°', source: band, grade: 'ours', range: [0, 359] },
  rim: ours(50, '°', [5, 120], 'Over which the preference falls from the band to nothing.'),
  warmLatitude: ours(
    35,
    '°',
    [0, 60],
    'South of it N–NE is favored (NRCS-NH; NW was chosen in Georgia, Navara & Anderson 2011).',
  ),
  coolLatitude: ours(40, '°', [0, 70], 'North of it E–SE is favored early in the season (Ardia 2006).'),
  warmBearing: ours(22.5, '°', [0, 359]),
  coolBearing: ours(112.5, '°', [0, 359]),
  lean: ours(0.2, 'share', [0, 1], "How much of the preference leans toward the latitude's own bearing."),
  openHalf: ours(30, '°', [5, 90], 'Open land is looked for this far to each side of the facing.'),
  sightReach: ours(150, 'm', [50, 300]),
  tallNear: { value: 7.62, unit: 'm', source: ['common practice'], grade: 'C', range: [0, 20], note: '25 ft.' },
  tallSoft: ours(3, 'm', [0.1, 10], 'Beyond `tallNear` a tall thing stops counting over this distance.'),
  preferenceWeight: ours(2, 'weight', [0, 10]),
  beamWeight: ours(
    1.5,
    'weight',
    [0, 10],
    'The bearing was measured to matter far less to heat than shade does (Butler 2009).',
  ),
  stormWeight: ours(1, 'weight', [0, 10]),
  openWeight: ours(1, 'weight', [0, 10]),
  perchWeight: ours(1, 'weight', [0, 10]),
  asGood: ours(0.04, 'score', [0.005, 0.2], 'Bearings within this of the best are as good.'),
  least: ours(0.2, 'score', [0.05, 1], 'Of the worst bearing there is: no bearing is proven best everywhere.'),
} as const satisfies Record<string, Figure>;

/** The facing figures in force on a site. */
export const facingOn = reader('entrance', facingFigures);
export type FacingValues = ReturnType<typeof facingOn>;
