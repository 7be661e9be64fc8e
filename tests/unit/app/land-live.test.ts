/** Scores under a dragged border, with the real engine in the same thread. */
import { describe, expect, it, vi } from 'vitest';
import { endTrial, tryLand } from '../../../src/app/actions/land-live.ts';
import { rescore, scorePost } from '../../../src/app/engine/calls/score-post.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import type { Handlers } from '../../../src/app/engine/serve.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { moveVertex } from '../../../src/edits/move-vertex.ts';
import { makePlan } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';
import type { LonLat, Site } from '../../../src/site/types.ts';
import { smallSite } from '../../browser/sites.ts';
import { workerPort } from './worker-port.ts';

const degree = 111_195;
const at = (x: number, y: number): LonLat => [(x / degree) * 1.305, 40 + y / degree];

async function opened() {
  const asked: unknown[] = [];
  const handlers = {
    rescore: (...question: Parameters<typeof rescore>) => {
      asked.push(question[0]);
      return rescore(...question);
    },
  } as unknown as Handlers;
  const { site } = readSite(smallSite, 'test.geojson');
  if (!site) throw new Error('the test site cannot be read');
  const store = new Store(new EngineClient(() => workerPort(handlers)), memoryShelf());
  const plan = await makePlan(site, { proof: 'none' });
  store.set({ site, plan, planOf: site });
  return { store, site, plan, asked };
}

/** The woods' south-west corner pulled down to `y`. */
function pulled(site: Site, y: number): Site {
  const edit = moveVertex(site, 'woods', { chain: 0, corner: 0 }, at(-250, y), { shared: false });
  if ('refused' in edit) throw new Error(edit.refused);
  return edit.site;
}

const scores = (store: Store) => store.state.plan!.boxes.map(({ card }) => card.score);

describe('a woods corner in the hand', () => {
  it('re-scores the boxes near it for the land as it would be, the newest place last, and changes nothing else', async () => {
    const { store, site, plan, asked } = await opened();
    const before = scores(store);
    for (const y of [60, 20, -20, -60]) tryLand(store, pulled(site, y), at(-200, y));
    await vi.waitFor(() => expect(scores(store)).not.toEqual(before));
    await vi.waitFor(() => expect(asked.length).toBe(2));
    await vi.waitFor(async () => {
      const after = await makePlan(pulled(site, -60), { proof: 'none' });
      const box = plan.boxes.find(({ post }) => post === 'p1')!;
      const { card } = scorePost({ site: pulled(site, -60), post: 'p1', bird: box.bird, ...box.at, who: false });
      expect(after.boxes.length).toBeGreaterThan(0);
      expect(store.state.plan!.boxes.find(({ post }) => post === 'p1')!.card.score).toBeCloseTo(card.score, 6);
    });
    expect(store.state.site).toBe(site);
    expect(store.state.planOf).toBe(site);
    const far = plan.boxes.find(({ post }) => post === 'p3')!;
    expect(store.state.plan!.boxes.find(({ post }) => post === 'p3')!.card).toBe(far.card);
  });

  it('puts every card back when the hand gives up, also while a question is open', async () => {
    const { store, site, plan } = await opened();
    tryLand(store, pulled(site, -20), at(-200, -20));
    await vi.waitFor(() => expect(scores(store)).not.toEqual(plan.boxes.map(({ card }) => card.score)));
    tryLand(store, pulled(site, -60), at(-200, -60));
    endTrial(store, false);
    await new Promise((done) => setTimeout(done, 400));
    expect(scores(store)).toEqual(plan.boxes.map(({ card }) => card.score));
  });

  it('lets the cards stand when the border was moved', async () => {
    const { store, site } = await opened();
    const before = scores(store);
    tryLand(store, pulled(site, -20), at(-200, -20));
    await vi.waitFor(() => expect(scores(store)).not.toEqual(before));
    const shown = scores(store);
    endTrial(store, true);
    expect(scores(store)).toEqual(shown);
  });
});
