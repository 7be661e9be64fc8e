/** Moving, nudging and locking boxes with the real engine in the same thread. */
import { describe, expect, it, vi } from 'vitest';
import { undo } from '../../../src/app/actions/edit.ts';
import { dropHand, giveUpHand, moveHand, takeHand } from '../../../src/app/actions/hand.ts';
import { setLock } from '../../../src/app/actions/lock.ts';
import { findNudge, takeNudge } from '../../../src/app/actions/nudge.ts';
import { replan } from '../../../src/app/actions/plan.ts';
import { weakestWords, weakRows } from '../../../src/app/elements/post-card/card-words.ts';
import { lie } from '../../../src/app/engine/calls/lie.ts';
import { nudge } from '../../../src/app/engine/calls/nudge.ts';
import { rescore, scorePost } from '../../../src/app/engine/calls/score-post.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import type { Handlers } from '../../../src/app/engine/serve.ts';
import { lieAreas, lieContours } from '../../../src/app/map/overlays/lie-shapes.ts';
import { shownPlan } from '../../../src/app/shown-plan.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { en } from '../../../src/app/words/en.ts';
import { distance } from '../../../src/geometry/point.ts';
import type { LandScores } from '../../../src/placement/lie-of-the-land.ts';
import { makePlan } from '../../../src/plan.ts';
import type { PlannedBox } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';
import { smallSite } from '../../browser/sites.ts';
import { workerPort } from './worker-port.ts';

const degree = 111_195;
const pond = {
  type: 'Feature',
  id: 'pond',
  properties: { kind: 'water', name: 'Test Pond' },
  geometry: {
    type: 'Polygon',
    coordinates: [
      [
        [-60, -140],
        [-30, -140],
        [-30, -110],
        [-60, -110],
        [-60, -140],
      ].map(([x, y]) => [((x as number) / degree) * 1.305, 40 + (y as number) / degree]),
    ],
  },
};

function site(
  change: (file: { features: unknown[]; meadowpost: Record<string, unknown> }) => void = () => undefined,
): Site {
  const file = JSON.parse(smallSite);
  file.features.push(pond);
  change(file);
  const read = readSite(JSON.stringify(file), 'test.geojson');
  if (!read.site) throw new Error('the test site cannot be read');
  return read.site;
}

/** Of a question that nobody cancels. */
const patient = { signal: new AbortController().signal };

/** A window's store with a plan; counts the cards asked for. */
async function opened(open: Site) {
  const asked: unknown[] = [];
  const handlers = {
    plan: ({ site: s }: { site: Site }) => makePlan(s, { proof: 'none' }),
    scorePost: (question: Parameters<typeof scorePost>[0]) => {
      asked.push(question);
      return scorePost(question);
    },
    rescore,
    nudge,
  } as unknown as Handlers;
  const store = new Store(new EngineClient(() => workerPort(handlers)), memoryShelf());
  const plan = await makePlan(open, { proof: 'none' });
  store.set({ site: open, siteId: 'test', plan, planOf: open, units: open.settings.units });
  return { store, asked, box: (number: number) => plan.boxes.find((b) => b.number === number) as PlannedBox };
}

async function until(done: () => boolean): Promise<void> {
  const end = Date.now() + 10_000;
  while (!done()) {
    if (Date.now() > end) throw new Error('waited 10 s');
    await new Promise((r) => setTimeout(r, 5));
  }
}

describe('a box in the hand', () => {
  it('is scored where it is, shown in the plan, and put down with one edit that can be undone', async () => {
    const open = site();
    const { store, box } = await opened(open);
    const moved = box(1);
    takeHand(store, moved);
    const there = { x: moved.at.x - 6, y: moved.at.y };
    moveHand(store, there);
    await until(() => store.state.posts.hand?.cardAt === store.state.posts.hand?.at);
    const alone = scorePost({ site: open, post: moved.post, bird: moved.bird, ...there, who: false });
    expect(store.state.posts.hand?.card?.score).toBe(alone.card.score);
    expect(shownPlan(store.state)?.boxes.find((b) => b.post === moved.post)?.at).toEqual(there);
    expect(store.state.site).toBe(open);
    await dropHand(store);
    expect(store.state.past).toHaveLength(1);
    const score = Math.round(alone.card.score);
    const was = Math.round(moved.card.score);
    const said = score === was ? `It scores ${score} as before.` : `It now scores ${score}, was ${was}.`;
    expect(store.state.past[0]?.sentence).toBe(
      `Box 1 moved 6 m west. ${said} It is locked there: the next plan keeps it.`,
    );
    expect(store.state.posts.hand).toBeNull();
    const features = store.state.site?.features.filter((f) => !open.features.includes(f));
    expect(features?.map((f) => f.id)).toEqual([moved.post]);
    undo(store);
    expect(store.state.site).toBe(open);
  });

  it('asks one question at a time and ends with the newest place', async () => {
    const { store, asked, box } = await opened(site());
    const moved = box(2);
    takeHand(store, moved);
    for (let i = 1; i <= 60; i++) moveHand(store, { x: moved.at.x + i / 10, y: moved.at.y });
    await until(() => store.state.posts.hand?.cardAt === store.state.posts.hand?.at);
    expect(asked.length).toBeLessThanOrEqual(3);
    expect(store.state.posts.hand?.cardAt.x).toBeCloseTo(moved.at.x + 6, 9);
    giveUpHand(store);
    expect(store.state.past).toEqual([]);
  });

  it('says that it stands in water, and keeps the move', async () => {
    const { store, box } = await opened(site());
    const moved = box(2);
    takeHand(store, moved);
    moveHand(store, { x: -45, y: -125 });
    await until(() => store.state.posts.hand?.forbidden !== null);
    expect(store.state.posts.hand?.forbidden).toBe('in water (Test Pond)');
    await dropHand(store);
    expect(store.state.past[0]?.sentence).toContain('in water (Test Pond): no box may stand there');
    expect(store.state.past).toHaveLength(1);
    await until(() => store.state.engine.at === 'rest');
    expect(store.state.plan?.leftOut.find((left) => left.post === moved.post)?.code).toBe('forbidden');
  });

  it('makes a drawn post of a suggested one', async () => {
    const open = site((file) => {
      file.features = file.features.filter((f) => !(f as { id: string }).id.startsWith('p'));
      file.features.push(pond);
      file.meadowpost.suggestGrid = 60;
    });
    const { store, box } = await opened(open);
    const moved = box(1);
    expect(moved.post).toContain('grid');
    takeHand(store, moved);
    moveHand(store, { x: moved.at.x + 3, y: moved.at.y + 3 });
    await dropHand(store);
    const post = store.state.site?.features.at(-1);
    expect(post?.kind).toBe('post');
    expect(post?.properties.bird).toBe(moved.bird);
    expect(store.state.site?.features).toHaveLength(open.features.length + 1);
  });

  it('puts nothing down that was not moved', async () => {
    const { store, box } = await opened(site());
    takeHand(store, box(1));
    await dropHand(store);
    expect(store.state.past).toEqual([]);
    expect(store.state.posts.hand).toBeNull();
  });
});

describe('a plan that comes while a box is held', () => {
  it('waits until the hand is empty', async () => {
    const { store, box } = await opened(site());
    const before = store.state.plan;
    takeHand(store, box(1));
    const done = replan(store);
    // Asked after it, so answered after it.
    await store.engine.call('plan', { site: store.state.site! });
    expect(store.state.plan).toBe(before);
    giveUpHand(store);
    await done;
    expect(store.state.plan).not.toBe(before);
    expect(store.state.engine.at).toBe('rest');
  });
});

describe('a nudge', () => {
  it('and forty cards let the score of a hand pass', async () => {
    const { store } = await opened(site());
    const { engine, state } = store;
    const asked = { site: state.site!, post: 'p2', bird: 'eastern-bluebird', x: -20, y: 60 };
    const order: string[] = [];
    const done = (what: string) => () => order.push(what);
    const posts = Array.from({ length: 40 }, (_, i) => ({ ...asked, post: `p${i}` }));
    await Promise.all([
      engine.call('nudge', { ...asked, reach: 20, others: [], partner: null }).then(done('nudge')),
      engine.call('rescore', { site: state.site!, posts }).then(done('cards')),
      engine.call('scorePost', { ...asked, who: false }).then(done('score')),
    ]);
    expect(order[0]).toBe('score');
  });

  it('never scores less, stays within reach, and comes no nearer to a neighbor than is asked', async () => {
    const open = site();
    const here = { x: -20, y: 60 };
    const other = { x: -20, y: 40 };
    const question = { site: open, post: 'p2', bird: 'eastern-bluebird', ...here, reach: 20, partner: null };
    const free = await nudge({ ...question, others: [] }, patient);
    const kept = await nudge({ ...question, others: [{ at: other, needed: 91 }] }, patient);
    const score = scorePost({ ...question, who: false }).card.score;
    for (const found of [free, kept]) {
      expect(found?.metres).toBeLessThanOrEqual(20 + 1e-6);
      expect(found?.score).toBeGreaterThanOrEqual(score - 1e-9);
      expect(found && scorePost({ ...question, ...found.at, who: false }).card.score).toBeCloseTo(
        found?.score ?? -1,
        9,
      );
    }
    expect(free?.gain).toBeGreaterThan(1);
    expect(kept && distance(kept.at, other)).toBeGreaterThanOrEqual(20 - 1e-9);
  });

  it('is asked again for a plan with other boxes, and stays for one with the same', async () => {
    const { store, box } = await opened(site());
    store.set({ selection: { of: 'box', number: 1 } });
    await findNudge(store);
    const { nudge: first } = store.state.posts;
    expect(first?.post).toBe(box(1).post);
    const call = vi.spyOn(store.engine, 'call');
    const again = (change: (boxes: PlannedBox[]) => PlannedBox[]) => {
      const plan = structuredClone(store.state.plan!);
      store.set({ plan: { ...plan, boxes: change([...plan.boxes]) } });
      return findNudge(store);
    };
    await again((boxes) => boxes);
    expect(call).not.toHaveBeenCalled();
    expect(store.state.posts.nudge).toEqual(first);
    await again((boxes) => boxes.filter((b) => b.number === 1 || b.number > 2));
    expect(call).toHaveBeenCalledTimes(1);
  });

  it('is found for the chosen box, taken with one call, and gains what it promised', async () => {
    const open = site((file) => {
      const near = file.features.find((f) => (f as { id: string }).id === 'p2') as {
        geometry: { coordinates: number[] };
      };
      near.geometry.coordinates = [(-20 / degree) * 1.305, 40 + 60 / degree];
    });
    const { store, box } = await opened(open);
    for (const number of [1, 2, 3]) {
      store.set({ selection: { of: 'box', number } });
      await findNudge(store);
      const best = store.state.posts.nudge?.best;
      if (!best) continue;
      const before = box(number);
      expect(best.gain).toBeGreaterThanOrEqual(1);
      expect(takeNudge(store)).toBe(true);
      await until(() => store.state.past.length === 1);
      const after = store.state.plan?.boxes.find((b) => b.post === before.post);
      expect(after?.card.score).toBeCloseTo(before.card.score + best.gain, 6);
      return;
    }
    throw new Error('no box of the test site can be nudged: the test shows nothing');
  });
});

describe('a lock', () => {
  it('keeps place, bird and facing, and can be opened again', async () => {
    const { store, box } = await opened(site());
    setLock(store, box(1), true);
    const post = () => store.state.site?.features.find((f) => f.id === box(1).post)?.properties;
    expect(post()).toMatchObject({
      state: 'candidate',
      locked: true,
      bird: box(1).bird,
      facing: Math.round(box(1).card.facing.used),
    });
    expect(store.state.plan?.boxes.find((b) => b.number === 1)).toMatchObject({ state: 'new', locked: true });
    setLock(store, box(1), false);
    expect(post()).not.toHaveProperty('locked');
    expect(post()?.facing).toBeUndefined();
  });
});

describe('the lie of the land', () => {
  const run = async (stop = new AbortController()) => {
    const passes: number[] = [];
    const scores = await lie(
      { site: site(), bird: 'eastern-bluebird' },
      { signal: stop.signal, partial: (part) => void passes.push((part as LandScores).coarse) },
    );
    return { passes, scores };
  };

  it('comes coarse first, is empty in water, and agrees with the card', async () => {
    const { passes, scores } = await run();
    expect(passes).toEqual([8, 4, 2]);
    expect(scores?.coarse).toBe(1);
    const { origin, cell, columns, values } = scores as LandScores;
    const index = (x: number, y: number) =>
      Math.floor((y - origin.y) / cell) * columns + Math.floor((x - origin.x) / cell);
    expect(values[index(-45, -125)]).toBeNaN();
    const i = index(-100, 0);
    const middle = { x: origin.x + ((i % columns) + 0.5) * cell, y: origin.y + (Math.floor(i / columns) + 0.5) * cell };
    const card = scorePost({ site: site(), post: 'none', bird: 'eastern-bluebird', ...middle, who: false }).card;
    expect(values[i]).toBeCloseTo(card.score, 3);
  });

  it('stops when it is no longer wanted', async () => {
    const stop = new AbortController();
    const running = run(stop);
    stop.abort();
    expect((await running).scores).toBeNull();
  });

  it('is drawn as areas one within the other; contours keep off the edge of what may hold a box', () => {
    const columns = 20;
    const rows = 12;
    const values = Float32Array.from({ length: columns * rows }, (_, i) => {
      const column = i % columns;
      return column < 3 ? Number.NaN : (column / columns) * 100;
    });
    const scores: LandScores = { origin: { x: 0, y: 0 }, cell: 10, columns, rows, values, coarse: 1 };
    const areas = lieAreas(scores, [0, 40, 70]);
    const west = areas.map(({ polygons }) => Math.min(...polygons.flat(2).map((p) => p.x)));
    expect(west[0]).toBeLessThan(west[1] as number);
    expect(west[1]).toBeLessThan(west[2] as number);
    const lines = lieContours(scores, areas);
    expect(lines.map((l) => l.value)).toEqual([40, 70]);
    for (const { line } of lines) for (const p of line) expect(p.x).toBeGreaterThan(35);
  });
});

describe('the weakest', () => {
  it('is named only where something falls short', async () => {
    const { box } = await opened(site());
    const { card } = box(1);
    const rows = card.rows.map((row) => ({ ...row, score: row.score === null ? null : 0.97 }));
    expect(weakRows({ ...card, rows })).toEqual([]);
    expect(weakestWords({ ...card, rows }, en.posts)).toBeNull();
    const low = rows.map((row) => (row.id === card.weakest[0] ? { ...row, score: 0.4 } : row));
    expect(weakRows({ ...card, rows: low })).toEqual([card.weakest[0]]);
  });
});
