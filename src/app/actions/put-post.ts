/** Sets a post down somewhere else: one edit, the plan on the screen follows at once, the whole plan is made again behind it. */
import { lengthText } from '../../criteria/units.ts';
import { addPost } from '../../edits/add-post.ts';
import { movePost } from '../../edits/move-post.ts';
import { bearing, distance, type Point } from '../../geometry/point.ts';
import type { Plan } from '../../plan-types.ts';
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
  const moved = movedSite(site, post, bird, position);
  if ('refused' in moved) {
    say(store, 'trouble', moved.refused);
    return;
  }
  const { posts } = store.state.words;
  const name = 'number' in thing ? posts.box(thing.number) : posts.post(post);
  const sentence = `${wayOf(store, name, thing.at, at)} ${scoreWords(store, before, answer)}`.trim();
  const shown = withPost(plan, post, { post: moved.post, at, position }, answer);
  store.set({ plan: shown, posts: { ...store.state.posts, hand: null, nudge: null } });
  edit(store, moved.site, sentence);
}

/** The whole card; null when the worker fails, so that the move is never lost. */
async function cardThere(store: Store, post: string, bird: string, { x, y }: Point): Promise<PostAnswer | null> {
  const site = store.state.planOf ?? store.state.site;
  if (!site) return null;
  return store.engine.call('scorePost', { site, post, bird, x, y, who: true }).catch(() => null);
}

/** A drawn post is moved; a suggested place becomes a drawn post for its bird. */
function movedSite(
  site: Site,
  post: string,
  bird: string,
  to: LonLat,
): { site: Site; post: string } | { refused: string } {
  const drawn = site.features.some(({ id }) => id === post);
  const done = drawn ? movePost(site, post, to) : addPost(site, to, { bird });
  if ('refused' in done) return done;
  return { site: done.site, post: drawn ? post : (done.site.features.at(-1)?.id ?? post) };
}

/** The plan on the screen until the new one is there. */
function withPost(
  plan: Plan,
  post: string,
  there: { post: string; at: Point; position: LonLat },
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
