import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { bender, rises } from './curve-shape.ts';
import { ours } from './figures.ts';
import { measureNearest, offAndWants } from './near.ts';

const settings = {
  zero: {
    value: 15.24,
    unit: 'm',
    source: ['NFW'],
    grade: 'C' as const,
    range: [0, 60] as const,
    note: "50 ft; the guide's own curve stands until this is changed.",
  },
  full: {
    value: 60.96,
    unit: 'm',
    source: ['BBNE'],
    grade: 'C' as const,
    range: [15, 200] as const,
    note: "200 ft; the guide's own curve stands until this is changed. Sources disagree.",
  },
};

const bent = bender('brush');
const brushCurve = ({ bird, site }: PostContext): Curve => bent(bird.habitat.brush!.value, site);

/** How much of the risk is left, in words; birds that like brush run no such risk. */
function risk(score: number, curve: Curve): string {
  if (!rises(curve)) return '';
  if (score < 0.25) return ': high wren risk';
  return score < 0.75 ? ': some wren risk' : ': little wren risk';
}

const saying = { off: 'Brush', inside: 'inside brush or woods', none: 'No brush, hedge or woods' };

/** Distance to brush, hedge or woods, from where House Wrens come. A risk, never a promise. */
export const brush: Criterion = {
  id: 'brush',
  title: 'Brush',
  unit: 'm',
  weight: ours(1.5, 'weight', [0, 10], 'Sources disagree about the distance.'),
  settings,
  neutral: ({ bird }) => (bird.habitat.brush ? null : `${bird.name} does not mind brush`),
  measure: (context) => measureNearest(context, 'brush', 'no brush, hedge or woods drawn', brushCurve(context)),
  score: ({ raw }, context) => curveAt(brushCurve(context), raw),
  explain(measured, context) {
    if (measured.raw === null) return 'No brush, hedge or woods drawn: not judged';
    const curve = brushCurve(context);
    return `${offAndWants(measured, saying, curve, context)}${risk(curveAt(curve, measured.raw), curve)}`;
  },
  curve: brushCurve,
  sources: ({ bird }) => bird.habitat.brush?.source ?? [],
};
