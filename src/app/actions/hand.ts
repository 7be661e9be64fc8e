/** A box in the hand: it is scored as it goes, and put down with one edit. */
import { isBird } from '../../birds/index.ts';
import { distance, type Point, samePoint } from '../../geometry/point.ts';
import type { LeftOut, PlannedBox } from '../../plan-types.ts';
import type { Hand } from '../posts-state.ts';
import type { Store } from '../store.ts';
import { setPosts } from './posts-state.ts';
import { putPost } from './put-post.ts';
import { mayWrite } from './shelf-may-write.ts';

/** Least meters that count as a move. */
const least = 0.05;

/** Stores whose worker has a question of the hand's open. */
const asking = new WeakSet<Store>();

/** Takes a box or a post that was left out up; nothing changes yet. */
export function takeHand(store: Store, thing: PlannedBox | LeftOut): void {
  const bird = birdOf(store, thing);
  if (bird === null || !mayWrite(store)) return;
  const { post, at } = thing;
  const card = 'card' in thing ? thing.card : null;
  const before = 'card' in thing ? thing.card.score : thing.score;
  setPosts(store, { hand: { post, bird, from: at, at, before, card, cardAt: at, forbidden: null } });
}

/** A post that is no box is scored for its own bird, else for the first one wanted. */
function birdOf({ state: { site } }: Store, thing: PlannedBox | LeftOut): string | null {
  if ('card' in thing) return thing.bird;
  const own = site?.features.find(({ id }) => id === thing.post)?.properties.bird;
  const bird = typeof own === 'string' ? own : (site?.settings.wanted[0]?.bird ?? null);
  return bird !== null && isBird(bird) ? bird : null;
}

/**
 * Moves the box in the hand; its score follows as soon as the worker has it, the newest place first. The worker is asked before the page
 * draws the move: it works meanwhile.
 */
export function moveHand(store: Store, at: Point): void {
  const { hand } = store.state.posts;
  if (!hand || samePoint(at, hand.at)) return;
  const moved = { ...hand, at };
  const coming = asking.has(store) ? null : ask(store, moved);
  setPosts(store, { hand: moved });
  if (coming) void follow(store, moved, coming);
}

/** Puts it back where it was. */
export function giveUpHand(store: Store): void {
  setPosts(store, { hand: null });
}

/** Puts the box down: one edit, with what it did to the score. */
export async function dropHand(store: Store): Promise<void> {
  const { hand } = store.state.posts;
  if (!hand) return;
  if (distance(hand.from, hand.at) < least) {
    giveUpHand(store);
    return;
  }
  await putPost(store, hand.post, hand.bird, hand.at, hand.before);
  if (store.state.posts.hand?.post === hand.post) giveUpHand(store);
}

/** One question at a time: what came up meanwhile is asked next, and again before the answer is drawn. */
async function follow(store: Store, first: Hand, answer: ReturnType<typeof ask>): Promise<void> {
  asking.add(store);
  try {
    let coming = answer;
    for (let asked: Hand | null = first; asked; ) {
      const found = await coming;
      const now = store.state.posts.hand;
      if (!found || now?.post !== asked.post) break;
      const card = { ...found.card, who: now.card?.who ?? [] };
      const scored: Hand = { ...now, card, cardAt: asked.at, forbidden: found.forbidden };
      asked = samePoint(scored.at, scored.cardAt) ? null : scored;
      if (asked) coming = ask(store, asked);
      setPosts(store, { hand: scored });
    }
  } finally {
    asking.delete(store);
  }
}

/** A worker that fails is spoken of when the box is put down. */
function ask(store: Store, { post, bird, at }: Hand) {
  const { planOf } = store.state;
  if (!planOf) return Promise.resolve(null);
  return store.engine.call('scorePost', { site: planOf, post, bird, x: at.x, y: at.y, who: false }).catch(() => null);
}
