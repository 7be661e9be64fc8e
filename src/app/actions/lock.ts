/** Locks a box where it stands, with its facing; or lets the choice move it again. */
import { addPost } from '../../edits/add-post.ts';
import { setPost } from '../../edits/set-post.ts';
import type { PlannedBox } from '../../plan-types.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { say } from './say.ts';

/** A locked box keeps its place, its bird and its facing in every plan. */
export function setLock(store: Store, box: PlannedBox, locked: boolean): void {
  const { site, words } = store.state;
  if (!site) return;
  const facing = Math.round(box.card.facing.used);
  const what = locked
    ? ({ state: 'fixed', bird: box.bird, facing } as const)
    : ({ state: 'candidate', facing: null } as const);
  const drawn = site.features.some(({ id }) => id === box.post);
  const done = drawn ? setPost(site, box.post, what) : addPost(site, box.position, { ...what });
  if ('refused' in done) {
    say(store, 'trouble', done.refused);
    return;
  }
  edit(store, done.site, locked ? words.posts.locked(box.number, facing) : words.posts.unlocked(box.number));
}
