/** The plan as it is shown: with the box in the hand where the hand is. */
import type { Point } from '../geometry/point.ts';
import type { Plan, PlannedBox, PostCard } from '../plan-types.ts';
import { frameOf } from './map/frame.ts';
import type { AppState } from './state.ts';

/** The newest answer for a plan, so that everything drawn between two scores shares one plan. */
const last = new WeakMap<Plan, { readonly card: PostCard | null; readonly at: Point; readonly shown: Plan }>();

/** The box in the hand stands where its newest card is for: figures and shapes agree, a few milliseconds behind the hand. */
export function shownPlan(state: AppState): Plan | null {
  const { plan, site } = state;
  const { hand } = state.posts;
  if (!plan || !hand || !site) return plan;
  const known = last.get(plan);
  if (known?.card === hand.card && known.at === hand.cardAt) return known.shown;
  const frame = frameOf(site);
  const move = (box: PlannedBox): PlannedBox =>
    box.post === hand.post
      ? { ...box, at: hand.cardAt, position: frame?.toLonLat(hand.cardAt) ?? box.position, card: hand.card ?? box.card }
      : box;
  const shown = { ...plan, boxes: plan.boxes.map(move) };
  last.set(plan, { card: hand.card, at: hand.cardAt, shown });
  return shown;
}

/** The chosen box as shown, or null. */
export function shownBox(state: AppState): PlannedBox | null {
  const { selection } = state;
  if (selection?.of !== 'box') return null;
  return shownPlan(state)?.boxes.find((box) => box.number === selection.number) ?? null;
}
