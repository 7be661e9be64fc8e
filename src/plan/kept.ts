/** From a plan to what a site file keeps of it. */
import type { Plan, PlannedBox } from '../plan-types.ts';
import { type KeptBox, type KeptPlan, planSettings } from '../site/kept-plan.ts';
import type { Site } from '../site/types.ts';

/** The plan of `site` as it is kept under `name`. */
export function keptPlan(site: Site, plan: Plan, name: string): KeptPlan {
  const drawn = new Set(site.features.map(({ id }) => id));
  return {
    name,
    score: plan.proof.value,
    sites: plan.sites,
    metres: plan.rounds.reduce((sum, round) => sum + round.metres, 0),
    minutes: plan.rounds.reduce((sum, round) => sum + round.minutes, 0),
    proof: plan.proof.sentence,
    settings: planSettings(site.settings),
    boxes: plan.boxes.map((box) => keptBox(box, drawn.has(box.post))),
  };
}

function keptBox({ number, post, bird, position, card, state, locked }: PlannedBox, drawn: boolean): KeptBox {
  return {
    number,
    post,
    ...(drawn ? {} : { suggested: true }),
    bird,
    at: position,
    score: card.judged > 0 ? card.score : null,
    state: state === 'standing' ? 'standing' : locked ? 'locked' : 'new',
  };
}

/** Boxes of the one and not of the other: a box is the same when it is the same post for the same bird within half a meter (ours). */
export function differences(kept: KeptPlan, boxes: readonly PlannedBox[]) {
  const same = (one: KeptBox, box: PlannedBox) =>
    one.post === box.post && one.bird === box.bird && near(one.at, box.position);
  return {
    onlyKept: kept.boxes.filter((one) => !boxes.some((box) => same(one, box))),
    onlyNow: boxes.filter((box) => !kept.boxes.some((one) => same(one, box))),
    renumbered: kept.boxes.filter((one) => boxes.some((box) => same(one, box) && box.number !== one.number)).length,
  };
}

/** Half a meter in degrees of latitude; along a parallel less, which only makes it stricter there. */
const close = 0.5 / 111_000;

function near(a: readonly number[], b: readonly number[]): boolean {
  return Math.abs(a[0]! - b[0]!) < close && Math.abs(a[1]! - b[1]!) < close;
}
