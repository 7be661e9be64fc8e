/** The better place near the chosen box: asked for when it is chosen or has moved, taken with one button or key. */
import { birdById, isBird } from '../../birds/index.ts';
import { birdFor } from '../../criteria/bird-for.ts';
import { spacingNeeded } from '../../criteria/spacing.ts';
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
  if (!box || !site || state.posts.hand || isAnswered(state, box)) return;
  const { post, bird, at } = box;
  setPosts(store, { nudge: { post, from: at, best: null } });
  const question = {
    site,
    post,
    bird,
    x: at.x,
    y: at.y,
    reach: nudgeReach[state.units],
    ...neighbors(state, box, site),
  };
  const found = await store.engine.call('nudge', question).catch(() => null);
  const now = store.state.posts.nudge;
  if (now?.post !== post || now.from !== at) return;
  setPosts(store, { nudge: { post, from: at, best: found && found.gain >= leastGain ? found : null } });
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

function isAnswered({ posts }: AppState, box: PlannedBox): boolean {
  return posts.nudge?.post === box.post && posts.nudge.from === box.at;
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
