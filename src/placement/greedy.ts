/** The first answer: best score first, whatever still fits. */
import type { Field } from './field.ts';
import { conflict, layoutIn } from './field.ts';
import type { Layout } from './layout.ts';

/** Fixed units always; then the rest by weight while the bird is still wanted and nothing chosen is too near. */
export function greedyLayout(field: Field): Layout {
  const { problem, weight, bird } = field;
  const left = [...problem.wanted];
  const chosen: number[] = [];
  problem.units.forEach((unit, u) => {
    if (unit.fixed) {
      chosen.push(u);
      left[unit.bird]--;
    }
  });
  const order = Array.from({ length: field.count }, (_, u) => u)
    .filter((u) => !problem.units[u].fixed && weight[u] >= 0)
    .sort((a, b) => weight[b] - weight[a] || a - b);
  for (const u of order) {
    if (left[bird[u]] <= 0 || chosen.some((v) => conflict(field, u, v))) continue;
    chosen.push(u);
    left[bird[u]]--;
  }
  return layoutIn(field, chosen);
}
