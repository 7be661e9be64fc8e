/** A layout out of a fractional answer. */
import { conflict, type Field } from './field.ts';
import type { Layout } from './layout.ts';
import { layoutOf } from './layout.ts';

/** Largest shares first, then the best of the rest, while they fit beside those standing. `caps`: most new sites of each bird. */
export function roundedLayout(
  field: Field,
  alive: Int32Array,
  x: Float64Array,
  standing: readonly number[],
  caps: readonly number[],
): Layout {
  const { x: xs, y: ys, weight, bird, reach, problem } = field;
  const order = [...alive.keys()].sort((p, q) => x[q] - x[p] || weight[alive[q]] - weight[alive[p]] || p - q);
  const chosen = [...standing];
  const left = [...caps];
  const clash = (u: number, v: number) => !problem.units[v].fixed && conflict(field, u, v);
  const clear = (u: number) => chosen.every((v) => Math.hypot(xs[u] - xs[v], ys[u] - ys[v]) > reach || !clash(u, v));
  for (const k of order) {
    const u = alive[k];
    if (left[bird[u]] <= 0 || !clear(u)) continue;
    chosen.push(u);
    left[bird[u]]--;
  }
  return layoutOf(problem, chosen);
}
