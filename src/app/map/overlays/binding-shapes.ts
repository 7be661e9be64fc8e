/** Where the spacing rule binds: the sites of a bird that found fewer places than wanted, and the pairs that stand nearly as close as the rule allows. */
import { birdById, isBird } from '../../../birds/index.ts';
import { birdFor } from '../../../criteria/bird-for.ts';
import { spacing, spacingNeeded } from '../../../criteria/spacing.ts';
import type { Plan, PlannedBox } from '../../../plan-types.ts';
import type { SiteSettings } from '../../../site/types.ts';
import type { AppState } from '../../state.ts';

export interface BindingPair {
  readonly a: PlannedBox;
  readonly b: PlannedBox;
  readonly metres: number;
  readonly needed: number;
}

export interface Binding {
  /** Boxes of the birds that are short of sites. */
  readonly boxes: readonly PlannedBox[];
  readonly pairs: readonly BindingPair[];
  /** Meters asked between two sites of the bird that is short; of several birds the most. */
  readonly needed: number;
  /** Meters of the circles drawn: half the spacing, so that two may touch; the whole where no pair does and each site keeps others out alone. */
  readonly radius: number;
}

/** Up to this many times the spacing counts as bound (ours: within an eighth no third site fits beside the two along their line). */
const nearly = 1.125;

/** The newest answer: page and map ask for the same. */
const last = new WeakMap<Plan, Binding | null>();

/** Null where every wanted site found a place, or where something else than spacing keeps it from one. */
export function bindingOf(plan: Plan, settings: SiteSettings): Binding | null {
  if (last.has(plan)) return last.get(plan) ?? null;
  const bound = work(plan, settings);
  last.set(plan, bound);
  return bound;
}

function work(plan: Plan, settings: SiteSettings): Binding | null {
  const short = shortBirds(plan, settings);
  const boxes = plan.boxes.filter((box) => short.has(box.bird));
  const pairs = boxes.flatMap((a) =>
    plan.boxes
      .filter((b) => (short.has(b.bird) ? b.number > a.number : true) && b !== a && a.pairedWith !== b.number)
      .flatMap((b) => tight(a, b, settings)),
  );
  const needed = Math.max(0, ...boxes.map((box) => ownSpacing(box, settings)));
  if (boxes.length === 0 || needed === 0) return null;
  return { boxes, pairs, needed, radius: pairs.length > 0 ? needed / 2 : needed };
}

function ownSpacing({ bird }: PlannedBox, settings: SiteSettings): number {
  if (!isBird(bird)) return 0;
  const guide = birdFor(birdById(bird), settings);
  return spacingNeeded(guide, guide).metres;
}

/** Birds with fewer sites than wanted though a place too close to a box could have had one. */
function shortBirds(plan: Plan, { wanted }: SiteSettings): ReadonlySet<string> {
  const codes = new Set(plan.leftOut.map(({ code }) => code));
  // Where the walk is too short for more, it is the walk that binds.
  if (codes.has('too-far-to-walk') || !(codes.has('too-close') || codes.has('outscored'))) return new Set();
  const sites = (bird: string) =>
    plan.boxes.filter((box) => box.bird === bird && (box.pairedWith === null || box.pairedWith > box.number)).length;
  return new Set(wanted.filter((wish) => sites(wish.bird) < wish.sites).map(({ bird }) => bird));
}

function tight(a: PlannedBox, b: PlannedBox, settings: SiteSettings): BindingPair[] {
  if (!isBird(a.bird) || !isBird(b.bird)) return [];
  const one = { at: a.at, bird: birdById(a.bird), pairedWithOther: false };
  const other = { at: b.at, bird: birdById(b.bird), pairedWithOther: false };
  const { distance: metres, needed } = spacing(one, other, settings);
  return needed > 0 && metres <= needed * nearly ? [{ a, b, metres, needed }] : [];
}

/** Shown beside the list of boxes: a chosen box has its own spacing ring. */
export function isBindingShown({ place, selection, posts }: AppState): boolean {
  return place === 'posts' && selection === null && posts.binding && (posts.page === 'list' || posts.page === 'choose');
}

/** Whether there is anything to show. */
export function isBound(state: AppState): boolean {
  const { plan, planOf } = state;
  return isBindingShown(state) && plan !== null && planOf !== null && bindingOf(plan, planOf.settings) !== null;
}
