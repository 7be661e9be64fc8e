import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { Criterion, Measured, PostContext } from './criterion.ts';
import { bender, rises } from './curve-shape.ts';
import { ours } from './figures.ts';
import { featureName } from './named.ts';
import { measureNearest, offAndWants, type Saying } from './near.ts';

const settings = {
  zero: {
    value: 15.24,
    unit: 'm',
    source: ['GWD'],
    grade: 'C' as const,
    range: [0, 100] as const,
    note: "50 ft; the guide's own curves stand until this is changed.",
  },
  full: {
    value: 91.44,
    unit: 'm',
    source: ['TSP'],
    grade: 'C' as const,
    range: [15, 500] as const,
    note: "100 yd; the guide's own curves stand until this is changed. Sparrows were seen 1 km from a building.",
  },
};

interface Side {
  readonly target: 'building' | 'feeder';
  readonly curve: Curve;
}

const bent = bender('buildings-and-feeders');

/** The sides this bird minds. */
function sides(context: PostContext): Side[] {
  const { building, feeder } = context.bird.habitat;
  const list: Side[] = [];
  if (building) list.push({ target: 'building', curve: bent(building.value, context.site) });
  if (feeder) list.push({ target: 'feeder', curve: bent(feeder.value, context.site) });
  return list;
}

interface Worse {
  readonly side: Side;
  readonly measured: Measured & { raw: number };
  readonly score: number;
}

/** The drawn side that scores lower here, or null where neither is drawn. */
function worse(context: PostContext): Worse | null {
  let least: Worse | null = null;
  for (const side of sides(context)) {
    const measured = measureNearest(context, side.target, '', side.curve);
    if (measured.raw === null) continue;
    const score = curveAt(side.curve, measured.raw);
    if (!least || score < least.score) least = { side, measured, score };
  }
  return least;
}

function saying({ side, measured }: Worse, { spot }: PostContext): Saying {
  const feature = measured.at?.shape === 'place' ? measured.at.feature : '';
  const off = featureName(spot.ground, feature, side.target);
  return { off, inside: 'inside a building', none: `No ${side.target}` };
}

/** Distance to the building or feeder that scores lower: House Sparrows come from there. */
export const buildingsAndFeeders: Criterion = {
  id: 'buildings-and-feeders',
  title: 'Buildings and feeders',
  unit: 'm',
  weight: ours(1.5, 'weight', [0, 10], 'No measured distance was found that keeps sparrows away.'),
  settings,
  neutral: (context) => (sides(context).length ? null : `${context.bird.name} does not mind buildings or feeders`),
  measure(context) {
    const least = worse(context);
    return least ? least.measured : { raw: null, reason: 'no building or feeder drawn' };
  },
  // The lower of two curves over two distances: read again rather than carried, so that raw stays the deciding distance.
  score: (_, context) => worse(context)?.score ?? 1,
  explain(measured, context) {
    const least = worse(context);
    if (measured.raw === null || !least) return 'No building or feeder drawn: not judged';
    const text = offAndWants(least.measured, saying(least, context), least.side.curve, context);
    return rises(least.side.curve) ? `${text}; sparrows may still come` : text;
  },
  curve: (context) => worse(context)?.side.curve ?? sides(context)[0]?.curve ?? [[0, 1]],
  sources: ({ bird }) => [
    ...new Set([...(bird.habitat.building?.source ?? []), ...(bird.habitat.feeder?.source ?? [])]),
  ],
};
