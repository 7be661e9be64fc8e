/** The plan as it is shown: with the box in the hand where the hand is. */
import type { Plan, PlannedBox } from '../plan-types.ts';
import { frameOf } from './map/frame.ts';
import type { Hand } from './posts-state.ts';
import type { AppState } from './state.ts';

/** The newest answer, so that everything drawn for one state shares one plan. */
const last = new WeakMap<Hand, { readonly plan: Plan; readonly shown: Plan }>();

export function shownPlan(state: AppState): Plan | null {
  const { plan, site } = state;
  const { hand } = state.posts;
  if (!plan || !hand || !site) return plan;
  const known = last.get(hand);
  if (known?.plan === plan) return known.shown;
  const frame = frameOf(site);
  const move = (box: PlannedBox): PlannedBox =>
    box.post === hand.post
      ? { ...box, at: hand.at, position: frame?.toLonLat(hand.at) ?? box.position, card: hand.card ?? box.card }
      : box;
  const shown = { ...plan, boxes: plan.boxes.map(move) };
  last.set(hand, { plan, shown });
  return shown;
}

/** The chosen box as shown, or null. */
export function shownBox(state: AppState): PlannedBox | null {
  const { selection } = state;
  if (selection?.of !== 'box') return null;
  return shownPlan(state)?.boxes.find((box) => box.number === selection.number) ?? null;
}
