/** Sets a post down somewhere else: one edit, the plan on the screen follows at once, the whole plan is made again behind it. */
import { lengthText } from '../../criteria/units.ts';
import { addPost } from '../../edits/add-post.ts';
import { movePost } from '../../edits/move-post.ts';
import { setPost } from '../../edits/set-post.ts';
import { bearing, distance, type Point } from '../../geometry/point.ts';
import type { Plan } from '../../plan-types.ts';
import { postState } from '../../site/properties.ts';
import type { LonLat, Site } from '../../site/types.ts';
import type { PostAnswer } from '../engine/calls/score-post.ts';
import { compass } from '../format.ts';
import { frameOf } from '../map/frame.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { say } from './say.ts';

/** Moves a post to `at`, scored for `bird`; `before` is the score it had, or null. */
export async function putPost(
  store: Store,
  post: string,
  bird: string,
  at: Point,
  before: number | null,
): Promise<void> {
  const { plan, site } = store.state;
  const thing = plan?.boxes.find((b) => b.post === post) ?? plan?.leftOut.find((l) => l.post === post);
  const frame = site && frameOf(site);
  if (!plan || !thing || !site || !frame) return;
  const answer = await cardThere(store, post, bird, at);
  if (store.state.site !== site) return;
  const position = frame.toLonLat(at);
  const isBox = 'number' in thing;
  const stays = isBox && !answer?.forbidden;
  const moved = movedSite(site, post, bird, position, stays);
  if ('refused' in moved) {
    say(store, 'trouble', moved.refused);
    return;
  }
  const { posts } = store.state.words;
  const name = isBox ? posts.box(thing.number) : posts.post(post);
  const standing = isBox && thing.state === 'standing';
  const next = stays ? (standing ? '' : posts.lockedThere) : answer?.forbidden ? '' : posts.mayStillBeLeftOut;
  const sentence = `${wayOf(store, name, thing.at, at)} ${scoreWords(store, before, answer)} ${next}`.trim();
  const there = { post: moved.post, at, position, ...(stays && !standing ? { locked: true } : {}) };
  const shown = withPost(plan, post, there, answer);
  store.set({ plan: shown, posts: { ...store.state.posts, hand: null, nudge: null } });
  edit(store, moved.site, sentence);
}

/** The whole card; null when the worker fails, so that the move is never lost. */
async function cardThere(store: Store, post: string, bird: string, { x, y }: Point): Promise<PostAnswer | null> {
  const site = store.state.planOf ?? store.state.site;
  if (!site) return null;
  return store.engine.call('scorePost', { site, post, bird, x, y, who: true }).catch(() => null);
}

/** A drawn post is moved; a suggested place becomes a drawn post for its bird. A box that was moved is locked: the next plan would else choose anew. */
function movedSite(
  site: Site,
  post: string,
  bird: string,
  to: LonLat,
  lock: boolean,
): { site: Site; post: string } | { refused: string } {
  const feature = site.features.find(({ id }) => id === post);
  const done = feature ? movePost(site, post, to) : addPost(site, to, { bird });
  if ('refused' in done) return done;
  const id = feature ? post : (done.site.features.at(-1)?.id ?? post);
  if (!lock || (feature && postState(feature) !== 'candidate')) return { site: done.site, post: id };
  const locked = setPost(done.site, id, { locked: true, bird });
  return 'refused' in locked ? locked : { site: locked.site, post: id };
}

/** The plan on the screen until the new one is there. */
function withPost(
  plan: Plan,
  post: string,
  there: { post: string; at: Point; position: LonLat; locked?: boolean },
  answer: PostAnswer | null,
): Plan {
  const boxes = plan.boxes.map((b) => (b.post === post ? { ...b, ...there, card: answer?.card ?? b.card } : b));
  const leftOut = plan.leftOut.map((l) =>
    l.post === post ? { ...l, post: there.post, at: there.at, score: answer?.card.score ?? null } : l,
  );
  return { ...plan, boxes, leftOut };
}

function wayOf({ state }: Store, name: string, from: Point, to: Point): string {
  const { posts } = state.words;
  const way = lengthText(distance(from, to), state.units);
  return posts.moved(name, way, posts.winds[compass(bearing(from, to))] ?? '');
}

function scoreWords({ state }: Store, before: number | null, answer: PostAnswer | null): string {
  const { posts } = state.words;
  if (!answer) return '';
  if (answer.forbidden) return posts.mayNotStand(answer.forbidden);
  const now = Math.round(answer.card.score);
  return before === null ? posts.scores(now) : posts.scoresNow(now, Math.round(before));
}
