/** Locks a planned box where it is, with its facing; or lets the choice move it again. */
import { addPost } from '../../edits/add-post.ts';
import type { Edit } from '../../edits/edit.ts';
import { setPost } from '../../edits/set-post.ts';
import type { PlannedBox } from '../../plan-types.ts';
import { isLocked } from '../../site/properties.ts';
import type { Site } from '../../site/types.ts';
import type { Store } from '../store.ts';
import { applied } from './applied.ts';

/** A locked box keeps its place, its bird and its facing in every plan; it is still a box to be set up, not a standing one. */
export function setLock(store: Store, box: PlannedBox, locked: boolean): void {
  const { site, words } = store.state;
  if (!site) return;
  const facing = Math.round(box.card.facing.used);
  const what = locked ? { locked: true, bird: box.bird, facing } : { locked: null, facing: null };
  const drawn = site.features.some(({ id }) => id === box.post);
  const done = drawn ? setPost(site, box.post, what) : addPost(site, box.position, { ...what });
  if ('site' in done) follow(store, box, drawn ? box.post : (done.site.features.at(-1)?.id ?? box.post), locked);
  applied(store, done, locked ? words.posts.locked(box.number, facing) : words.posts.unlocked(box.number));
}

/** Frees every locked box at once, with its facing: one step. */
export function unlockAll(store: Store): void {
  const { site, words } = store.state;
  if (!site) return;
  const locked = lockedPosts(site);
  const done = locked.reduce<Edit>(
    (now, id) => ('refused' in now ? now : setPost(now.site, id, { locked: null, facing: null })),
    { site, sentence: '' },
  );
  applied(store, done, words.posts.unlockedAll(locked.length));
}

/** Ids of the posts that every plan keeps though they do not stand yet. */
export function lockedPosts(site: Site): string[] {
  return site.features.filter((one) => one.kind === 'post' && isLocked(one)).map(({ id }) => id);
}

/** The plan on the screen until the new one is there: a suggested place has become a drawn post. */
function follow(store: Store, { post }: PlannedBox, now: string, locked: boolean): void {
  const { plan } = store.state;
  if (!plan) return;
  const boxes = plan.boxes.map((box) => (box.post === post ? { ...box, post: now, locked } : box));
  store.set({ plan: { ...plan, boxes } });
}
