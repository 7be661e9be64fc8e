import { curveAt } from '../birds/curve.ts';
import type { Criterion } from './criterion.ts';
import { ours } from './figures.ts';
import { measureNearest, offAndWants } from './near.ts';

const saying = { off: 'Water', inside: 'inside the edge of water or wetland', none: 'No water or wetland' };

/** Distance to water, wetland or a stream, for the birds that want it near or hunt over it. */
export const water: Criterion = {
  id: 'water',
  title: 'Water',
  unit: 'm',
  weight: ours(0.5, 'weight', [0, 10]),
  settings: {},
  neutral: ({ bird }) => (bird.habitat.water ? null : `${bird.name} takes water or leaves it`),
  measure: (context) =>
    measureNearest(context, 'water', 'no water or wetland drawn', context.bird.habitat.water?.value),
  score: ({ raw }, { bird }) => curveAt(bird.habitat.water!.value, raw),
  explain(measured, context) {
    if (measured.raw === null) return 'No water or wetland drawn: not judged';
    return offAndWants(measured, saying, context.bird.habitat.water!.value, context);
  },
  curve: ({ bird }) => bird.habitat.water?.value ?? [[0, 1]],
  sources: ({ bird }) => bird.habitat.water?.source ?? [],
};
