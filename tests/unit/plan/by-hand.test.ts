/** What a person sets by hand holds in the plan: numbers, direction, locked boxes, and a kept plan taken up again. */
import { describe, expect, it } from 'vitest';
import { dropPlan, keepPlan } from '../../../src/edits/keep-plan.ts';
import { movePost } from '../../../src/edits/move-post.ts';
import { numberByWalk, numberPost } from '../../../src/edits/number-post.ts';
import { setPost } from '../../../src/edits/set-post.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { takePlan } from '../../../src/edits/take-plan.ts';
import { keptPlan } from '../../../src/plan/kept.ts';
import { makePlan } from '../../../src/plan.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { done } from '../edits/make.ts';

/** A lawn of 1200 m by 600 m at 41° N with eight posts on a ring 200 m apart and a trailhead south of it. */
function ring(settings: object = {}): Site {
  const place = (x: number, y: number) => [-81 + x / 84_000, 41 + y / 111_000];
  const feature = (id: string, kind: string, geometry: object, more: object = {}) => ({
    type: 'Feature',
    id,
    properties: { kind, ...more },
    geometry,
  });
  const lawn = [place(-600, -300), place(600, -300), place(600, 300), place(-600, 300), place(-600, -300)];
  const posts = Array.from({ length: 8 }, (_, i) => {
    const turn = (i * Math.PI) / 4;
    return feature(`p${i}`, 'post', { type: 'Point', coordinates: place(250 * Math.sin(turn), 250 * Math.cos(turn)) });
  });
  const text = JSON.stringify({
    type: 'FeatureCollection',
    meadowpost: {
      name: 'Ring',
      region: 'eastern-north-america',
      units: 'metric',
      wanted: [{ bird: 'eastern-bluebird', sites: 8 }],
      minimumScore: 0,
      ...settings,
    },
    features: [
      feature('lawn', 'short-grass', { type: 'Polygon', coordinates: [lawn] }),
      feature('gate', 'trailhead', { type: 'Point', coordinates: place(0, -290) }),
      ...posts,
    ],
  });
  return readSite(text, 'ring').site!;
}

const walkOf = (plan: Plan) => [...plan.boxes].sort((a, b) => a.number - b.number).map((box) => box.post);
const plans = (site: Site) => makePlan(site, { proof: 'none' });
const said = (plan: Plan) => plan.issues.filter(({ id }) => id === 'order-by-hand').map(({ sentence }) => sentence);
/** Twice the area the walk encloses, east × north: above 0 is counterclockwise. */
const turned = ({ rounds }: Plan) =>
  rounds[0]!.legs
    .flatMap((leg) => leg.line)
    .reduce((sum, p, i, all) => {
      const q = all[(i + 1) % all.length]!;
      return sum + p.x * q.y - q.x * p.y;
    }, 0);

describe('numbers set by hand', () => {
  it('number the walk, and the length is judged against the shortest', async () => {
    const site = ring();
    const before = await plans(site);
    const walk = walkOf(before);
    const after = await plans(done(numberPost(site, walk, walk[6]!, 2)));
    expect(walkOf(after)).toEqual([walk[0], walk[6], ...walk.slice(1, 6), walk[7]]);
    expect(said(after)).toEqual([]);
    expect(after.rounds[0]!.metres).toBeGreaterThan(before.rounds[0]!.metres);
    expect(after.rounds[0]!.gap).toBeGreaterThan(0.05);
  });

  it('survive a new plan where they can, and it says where they cannot', async () => {
    const site = ring();
    const walk = walkOf(await plans(site));
    const byHand = done(numberPost(site, walk, walk[7]!, 1));
    const without = done(setPost(byHand, walk[3]!, { state: 'retired' }));
    const fewer = await plans(without);
    expect(walkOf(fewer)).toEqual([walk[7], walk[0], walk[1], walk[2], walk[4], walk[5], walk[6]]);
    expect(said(fewer)).toEqual([expect.stringContaining('1 of its 8 boxes')]);
    const back = done(numberByWalk(without));
    expect(back.settings.order).toEqual([]);
    expect(said(await plans(back))).toEqual([]);
  });

  it('are refused, or said not to hold, with several walkers', async () => {
    const site = ring();
    const walk = walkOf(await plans(site));
    const byHand = done(numberPost(site, walk, walk[7]!, 1));
    const two = done(setSetting(byHand, 'walkers', 2));
    expect(numberPost(two, walk, walk[0]!, 3)).toEqual({ refused: expect.stringContaining('2 walkers') });
    expect(said(await plans(two))).toEqual([expect.stringContaining('one walker')]);
  });

  it('past the last is the last; below 1 is refused', () => {
    const site = ring();
    expect(done(numberPost(site, ['p1', 'p2', 'p3'], 'p1', 99)).settings.order).toEqual(['p2', 'p3', 'p1']);
    expect(numberPost(site, ['p1', 'p2'], 'p1', 0)).toHaveProperty('refused');
    expect(numberPost(site, ['p1', 'p2'], 'p1', 1.5)).toHaveProperty('refused');
  });
});

describe('the direction of the walk', () => {
  it('is the one asked for', async () => {
    expect(turned(await plans(ring({ direction: 'clockwise' })))).toBeLessThan(0);
    expect(turned(await plans(ring({ direction: 'counterclockwise' })))).toBeGreaterThan(0);
  });
});

describe('a locked box', () => {
  it('stays in every plan, is new and not standing, and is given up when unlocked', async () => {
    const site = ring({ wanted: [{ bird: 'eastern-bluebird', sites: 1 }] });
    const worst = (await plans(site)).leftOut.toSorted((a, b) => (a.score ?? 0) - (b.score ?? 0))[0]!.post;
    const locked = done(setPost(site, worst, { locked: true }));
    const [box, ...more] = (await plans(locked)).boxes;
    expect(more).toEqual([]);
    expect(box).toMatchObject({ post: worst, state: 'new', locked: true });
    const free = await plans(done(setPost(locked, worst, { locked: null })));
    expect(free.boxes[0]!.post).not.toBe(worst);
  });

  it('says nothing on a standing or retired one', async () => {
    const site = done(setPost(ring(), 'p1', { state: 'fixed', locked: true }));
    const box = (await plans(site)).boxes.find(({ post }) => post === 'p1')!;
    expect(box.state).toBe('standing');
    expect(box.locked).toBeUndefined();
    const retired = await plans(done(setPost(site, 'p1', { state: 'retired' })));
    expect(retired.boxes.map(({ post }) => post)).not.toContain('p1');
  });
});

describe('a kept plan', () => {
  it('survives the file, and taken up again is the same plan', async () => {
    const site = ring();
    const walk = walkOf(await plans(site));
    const byHand = done(numberPost(site, walk, walk[7]!, 1));
    const first = await plans(byHand);
    const kept = done(keepPlan(byHand, keptPlan(byHand, first, 'Eight')));
    const moved = done(movePost(kept, 'p2', [-80.9975, 41.001]));
    const locked = done(setPost(moved, 'p5', { locked: true, facing: 200 }));
    const other = done(setSetting(locked, 'wanted', [{ bird: 'eastern-bluebird', sites: 3 }]));
    const gone = { ...other, features: other.features.filter(({ id }) => id !== 'p0') };
    const reopened = readSite(writeSite(gone), 'again').site!;
    expect((await plans(reopened)).boxes).toHaveLength(3);
    const again = await plans(done(takePlan(reopened, 'Eight')));
    expect(walkOf(again)).toEqual(walkOf(first));
    for (const [i, box] of again.boxes.entries())
      expect(Math.hypot(box.at.x - first.boxes[i]!.at.x, box.at.y - first.boxes[i]!.at.y)).toBeLessThan(0.02);
    expect(again.proof.value).toBeCloseTo(first.proof.value, 1);
    expect(done(dropPlan(reopened, 'Eight')).settings.plans).toEqual([]);
  });

  it('leaves boxes that stand now standing', () => {
    const site = ring();
    const settings = { plans: [] };
    expect(site.settings).toMatchObject(settings);
    const box = {
      number: 1,
      post: 'p3',
      bird: 'eastern-bluebird',
      at: [-81, 41] as [number, number],
      score: 50,
      state: 'new' as const,
    };
    const plan = {
      name: 'Old',
      score: 50,
      sites: 1,
      metres: 1,
      minutes: 1,
      proof: '',
      settings: site.settings,
      boxes: [box],
    };
    const standing = done(setPost(done(keepPlan(site, plan)), 'p3', { state: 'fixed' }));
    const taken = done(takePlan(standing, 'Old'));
    expect(taken.features.find(({ id }) => id === 'p3')).toEqual(standing.features.find(({ id }) => id === 'p3'));
  });
});
