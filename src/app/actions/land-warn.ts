/** Points out at once what a new or moved thing gets wrong on the land: a post on a roof, in water, on off-limits ground. */
import type { AreaKind } from '../../site/types.ts';
import { covers } from '../map/drawing/thing-at.ts';
import type { Store } from '../store.ts';
import { undo } from './edit.ts';
import { say } from './say.ts';

/** Ground where no post stands: it stays where it was put, and is said to be of no use there. */
const noPosts: readonly AreaKind[] = ['building', 'water', 'paved', 'off-limits'];

/** Says so when the post of that id stands where none can. */
export function warnOfPlace(store: Store, id: string): void {
  const { site, words } = store.state;
  const post = site?.features.find((feature) => feature.id === id);
  if (!site || post?.kind !== 'post' || post.geometry?.type !== 'Point') return;
  const at = post.geometry.coordinates as [number, number];
  const under = site.features.find((f) => (noPosts as readonly string[]).includes(f.kind) && covers(f, at));
  if (!under) return;
  say(store, 'trouble', words.land.postOn(under), { word: words.shell.undo, run: () => undo(store) });
}
