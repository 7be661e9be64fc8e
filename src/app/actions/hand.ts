/** A box in the hand: it is scored as it goes, and put down with one edit. */
import { isBird } from '../../birds/index.ts';
import { distance, type Point } from '../../geometry/point.ts';
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

/** Moves the box in the hand; its score follows as soon as the worker has it, the newest place first. */
export function moveHand(store: Store, at: Point): void {
  const { hand } = store.state.posts;
  if (!hand || (at.x === hand.at.x && at.y === hand.at.y)) return;
  setPosts(store, { hand: { ...hand, at } });
  void follow(store);
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

/** One question at a time: what came up meanwhile is asked next. */
async function follow(store: Store): Promise<void> {
  if (asking.has(store)) return;
  asking.add(store);
  try {
    for (let hand = unscored(store); hand; hand = unscored(store)) {
      const answer = await ask(store, hand);
      const now = store.state.posts.hand;
      if (!answer || now?.post !== hand.post) break;
      const card = { ...answer.card, who: now.card?.who ?? [] };
      setPosts(store, { hand: { ...now, card, cardAt: hand.at, forbidden: answer.forbidden } });
    }
  } finally {
    asking.delete(store);
  }
}

function unscored(store: Store): Hand | null {
  const { hand } = store.state.posts;
  return hand && (hand.at.x !== hand.cardAt.x || hand.at.y !== hand.cardAt.y) ? hand : null;
}

/** A worker that fails is spoken of when the box is put down. */
function ask(store: Store, { post, bird, at }: Hand) {
  const { planOf } = store.state;
  if (!planOf) return Promise.resolve(null);
  return store.engine.call('scorePost', { site: planOf, post, bird, x: at.x, y: at.y, who: false }).catch(() => null);
}
