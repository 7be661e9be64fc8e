/** Keep a plan by name in the site, or forget it. */
import type { KeptPlan } from '../site/kept-plan.ts';
import type { Site } from '../site/types.ts';
import { type Edit, rounded, withFeatures } from './edit.ts';

/** Most plans kept (ours: more than can be compared). */
const most = 20;

/** Keeps the plan last; one of the same name is replaced in its place. Positions and figures are rounded to what can be read. */
export function keepPlan(site: Site, plan: KeptPlan): Edit {
  const name = plan.name.trim();
  if (name === '') return { refused: 'A plan needs a name to be kept by.' };
  const { plans } = site.settings;
  const known = plans.some((one) => one.name === name);
  if (!known && plans.length >= most) return { refused: `${most} plans are kept already. Forget one of them first.` };
  const tidy = { ...plan, ...figures(plan), name, boxes: plan.boxes.map((box) => ({ ...box, ...place(box) })) };
  const kept = known ? plans.map((one) => (one.name === name ? tidy : one)) : [...plans, tidy];
  return { site: withPlans(site, kept), sentence: known ? `Kept “${name}” anew` : `Kept the plan “${name}”` };
}

/** Forgets a kept plan. Asking for one that is not there is the caller's mistake. */
export function dropPlan(site: Site, name: string): Edit {
  const { plans } = site.settings;
  if (!plans.some((one) => one.name === name)) throw new Error(`no such kept plan: ${name}`);
  const left = plans.filter((one) => one.name !== name);
  return { site: withPlans(site, left), sentence: `Forgot the plan “${name}”` };
}

function withPlans(site: Site, plans: readonly KeptPlan[]): Site {
  return withFeatures({ ...site, settings: { ...site.settings, plans } }, site.features);
}

const toTenth = (value: number) => Math.round(value * 10) / 10;

function figures({ score, metres, minutes }: KeptPlan) {
  return { score: toTenth(score), metres: toTenth(metres), minutes: toTenth(minutes) };
}

function place({ at, score }: KeptPlan['boxes'][number]) {
  const [lon, lat] = rounded(at);
  return { at: [lon!, lat!] as [number, number], score: score === null ? null : toTenth(score) };
}
