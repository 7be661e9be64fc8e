/** What people ask that cannot be done: each gives a plan or a clear reason, and ends. */
import { describe, expect, it } from 'vitest';
import { makePlan, type PlanOptions } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';

interface Thing {
  kind: string;
  id: string;
  at?: readonly [number, number];
  box?: readonly [number, number, number, number];
  [property: string]: unknown;
}

/** A site of 600 m by 600 m of short grass in meters around 41° N with further things; boxes are [west, south, east, north]. */
function field(things: readonly Thing[], settings: object = {}) {
  const place = (x: number, y: number) => [-81 + x / 84_000, 41 + y / 111_132];
  const lawn: Thing = { kind: 'short-grass', id: 'lawn', box: [-300, -300, 300, 300] };
  const features = [lawn, ...things].map(({ kind, id, at, box, ...rest }) => {
    const [w, s, e, n] = box ?? [0, 0, 0, 0];
    const ring = [place(w, s), place(e, s), place(e, n), place(w, n), place(w, s)];
    const geometry = at ? { type: 'Point', coordinates: place(...at) } : { type: 'Polygon', coordinates: [ring] };
    return { type: 'Feature', id, properties: { kind, ...rest }, geometry };
  });
  const meadowpost = { name: 'Field', region: 'eastern-north-america', minimumScore: 0, ...settings };
  return readSite(JSON.stringify({ type: 'FeatureCollection', meadowpost, features }), 'field').site!;
}

const post = (id: string, x: number, y: number, more: object = {}): Thing => ({
  kind: 'post',
  id,
  at: [x, y],
  ...more,
});
const wanted = (sites: number) => ({ wanted: [{ bird: 'eastern-bluebird', sites }] });
const plan = (site: ReturnType<typeof field>, options: PlanOptions = {}) =>
  makePlan(site, { proof: 'none', ...options });
const said = (made: Awaited<ReturnType<typeof plan>>) =>
  made.issues.map(({ sentence, fix }) => `${sentence} ${fix}`).join('\n');

describe('a plan or a reason', () => {
  it('more boxes than fit: those that fit, and the rule that binds', async () => {
    const row = Array.from({ length: 7 }, (_, i) => post(`p${i}`, -270 + i * 50, 0));
    const made = await plan(field(row, wanted(7)));
    expect(made.boxes.length).toBe(4);
    expect(said(made)).toMatch(/4 of 7 sites .*spacing rule leaves no room/);
    expect(made.leftOut.every(({ sentence }) => sentence !== '')).toBe(true);
  });

  it('boxes that must stay contradict each other: both are kept and named', async () => {
    for (const kept of [{ state: 'fixed' }, { locked: true }]) {
      const made = await plan(field([post('a', 0, 0, kept), post('b', 30, 0, kept)], wanted(1)));
      expect(made.boxes.map((box) => box.post).sort()).toEqual(['a', 'b']);
      expect(said(made)).toMatch(/a and b stand or are locked .*Move, unlock or retire/);
    }
  });

  it('no trailhead: a walk from the first box to the last', async () => {
    const made = await plan(field([post('a', 0, 0), post('b', 200, 0)], wanted(2)));
    expect(made.rounds[0]!.legs).toHaveLength(1);
    expect(said(made)).toMatch(/No trailhead is drawn.*Draw a trailhead/);
  });

  it('a trailhead in a pond: the nearest free ground, and how far off it is', async () => {
    const pond: Thing = { kind: 'water', id: 'pond', box: [-20, -20, 20, 20] };
    const gate: Thing = { kind: 'trailhead', id: 'gate', at: [0, 15] };
    const made = await plan(field([pond, gate, post('a', 100, 0), post('b', -150, 0)], wanted(2)));
    expect(made.boxes).toHaveLength(2);
    expect(made.rounds[0]!.metres).toBeGreaterThan(0);
    expect(said(made)).toMatch(/start stands where nobody can walk.* m away/);
  });

  it('zero candidates: none, and what to do', async () => {
    const made = await plan(field([], wanted(3)));
    expect(made.boxes).toEqual([]);
    expect(made.rounds).toEqual([]);
    expect(said(made)).toMatch(/no post to choose from.*grid of suggested ones/);
  });

  it('all below the least score: none, each with its score, and what to do', async () => {
    const made = await plan(field([post('a', 0, 0), post('b', 200, 0)], { ...wanted(2), minimumScore: 100 }));
    expect(made.boxes).toEqual([]);
    expect(made.leftOut.map(({ code }) => code)).toEqual(['low-score', 'low-score']);
    expect(said(made)).toMatch(/least score of 100.*Lower the least score/);
  });

  it('nothing wanted and only retired posts: no box, no throw', async () => {
    const made = await plan(field([post('a', 0, 0, { state: 'retired' })], { wanted: [] }));
    expect(made.boxes).toEqual([]);
    expect(made.leftOut.map(({ code }) => code)).toEqual(['retired']);
  });
});

describe('a proof that cannot be had', () => {
  const site = field([post('a', 0, 0), post('b', 200, 0), post('c', 40, 0)], wanted(2));

  it('cancelled: the good layout, said to be unproven', async () => {
    const made = await plan(site, {
      proof: 'quick',
      loadSolver: () => new Promise(() => undefined),
      shouldStop: () => true,
    });
    expect(made.boxes).toHaveLength(2);
    expect(made.proof).toMatchObject({ state: 'not-proven', bound: null });
    expect(made.proof.sentence).toMatch(/stopped/);
  });

  it('a solver that fails to load: the same', async () => {
    const made = await plan(site, { proof: 'quick', loadSolver: () => Promise.reject(new Error('404')) });
    expect(made.boxes).toHaveLength(2);
    expect(made.proof.state).toBe('not-proven');
    expect(made.proof.sentence).toMatch(/could not be loaded/);
  });
});
