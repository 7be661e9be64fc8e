/** The lie of the land: asked for while its layer is on, again when the land or the bird changes; an older question is cancelled. */
import type { Site } from '../../site/types.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { setPosts } from './posts-state.ts';

const running = new WeakMap<Store, { readonly site: Site; readonly bird: string; readonly stop: AbortController }>();

/** Quiet time after an edit before the picture is made again, ms (ours). */
const quiet = 250;

/** Which bird the picture is for: the one asked for, the chosen box's, else the first wanted. */
export function lieBirdOf({ posts, plan, site }: AppState): string | null {
  return posts.lieBird ?? site?.settings.wanted[0]?.bird ?? plan?.boxes[0]?.bird ?? null;
}

/** Asks for the picture the state wants, unless it is there or on its way; stops what nobody wants any more. */
export function followLie(store: Store): void {
  const { state } = store;
  const bird = lieBirdOf(state);
  const { site } = state;
  const wanted = state.ground === 'lie' && bird !== null && site !== null;
  const now = running.get(store);
  if (now && wanted && now.site === site && now.bird === bird) return;
  now?.stop.abort();
  running.delete(store);
  if (!wanted || (state.posts.lie?.of === site && state.posts.lie.bird === bird && state.posts.lie.scores.coarse === 1))
    return;
  const stop = new AbortController();
  running.set(store, { site, bird, stop });
  if (now) setTimeout(() => !stop.signal.aborted && void ask(store, site, bird, stop), quiet);
  else void ask(store, site, bird, stop);
}

export function setLieBird(store: Store, lieBird: string): void {
  setPosts(store, { lieBird });
}

async function ask(store: Store, site: Site, bird: string, stop: AbortController): Promise<void> {
  const show = (scores: import('../../placement/lie-of-the-land.ts').LandScores | null) => {
    if (scores && !stop.signal.aborted) setPosts(store, { lie: { bird, of: site, scores } });
  };
  try {
    show(await store.engine.call('lie', { site, bird }, { signal: stop.signal, onPartial: show }));
  } catch {
    // Cancelled, or the engine failed: the picture stays as it is, and the next change asks again.
  } finally {
    if (running.get(store)?.stop === stop) running.delete(store);
  }
}
