/** Scores under a dragged border: while the hand holds it the boxes near by are scored for the land as it would be; nothing is changed. */

import { distance } from '../../geometry/point.ts';
import { makeFrame } from '../../ground/frame.ts';
import type { Plan, PlannedBox, PostCard } from '../../plan-types.ts';
import type { LonLat, Site } from '../../site/types.ts';
import type { Store } from '../store.ts';

/** Boxes so near to the hand follow, meters, and at most so many of them, nearest first; the rest follow when it lets go (ours). */
const reach = 250;
const most = 16;

interface Trial {
  /** Land and hand not yet asked about; the newest only. */
  next: { readonly site: Site; readonly at: LonLat } | null;
  /** The cards as they were, by post. */
  readonly before: Map<string, PostCard>;
}

const trials = new WeakMap<Store, Trial>();

/** Has the scores follow to `site`, the land with the dragged border where the hand is. One question at a time, the newest next. */
export function tryLand(store: Store, site: Site, at: LonLat): void {
  const running = trials.get(store);
  if (running) {
    const idle = running.next === null && !busy.has(running);
    running.next = { site, at };
    if (idle) void follow(store, running);
    return;
  }
  const trial: Trial = { next: { site, at }, before: new Map() };
  trials.set(store, trial);
  void follow(store, trial);
}

/** The hand let go. `kept`: the border stays there, and the cards with it until the plan is made again; else they go back. */
export function endTrial(store: Store, kept: boolean): void {
  const trial = trials.get(store);
  trials.delete(store);
  if (trial && !kept && trial.before.size > 0) putCards(store, trial.before);
}

const busy = new WeakSet<Trial>();

async function follow(store: Store, trial: Trial): Promise<void> {
  busy.add(trial);
  for (let asked = trial.next; asked && trials.get(store) === trial; asked = trial.next) {
    trial.next = null;
    const cards = await cardsFor(store, asked.site, asked.at);
    if (!cards || trials.get(store) !== trial) break;
    for (const box of store.state.plan?.boxes ?? [])
      if (cards.has(box.post) && !trial.before.has(box.post)) trial.before.set(box.post, box.card);
    putCards(store, cards);
  }
  busy.delete(trial);
}

/** Null when there is nothing to score, or the worker failed: the plan made after the drag says why. */
async function cardsFor(store: Store, site: Site, at: LonLat): Promise<Map<string, PostCard> | null> {
  const boxes = nearBoxes(store.state.plan, at);
  if (boxes.length === 0) return null;
  const posts = boxes.map(({ post, bird, at: { x, y } }) => ({ post, bird, x, y }));
  const cards = await store.engine.call('rescore', { site, posts }).catch(() => null);
  return cards && new Map(cards.map((card) => [card.post, card]));
}

function nearBoxes(plan: Plan | null, at: LonLat): PlannedBox[] {
  const frame = makeFrame(at);
  const away = (box: PlannedBox) => distance({ x: 0, y: 0 }, frame.toPlane(box.position));
  return [...(plan?.boxes ?? [])]
    .map((box) => ({ box, far: away(box) }))
    .filter(({ far }) => far <= reach)
    .sort((a, b) => a.far - b.far)
    .slice(0, most)
    .map(({ box }) => box);
}

function putCards(store: Store, cards: ReadonlyMap<string, PostCard>): void {
  const { plan } = store.state;
  if (!plan) return;
  const boxes = plan.boxes.map((box) => {
    const card = cards.get(box.post);
    return card ? { ...box, card: { ...card, who: box.card.who } } : box;
  });
  store.set({ plan: { ...plan, boxes } });
}
