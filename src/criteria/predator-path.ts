import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { ours, reader } from './figures.ts';
import { measureNearest, offText } from './near.ts';
import { lengthText } from './units.ts';

const settings = {
  leap: {
    value: 3.048,
    unit: 'm',
    source: ['common practice'],
    grade: 'C' as const,
    range: [1.8, 6] as const,
    note: '6–10 ft clear around a guard is common practice; no single source.',
  },
  close: ours(0.5, 'm', [0, 1.5], 'As good as touching.'),
  least: ours(0.4, 'score', [0.05, 1], 'A penalty, not an exclusion: USFWS and KS accept fence posts, TWRA does not.'),
};
const on = reader('predator-path', settings);

function pathCurve({ site }: PostContext): Curve {
  const { leap, close, least } = on(site);
  return [
    [Math.min(close, leap - 0.01), least],
    [leap, 1],
  ];
}

const saying = { off: 'Nearest tree, fence or wall', inside: 'inside it' };

/** Distance to anything a cat, raccoon or snake can leap or drop from: tree crown, fence, wall, woods, hedge. */
export const predatorPath: Criterion = {
  id: 'predator-path',
  title: 'Predator path',
  unit: 'm',
  weight: ours(1, 'weight', [0, 10]),
  settings,
  measure: (context) => measureNearest(context, 'jump', 'no tree, fence, wall, hedge or woods drawn'),
  score: ({ raw }, context) => curveAt(pathCurve(context), raw),
  explain(measured, context) {
    if (measured.raw === null) return 'No tree, fence or wall drawn: not judged';
    const leap = lengthText(on(context.site).leap, context.site.units);
    if (measured.raw < 0) return `In or under what an animal can leap from, wants ${leap} clear: hang a guard anyway`;
    return `${offText(measured.raw, saying, context)}, wants ${leap}: hang a guard anyway`;
  },
  curve: pathCurve,
  sources: () => ['TWRA', 'USFWS', 'KS', 'common practice', 'ours'],
};
