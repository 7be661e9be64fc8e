/** Has the engine make the plan of the open site; a newer question cancels the older. */
import { wasAborted } from '../engine/client.ts';
import type { Store } from '../store.ts';

const running = new WeakMap<Store, AbortController>();

/** Starts a new plan at once. The old plan stays on the screen until the new one is there. */
export async function replan(store: Store): Promise<void> {
  running.get(store)?.abort();
  const { site, words } = store.state;
  if (!site) return;
  const stop = new AbortController();
  running.set(store, stop);
  const what = words.posts.choosing;
  store.set({ engine: { at: 'work', what, done: null, stop: () => stop.abort() } });
  try {
    const plan = await store.engine.call(
      'plan',
      { site },
      {
        signal: stop.signal,
        onProgress: (done, sentence) =>
          store.set({ engine: { at: 'work', what: sentence || what, done, stop: () => stop.abort() } }),
        onPartial: (early) => store.set({ plan: early, planOf: site }),
      },
    );
    if (running.get(store) === stop) store.set({ plan, planOf: site, engine: { at: 'rest' } });
  } catch (error) {
    if (running.get(store) !== stop) return;
    if (wasAborted(error)) store.set({ engine: { at: 'rest' } });
    else store.set({ engine: { at: 'trouble', sentence: error instanceof Error ? error.message : String(error) } });
  }
}
