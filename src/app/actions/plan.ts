/** Has the engine make the plan of the open site; a newer question cancels the older. */
import type { Plan } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import { wasAborted } from '../engine/client.ts';
import { boxByNumber } from '../map/box-look.ts';
import { leavesPlan } from '../same-plan.ts';
import type { AppState, Selection } from '../state.ts';
import type { Store } from '../store.ts';

const running = new WeakMap<Store, AbortController>();

/** After an edit the plan waits for this much quiet, ms: the next stroke would only cancel it (ours). */
const quiet = 350;

/** After the first plan of a site the page is left to paint it for so long, ms (ours). */
const calm = 800;

/**
 * Starts a new plan. The old one stays on the screen until the new one is there. After an edit its boxes are scored again at once, and
 * the choice itself waits until the hand rests.
 */
export async function replan(store: Store): Promise<void> {
  running.get(store)?.abort();
  const { site, words, plan, planOf } = store.state;
  if (!site) return;
  const stop = new AbortController();
  running.set(store, stop);
  const what = words.posts.choosing;
  const work = (done: number | null, sentence: string) =>
    store.set({ engine: { at: 'work', what: sentence || what, done, stop: () => stop.abort() } });
  let newest: Plan | null = null;
  const put = async (coming: Plan) => {
    newest = coming;
    if (store.state.planOf === null) setTimeout(() => warm(store, site, coming), calm);
    if (store.state.posts.hand) await handRests(store);
    if (running.get(store) === stop && newest === coming) show(store, coming, site);
  };
  work(null, what);
  try {
    if (plan && planOf && planOf !== site) {
      void rescore(store, site, plan, stop.signal);
      await rest(stop.signal);
    }
    const made = await store.engine.call('plan', { site }, { signal: stop.signal, onProgress: work, onPartial: put });
    await put(made);
    if (running.get(store) === stop) store.set({ engine: { at: 'rest' } });
  } catch (error) {
    if (running.get(store) !== stop) return;
    if (wasAborted(error)) store.set({ engine: { at: 'rest' } });
    else store.set({ engine: { at: 'trouble', sentence: error instanceof Error ? error.message : String(error) } });
  }
}

/** Ends when the hand is empty: a new plan would number the box in it anew, and have the map painted under it. */
function handRests(store: Store): Promise<void> {
  return new Promise((resolve) => {
    const stop = store.subscribe(({ posts }) => {
      if (posts.hand) return;
      stop();
      resolve();
    });
  });
}

/** The worker at hand makes the land of a newly opened site ready: the first drag and the first lie of the land find it so. */
function warm(store: Store, site: Site, { boxes: [box] }: Plan): void {
  if (!box || store.state.planOf !== site) return;
  const { post, bird, at } = box;
  store.engine.call('scorePost', { site, post, bird, ...at, who: false }).catch(() => undefined);
}

/** Puts a plan on the screen; the chosen box stays chosen under whatever number its post has now. Keeping a plan meanwhile changed the site, not its plan. */
function show(store: Store, plan: Plan, site: Site): void {
  const now = store.state.site;
  store.set({ plan, planOf: leavesPlan(site, now) ? now : site, selection: sameSelection(store.state, plan) });
}

function sameSelection({ selection, plan: before }: AppState, plan: Plan): Selection | null {
  if (!selection || !before) return selection;
  const post = selection.of === 'box' ? boxByNumber(before, selection.number)?.post : null;
  if (!post) return selection;
  const box = plan.boxes.find((b) => b.post === post);
  if (box)
    return box.number === (selection as { number: number }).number ? selection : { of: 'box', number: box.number };
  return plan.leftOut.some((left) => left.post === post) ? { of: 'post', id: post } : selection;
}

/** The cards of the plan on the screen for the land as it is now. */
async function rescore(store: Store, site: Site, plan: Plan, signal: AbortSignal): Promise<void> {
  const posts = plan.boxes.map(({ post, bird, at }) => ({ post, bird, x: at.x, y: at.y }));
  if (posts.length === 0) return;
  try {
    const cards = await store.engine.call('rescore', { site, posts }, { signal });
    if (signal.aborted || store.state.plan !== plan) return;
    const boxes = plan.boxes.map((box, i) => {
      const card = cards[i];
      return card ? { ...box, card: { ...card, who: box.card.who } } : box;
    });
    store.set({ plan: { ...plan, boxes } });
  } catch {
    // The plan that follows says what is wrong.
  }
}

function rest(signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    const done = setTimeout(resolve, quiet);
    signal.addEventListener('abort', () => {
      clearTimeout(done);
      reject(new DOMException('cancelled', 'AbortError'));
    });
  });
}
