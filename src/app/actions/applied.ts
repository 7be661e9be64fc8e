/** Makes an edit's site the open one, or says why it was refused. */
import type { Edit } from '../../edits/edit.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { say } from './say.ts';

/** True when it was made. `sentence` is said instead of the edit's own. */
export function applied(store: Store, done: Edit, sentence?: string): boolean {
  if ('refused' in done) {
    say(store, 'trouble', done.refused);
    return false;
  }
  edit(store, done.site, sentence ?? `${done.sentence}.`);
  return true;
}
