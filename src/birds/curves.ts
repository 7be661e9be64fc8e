/** Habitat curves several birds share. The shapes between the published knees are ours; each says so. */

import { byMetres, byShare, figure, foot } from './make.ts';

/** Mown, grazed or short cover all round: the best proven rule of the trade. */
export const openCover = byShare(
  [
    [0.2, 0],
    [0.85, 1],
  ],
  'A',
  ['Navara & Anderson 2011', 'Willner 1983', 'ours'],
  {
    note: 'Measured: over 65 % of boxes used with little or no vegetation around, 21 % in tall vegetation; the ramp between is ours.',
  },
);

/** Mean free sight for birds that hunt or feed over open land. */
export const openSight = byMetres(
  [
    [20, 0],
    [120, 1],
  ],
  'ours',
  ['ours'],
  { note: 'Open country is asked for everywhere; the distances are ours.' },
);

/** Land as a bird of woods, yards and edges sees it: fields are as open as lawns, whatever grows on them. */
export const openGround = figure(
  {
    'short-grass': 1,
    meadow: 1,
    crop: 1,
    wetland: 1,
    water: 1,
    paved: 1,
    building: 0.7,
    orchard: 0.4,
    brush: 0.2,
    woods: 0,
  },
  'weight',
  'ours',
  ['ours'],
  { note: 'For this bird the disc counts ground without trees or shrubs, mown or not.' },
);

/** Half open, half cover: yards and edges. */
export const mixedCover = byShare(
  [
    [0, 0.45],
    [0.2, 1],
    [0.6, 1],
    [0.95, 0.2],
  ],
  'ours',
  ['ours', 'common practice'],
  { note: 'Edge birds use both cover and clearing; no share was found in print.' },
);

/** Woods and wooded yards. */
export const woodedCover = byShare(
  [
    [0, 1],
    [0.35, 1],
    [0.85, 0.15],
  ],
  'ours',
  ['ours', 'common practice'],
  { note: 'Woods birds want trees rather than lawn; no share was found in print.' },
);

export const bluebirdEdge = byMetres(
  [
    [15, 0],
    [45, 1],
  ],
  'A',
  ['Horn 1996', 'Willner 1983', 'Ref', 'ours'],
  {
    note: 'Measured: use and success rise with distance to the nearest tree over 3 m. Knees are ours around the 100 ft of trail texts.',
  },
);

/** Full at the edge and just outside it. */
export const edgeOfWoods = byMetres(
  [
    [-60, 0.4],
    [-10, 0.9],
    [0, 1],
    [20, 1],
    [80, 0.3],
    [150, 0.1],
  ],
  'ours',
  ['ours', 'common practice'],
  { note: 'Wood edge and clearings are named as habitat; the distances are ours.' },
);

export const insideWoods = byMetres(
  [
    [-60, 1],
    [0, 1],
    [15, 0.8],
    [60, 0.1],
  ],
  'ours',
  ['ours', 'common practice'],
  { note: 'Woods and wooded yards are named as habitat; the distances are ours.' },
);

/** Risk from wrens: sources disagree, so say risk and never safe. */
export const wrenRisk = byMetres(
  [
    [foot(50), 0],
    [foot(200), 1],
  ],
  'C',
  ['NFW', 'BBNE', 'ours'],
  {
    note: 'Sources disagree: 50 ft, 100 ft, and wrens nesting up to 200 ft from cover; inside riparian woods wrens chose sparse understory (Finch 1989).',
  },
);

/** Risk from House Sparrows near buildings. */
export const sparrowRisk = byMetres(
  [
    [foot(50), 0],
    [foot(300), 1],
  ],
  'C',
  ['GWD', 'TSP', 'ours'],
  {
    note: 'Sources disagree: 50 ft, 100 yd, and sparrows seen 1 km from a building. No measured safe distance was found: sparrows may still come.',
  },
);

/** Risk from House Sparrows near feeders. */
export const feederRisk = byMetres(
  [
    [foot(50), 0],
    [foot(300), 1],
  ],
  'C',
  ['NRCS-NH', 'GWD', 'ours'],
  { note: 'Never near a feeder, at least 50 ft; the ramp is the one used for buildings.' },
);
