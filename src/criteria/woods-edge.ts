import { curveAt } from '../birds/curve.ts';
import type { Criterion, Measured, PostContext } from './criterion.ts';
import { bender } from './curve-shape.ts';
import { ours } from './figures.ts';
import { measureNearest, offAndWants, type Saying } from './near.ts';
import { lengthText } from './units.ts';

const settings = {
  zero: ours(
    15,
    'm',
    [0, 100],
    "Metres that score 0 for a bird of open country; the guide's own curve stands until this is changed.",
  ),
  full: ours(
    45,
    'm',
    [1, 300],
    "Metres that score 1 for a bird of open country; the guide's own curve stands until this is changed.",
  ),
};

const bent = bender('woods-edge');
const edgeCurve = ({ bird, site }: PostContext) => bent(bird.habitat.woodsEdge.value, site);

/** Woods have an edge; a tree that stands alone is named as one. */
function saying({ at }: Measured & { raw: number }, { spot }: PostContext): Saying {
  const lone = at?.shape === 'place' && spot.ground.site.features.find(({ id }) => id === at.feature)?.kind === 'tree';
  return { off: lone ? 'Nearest tree' : 'Woods edge', inside: 'inside the woods', none: 'No woods or trees' };
}

/** Signed distance to woods or a tree over 3 m: inside woods is below zero. */
export const woodsEdge: Criterion = {
  id: 'woods-edge',
  title: 'Woods edge',
  unit: 'm',
  weight: ours(2, 'weight', [0, 10], 'Attempts and success rose with distance to a tree over 3 m (Horn 1996).'),
  settings,
  measure: (context) => measureNearest(context, 'woods-edge', 'no woods or trees drawn', edgeCurve(context)),
  score: ({ raw }, context) => curveAt(edgeCurve(context), raw),
  explain(measured, context) {
    if (measured.raw === null) return 'No woods drawn: not judged';
    return offAndWants(measured, saying(measured, context), edgeCurve(context), context);
  },
  hard(measured, { bird, site }) {
    const least = bird.habitat.woodsEdgeHard?.value ?? null;
    if (least === null || measured.raw === null || measured.raw >= least) return null;
    const where = measured.raw < 0 ? 'inside woods' : `${lengthText(measured.raw, site.units)} from woods or a tree`;
    return `${lengthText(least, site.units)} from the woods edge is the least for ${bird.name}; this is ${where}`;
  },
  curve: edgeCurve,
  sources: ({ bird }) => [
    ...new Set([...bird.habitat.woodsEdge.source, ...(bird.habitat.woodsEdgeHard?.source ?? [])]),
  ],
};
