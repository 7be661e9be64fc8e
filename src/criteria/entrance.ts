import type { Criterion, PostContext } from './criterion.ts';
import { facingFigures, facingOn } from './facing-figures.ts';
import { worthAt } from './facing-wish.ts';
import { facingSentence } from './facing-words.ts';
import { ours } from './figures.ts';
import { drawnShare, littleDrawn } from './little-drawn.ts';

/** A bearing's worth as a score: the worst is not hopeless. */
function scoreOf(worth: number, { site }: PostContext): number {
  const { least } = facingOn(site);
  return least + (1 - least) * worth;
}

/** Where the hole looks: away from afternoon sun and storm, over open land toward a perch. Advice with a band. */
export const entrance: Criterion = {
  id: 'entrance',
  title: 'Entrance facing',
  unit: '°',
  weight: ours(1, 'weight', [0, 10], 'No bearing is proven best everywhere.'),
  settings: facingFigures,
  costly: true,
  measure(context) {
    const reason = littleDrawn(context);
    if (reason) return { raw: null, reason };
    const { wish } = context;
    const parts = { worth: worthAt(wish, context.facing), best: wish.best, from: wish.from, to: wish.to };
    return {
      raw: context.facing,
      parts,
      known: drawnShare(context),
      at: { shape: 'wedge', from: wish.from, to: wish.to },
    };
  },
  score: ({ parts }, context) => scoreOf(parts?.worth ?? worthAt(context.wish, context.facing), context),
  explain(measured, context) {
    const advice = facingSentence(context.wish, context.facing);
    return measured.raw === null ? `Facing not judged: ${measured.reason}. ${advice} by the latitude alone` : advice;
  },
  curve(context) {
    const { worth } = context.wish;
    return Array.from({ length: 73 }, (_, i) => [i * 5, scoreOf(worth[(i * 5) % 360]!, context)] as const);
  },
  sources: () => [
    'Ardia 2006',
    'Navara & Anderson 2011',
    'Dhondt & Phillips 2001',
    'Butler 2009',
    'NRCS-NH',
    'TWRA',
    'RSPB',
    'ours',
  ],
};
