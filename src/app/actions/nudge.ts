/** The better place near the chosen box: asked for when it is chosen or has moved, taken with one button or key. */
import { birdById, isBird } from '../../birds/index.ts';
import { birdFor } from '../../criteria/bird-for.ts';
import { spacingNeeded } from '../../criteria/spacing.ts';
import { samePoint } from '../../geometry/point.ts';
import type { PlannedBox } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { boxByNumber } from '../map/box-look.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { setPosts } from './posts-state.ts';
import { putPost } from './put-post.ts';

/** How far is looked, meters: 20 m, or 65 ft. */
export const nudgeReach = { metric: 20, us: 65 * 0.3048 } as const;

/** Less than this is not worth pulling a post for (ours). */
const leastGain = 1;

/** Asks for the better place near the chosen box, once for each place it stands at. */
export async function findNudge(store: Store): Promise<void> {
  const { state } = store;
  const box = chosenBox(state);
  const site = state.planOf;
  const last = state.posts.nudge;
  if (!box || !site || state.posts.hand || (last?.post === box.post && last.from === box.at)) return;
  const { post, bird, at } = box;
  const reach = nudgeReach[state.units];
  const { others, partner } = neighbors(state, box, site);
  const asked = JSON.stringify([bird, reach, others, partner]);
  const open = { post, from: at, of: site, asked };
  // A newer plan of the same boxes, such as one that is only surer, needs no new answer.
  if (last?.post === post && samePoint(last.from, at) && last.of === site && last.asked === asked) {
    setPosts(store, { nudge: { ...open, best: last.best } });
    return;
  }
  setPosts(store, { nudge: { ...open, best: null } });
  const question = { site, post, bird, x: at.x, y: at.y, reach, others, partner };
  const found = await store.engine.call('nudge', question).catch(() => null);
  const now = store.state.posts.nudge;
  if (now?.post !== post || !samePoint(now.from, at) || now.of !== site || now.asked !== asked) return;
  setPosts(store, { nudge: { ...now, best: found && found.gain >= leastGain ? found : null } });
}

/** Moves the chosen box to the better place. True when there was one. */
export function takeNudge(store: Store): boolean {
  const box = chosenBox(store.state);
  const { nudge, hand } = store.state.posts;
  if (!box || hand || nudge?.post !== box.post || !nudge.best) return false;
  void putPost(store, box.post, box.bird, nudge.best.at, box.card.score);
  return true;
}

function chosenBox({ plan, selection }: AppState): PlannedBox | null {
  return boxByNumber(plan, selection?.of === 'box' ? selection.number : null);
}

/** Boxes it must keep clear of, and the other box of its pair. */
function neighbors({ plan }: AppState, box: PlannedBox, { settings }: Site) {
  const guide = (id: string) => (isBird(id) ? birdFor(birdById(id), settings) : null);
  const own = guide(box.bird);
  const boxes = plan?.boxes ?? [];
  const others = boxes
    .filter((b) => b.post !== box.post && b.number !== box.pairedWith)
    .map((b) => {
      const bird = guide(b.bird);
      return { at: b.at, needed: own && bird ? spacingNeeded(own, bird).metres : 0 };
    });
  return { others, partner: boxByNumber(plan, box.pairedWith)?.at ?? null };
}
