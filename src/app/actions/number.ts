/** Numbers set by hand: one step each, that can be undone and says that printed sheets change. */
import { numberByWalk, numberPost } from '../../edits/number-post.ts';
import type { Plan } from '../../plan-types.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { applied } from './applied.ts';

/** Whether the walk may still change by itself: numbers set now would freeze a sketch. Once they are set they stay, whatever is being proven. */
export function isUnsettled({ site, engine }: AppState): boolean {
  return engine.at === 'work' && site?.settings.order.length === 0;
}

/** Gives the box of that post another number; the list and the map show it at once, the walk follows with the new plan. */
export function giveNumber(store: Store, post: string, number: number): void {
  const { plan, site, words } = store.state;
  if (isUnsettled(store.state)) return;
  const box = plan?.boxes.find((one) => one.post === post);
  if (!plan || !site || !box) return;
  const walk = [...plan.boxes].sort((a, b) => a.number - b.number).map((one) => one.post);
  const to = Math.min(number, walk.length);
  if (to === box.number) return;
  const done = numberPost(site, walk, post, to);
  if (applied(store, done, words.posts.numbers.done(box.number, to)) && 'site' in done)
    renumber(store, plan, done.site.settings.order);
}

/** The numbers follow the shortest walk again. */
export function followWalk(store: Store): void {
  const { site, words } = store.state;
  if (site) applied(store, numberByWalk(site), words.posts.numbers.backDone);
}

/** The plan on the screen in the new order, until the new one is there: its legs are still those of the old walk, so they go. */
function renumber(store: Store, plan: Plan, order: readonly string[]): void {
  const now = new Map(order.map((post, i) => [post, i + 1]));
  const next = new Map(plan.boxes.map((box) => [box.number, now.get(box.post) ?? box.number]));
  const moved = (number: number) => next.get(number) ?? number;
  const boxes = plan.boxes
    .map((box) => ({
      ...box,
      number: moved(box.number),
      pairedWith: box.pairedWith === null ? null : moved(box.pairedWith),
    }))
    .sort((a, b) => a.number - b.number);
  const rounds = plan.rounds.map((round) => ({ ...round, boxes: boxes.map((box) => box.number), legs: [], gap: null }));
  const leftOut = plan.leftOut.map((left) =>
    left.becauseOf === null ? left : { ...left, becauseOf: moved(left.becauseOf) },
  );
  const { selection } = store.state;
  const chosen = selection?.of === 'box' ? ({ of: 'box', number: moved(selection.number) } as const) : selection;
  store.set({ plan: { ...plan, boxes, rounds, leftOut }, selection: chosen });
}
