/** Keeping, taking up and numbering plans in a window's store, with the real engine in the same thread. */
import { describe, expect, it } from 'vitest';
import { redo, undo } from '../../../src/app/actions/edit.ts';
import { dropKept, keepPlan, takeKept } from '../../../src/app/actions/kept-plans.ts';
import { giveNumber } from '../../../src/app/actions/number.ts';
import { replan } from '../../../src/app/actions/plan.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import type { Handlers } from '../../../src/app/engine/serve.ts';
import { bindingOf } from '../../../src/app/map/overlays/binding-shapes.ts';
import { leavesPlan } from '../../../src/app/same-plan.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { distance } from '../../../src/geometry/point.ts';
import { differences } from '../../../src/plan/kept.ts';
import { makePlan } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';
import { smallSite } from '../../browser/sites.ts';
import { done } from '../edits/make.ts';
import { workerPort } from './worker-port.ts';

/** A store with a plan of the small site; counts the plans asked for. */
async function opened(change: (site: Site) => Site = (site) => site) {
  const asked: Site[] = [];
  const handlers = {
    plan: ({ site }: { site: Site }) => {
      asked.push(site);
      return makePlan(site, { proof: 'none' });
    },
    rescore: () => [],
  } as unknown as Handlers;
  const store = new Store(new EngineClient(() => workerPort(handlers)), memoryShelf());
  const site = change(readSite(smallSite, 'small.geojson').site!);
  store.set({ site, siteId: 'test', units: site.settings.units });
  await replan(store);
  return { store, asked, settled: () => until(() => store.state.planOf === store.state.site && isAtRest(store)) };
}

const isAtRest = (store: Store) => store.state.engine.at === 'rest';

async function until(isSo: () => boolean): Promise<void> {
  const end = Date.now() + 10_000;
  while (!isSo()) {
    if (Date.now() > end) throw new Error('waited 10 s');
    await new Promise((r) => setTimeout(r, 5));
  }
}

const walk = ({ state }: Store) => state.plan!.boxes.map((box) => box.post);

describe('keeping a plan', () => {
  it('is one step that can be undone and asks for no new plan', async () => {
    const { store, asked } = await opened();
    const before = store.state;
    keepPlan(store, '  Mine ');
    expect(store.state.site!.settings.plans).toMatchObject([{ name: 'Mine', sites: before.plan!.sites }]);
    expect(store.state.plan).toBe(before.plan);
    expect(store.state.planOf).toBe(store.state.site);
    undo(store);
    expect(store.state.site).toBe(before.site);
    expect(store.state.planOf).toBe(before.site);
    redo(store);
    dropKept(store, 'Mine');
    expect(store.state.site!.settings.plans).toEqual([]);
    expect(store.state.past).toHaveLength(2);
    expect(asked).toHaveLength(1);
    expect(store.state.engine.at).toBe('rest');
  });

  it('waits for the plan of the site as it is now', async () => {
    const { store, settled } = await opened();
    store.set({ planOf: null });
    keepPlan(store, 'Too early');
    expect(store.state.site!.settings.plans).toEqual([]);
    void replan(store);
    await settled();
    keepPlan(store, '');
    expect(store.state.site!.settings.plans.map(({ name }) => name)).toEqual(['Plan 1']);
  });

  it('compares with another and takes the first up again', async () => {
    const { store, settled } = await opened();
    const first = walk(store);
    keepPlan(store, 'Many');
    const fewer = store.state.site!.settings.wanted.map((wish) => ({ ...wish, sites: 1 }));
    store.set({ site: done(setSetting(store.state.site!, 'wanted', fewer)), history: null });
    void replan(store);
    await settled();
    const now = store.state.plan!;
    expect(now.boxes.length).toBeLessThan(first.length);
    const [kept] = store.state.site!.settings.plans;
    const apart = differences(kept!, now.boxes);
    expect(apart.onlyKept.length - apart.onlyNow.length).toBe(first.length - now.boxes.length);
    takeKept(store, 'Many');
    await settled();
    expect(walk(store)).toEqual(first);
    expect(differences(kept!, store.state.plan!.boxes)).toEqual({ onlyKept: [], onlyNow: [], renumbered: 0 });
  });
});

describe('numbering by hand', () => {
  it('shows at once, says that printed sheets change, is undone, and the new plan keeps it', async () => {
    const { store, settled } = await opened();
    const before = walk(store);
    expect(before.length).toBeGreaterThan(2);
    store.set({ selection: { of: 'box', number: before.length } });
    giveNumber(store, before.at(-1)!, 1);
    const moved = [before.at(-1)!, ...before.slice(0, -1)];
    expect(walk(store)).toEqual(moved);
    expect(store.state.selection).toEqual({ of: 'box', number: 1 });
    expect(store.state.past.at(-1)?.sentence).toContain('Sheets printed before no longer fit');
    await settled();
    expect(walk(store)).toEqual(moved);
    expect(store.state.plan!.rounds[0]!.legs.length).toBeGreaterThan(0);
    undo(store);
    await settled();
    expect(walk(store)).toEqual(before);
  });

  it('twice in a row counts from the numbers on the screen', async () => {
    const { store, settled } = await opened();
    const [a, b, c, ...rest] = walk(store);
    giveNumber(store, a!, 2);
    giveNumber(store, a!, 3);
    expect(walk(store)).toEqual([b, c, a, ...rest]);
    await settled();
    expect(walk(store)).toEqual([b, c, a, ...rest]);
  });
});

describe('what the spacing binds', () => {
  it('is nothing where all found a place, else pairs that keep the rule with an eighth to spare at most', async () => {
    const plenty = await opened((site) => done(setSetting(site, 'wanted', [{ bird: 'eastern-bluebird', sites: 1 }])));
    const few = plenty.store.state;
    expect(bindingOf(few.plan!, few.site!.settings)).toBeNull();
    const wanted = [{ bird: 'eastern-bluebird', sites: 50 }];
    const grid = (site: Site) => done(setSetting(done(setSetting(site, 'wanted', wanted)), 'suggestGrid', 15));
    const { plan, site } = (await opened(grid)).store.state;
    const bound = bindingOf(plan!, site!.settings)!;
    expect(bound.pairs.length).toBeGreaterThan(0);
    for (const { a, b, metres, needed } of bound.pairs) {
      expect(metres).toBeCloseTo(distance(a.at, b.at), 9);
      expect(metres).toBeGreaterThanOrEqual(needed - 0.005);
      expect(metres).toBeLessThanOrEqual(needed * 1.125);
      expect(needed).toBeCloseTo(91.44, 2);
    }
  });
});

describe('leavesPlan', () => {
  it('tells kept plans from what decides a plan', () => {
    const site = readSite(smallSite, 'small.geojson').site!;
    const copy = { ...site, settings: { ...site.settings, plans: [] }, features: [...site.features] };
    expect(leavesPlan(site, copy)).toBe(true);
    expect(leavesPlan(site, done(setSetting(site, 'walkers', 2)))).toBe(false);
    expect(leavesPlan(site, { ...site, features: site.features.slice(1) })).toBe(false);
    expect(leavesPlan(null, site)).toBe(false);
  });
});
