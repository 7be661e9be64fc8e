import type { Figure } from '../birds/guide.ts';
import { turn } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import { compassWord } from '../sky/compass.ts';
import { type Near, placesAround } from './around.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { ours, reader } from './figures.ts';
import { featureName } from './named.ts';
import { lengthText, spanText } from './units.ts';

const settings = {
  near: {
    value: 7.62,
    unit: 'm',
    source: ['common practice'],
    grade: 'C',
    range: [0, 15],
    note: '25 ft; HTF has 5–25 ft, which conflicts with keeping trees away.',
  },
  far: {
    value: 30.48,
    unit: 'm',
    source: ['WBB', 'Penn. agency'],
    grade: 'C',
    range: [15, 100],
    note: 'A tree or shrub within 100 ft in front.',
  },
  fade: ours(
    1.5,
    'times far',
    [1.05, 3],
    'Beyond `far` a perch still counts in part, to nothing at this many times it.',
  ),
  soft: ours(20, '°', [1, 45], 'A perch this far round past the side of the box fades out.'),
  none: ours(0.4, 'score', [0.05, 1], 'Without a perch: wanted, not needed.'),
} as const satisfies Record<string, Figure>;
const on = reader('perch', settings);

/** How far off a perch is looked for, metres. */
export function perchReach(site: SiteSettings): number {
  const { far, fade } = on(site);
  return far * fade;
}

/** How good a perch `metres` off is by its distance alone, 0–1. */
export function perchDistance(metres: number, site: SiteSettings): number {
  const { near, far, fade } = on(site);
  if (metres < near) return metres / near;
  const end = far * fade;
  return metres <= far ? 1 : Math.max(0, (end - metres) / (end - far));
}

/** How much a thing counts as in front, 0–1: the half-plane before the hole with a soft rim, so that a degree never decides. */
function inFront(off: number, soft: number): number {
  return Math.min(1, Math.max(0, (90 + soft - off) / (2 * soft)));
}

/** The perch that counts most from this facing, and how much. */
function best({ spot, site, facing }: PostContext): { place: Near; worth: number } | null {
  const { soft } = on(site);
  let found: { place: Near; worth: number } | null = null;
  for (const place of placesAround(spot, 'perch', perchReach(site))) {
    const worth = perchDistance(place.distance, site) * inFront(turn(place.toward, facing), soft);
    if (worth > (found?.worth ?? 0)) found = { place, worth };
  }
  return found;
}

/** A perch, tree, shrub or fence in front of the hole, where young birds land first. */
export const perch: Criterion = {
  id: 'perch',
  title: 'Perch in front',
  unit: 'm',
  weight: ours(1, 'weight', [0, 10]),
  settings,
  costly: true,
  neutral: ({ bird }) => (bird.habitat.perch ? null : `${bird.name} asks for no perch in front`),
  measure(context) {
    if (!context.spot.ground.has('perch')) return { raw: null, reason: 'no perch, tree, shrub or fence drawn' };
    const found = best(context);
    if (!found) return { raw: perchReach(context.site), parts: { worth: 0 } };
    const { distance, at, feature } = found.place;
    return { raw: distance, parts: { worth: found.worth }, at: { shape: 'place', at, feature, distance } };
  },
  score({ parts }, { site }) {
    const { none } = on(site);
    return none + (1 - none) * (parts?.worth ?? 0);
  },
  explain(measured, context) {
    if (measured.raw === null) return 'No perch, tree, shrub or fence drawn: not judged';
    const { units } = context.site;
    const values = on(context.site);
    const wants = spanText(values.near, values.far, units);
    const found = best(context);
    if (!found)
      return `No perch in front within ${lengthText(perchReach(context.site), units)}, wants one ${wants} off`;
    const name = featureName(context.spot.ground, found.place.feature, 'perch');
    return `${name} ${lengthText(found.place.distance, units)} off to the ${compassWord(found.place.toward)}, wants one ${wants} off in front`;
  },
  sources: () => ['WBB', 'NFW', 'Penn. agency', 'HTF', 'ours'],
};
