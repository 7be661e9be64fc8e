/** A made-up season for the boxes of a plan, for demonstrations and tests. */
import { birdById, isBird } from '../birds/index.ts';
import type { Plan } from '../plan-types.ts';
import { inventSeasons } from '../visits/invent.ts';
import { isSouth } from '../visits/season-year.ts';
import type { Visit } from '../visits/visit.ts';

/** `years` seasons that end with the plan's own year. Same plan and seed, same visits; every visit is marked as invented. */
export function inventForPlan(plan: Plan, years: number, seed: number): readonly Visit[] {
  const boxes = plan.boxes
    .filter((box) => isBird(box.bird))
    .map(({ post, number, bird, card }) => ({ post, number, bird: birdById(bird), score: card.score / 100 }));
  const south = isSouth(plan.boxes[0]?.position);
  return inventSeasons({ boxes, firstYear: Number(plan.date.slice(0, 4)) - years + 1, years, seed, south });
}
