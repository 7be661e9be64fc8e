import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../src/placement/candidates.ts';
import { choose } from '../../../src/placement/choose.ts';
import { lieOfTheLand } from '../../../src/placement/lie-of-the-land.ts';
import { nudge } from '../../../src/placement/nudge.ts';
import { surenessOf } from '../../../src/placement/sureness.ts';
import { tradeOff } from '../../../src/placement/trade-off.ts';
import { brokenRules } from '../../../src/placement/verify.ts';
import type { SiteSettings } from '../../../src/site/types.ts';
import { box, type Drawing, metreGround } from '../route/metre-ground.ts';
import { input, randomPosts, scored } from './posts.ts';

describe('candidates', () => {
  const land = [
    { kind: 'boundary', area: box(-100, -100, 100, 100) },
    { kind: 'meadow', area: box(-200, -200, 60, 200) },
    { kind: 'water', area: box(-20, -20, 20, 20) },
    {
      kind: 'path',
      line: [
        [-90, -90],
        [-90, 90],
      ],
    },
    { kind: 'post', point: [-50, 50], properties: { state: 'fixed', bird: 'eastern-bluebird' } },
    { kind: 'post', point: [-60, -50] },
  ] as const;

  it('are the drawn posts alone when no grid is asked for', () => {
    const { ground } = metreGround(land, { suggestGrid: null });
    expect(candidatesOf(ground).map((c) => [c.id, c.state, c.bird])).toEqual([
      ['f4', 'fixed', 'eastern-bluebird'],
      ['f5', 'candidate', null],
    ]);
  });

  it('fill allowed, drawn ground on a hexagonal grid, none nearer than it is wide', () => {
    const { ground } = metreGround(land, { suggestGrid: 20, reachOfPaths: null });
    const grid = candidatesOf(ground).filter((c) => c.id.startsWith('grid'));
    expect(grid.length).toBeGreaterThan(50);
    for (const c of grid) {
      expect(ground.forbidden(c.at)).toBeNull();
      expect(ground.coverAt(c.at)).toBe('meadow');
    }
    const nearest = grid.map((c) =>
      Math.min(...grid.filter((d) => d !== c).map((d) => Math.hypot(c.at.x - d.at.x, c.at.y - d.at.y))),
    );
    expect(Math.min(...nearest)).toBeGreaterThan(20 - 1e-6);
    expect(Math.min(...nearest)).toBeLessThan(20.2);
    expect(new Set(grid.map((c) => c.id)).size).toBe(grid.length);
  });

  it('stay where they are, under the same ids, when the site grows; old ids keep the old lattice', () => {
    const grown = [
      { kind: 'boundary', area: box(-100, -300, 500, 100) },
      ...land.slice(1),
      { kind: 'meadow', area: box(70, -300, 500, 90) },
    ] as const;
    const places = (drawings: readonly Drawing[], settings: Partial<SiteSettings>) => {
      const { ground } = metreGround(drawings, { suggestGrid: 20, reachOfPaths: null, ...settings });
      const suggested = candidatesOf(ground).filter((c) => c.id.startsWith('grid'));
      return new Map(suggested.map((c) => [c.id, ground.frame.toLonLat(c.at)]));
    };
    const [before, after] = [places(land, {}), places(grown, {})];
    for (const [id, [lon, lat]] of before) {
      expect(after.get(id)?.[0]).toBeCloseTo(lon, 9);
      expect(after.get(id)?.[1]).toBeCloseTo(lat, 9);
    }
    expect(after.size).toBeGreaterThan(before.size + 50);
    expect([...places(land, { order: ['grid--2-1'] }).keys()]).toContain('grid--2-1');
  });

  it('stay within reach of a path, never finer than 5 m, never more than ten thousand', () => {
    const near = candidatesOf(metreGround(land, { suggestGrid: 1, reachOfPaths: 10 }).ground).filter((c) =>
      c.id.startsWith('grid'),
    );
    expect(near.length).toBeGreaterThan(10);
    expect(near.length).toBeLessThan((20 * 200) / 15);
    const huge = metreGround([{ kind: 'meadow', area: box(-3000, -3000, 3000, 3000) }], { suggestGrid: 5 });
    expect(candidatesOf(huge.ground).length).toBeLessThan(11_000);
    expect(candidatesOf(huge.ground).length).toBeGreaterThan(8000);
  }, 20_000);
});

describe('nudge', () => {
  const hill = (p: { x: number; y: number }) => 80 - Math.hypot(p.x - 12, p.y - 5);

  it('finds the top of a hill within reach, and says how far and which way', () => {
    const found = nudge({ x: 0, y: 0 }, 20, hill)!;
    expect(Math.hypot(found.at.x - 12, found.at.y - 5)).toBeLessThan(0.5);
    expect(found.metres).toBeCloseTo(13, 0);
    expect(found.bearing).toBeCloseTo(67.4, -1);
    expect(found.gain).toBeCloseTo(13, 0);
  });

  it('goes no farther than asked, stays where nothing is better, gives null where nothing may stand', () => {
    expect(nudge({ x: 0, y: 0 }, 5, hill)!.metres).toBeLessThanOrEqual(5 + 1e-9);
    expect(nudge({ x: 12, y: 5 }, 20, hill)).toMatchObject({ metres: 0, gain: 0 });
    expect(nudge({ x: 0, y: 0 }, 20, () => null)).toBeNull();
    const shore = nudge({ x: 0, y: 0 }, 20, (p) => (p.x < 4 ? null : 10 + p.x))!;
    expect(shore.at.x).toBeGreaterThan(4);
  });
});

describe('the lie of the land', () => {
  it('comes coarse first and ends exact in every cell', () => {
    const score = (p: { x: number; y: number }) => (p.x > 90 ? null : p.x + p.y);
    const sides: number[] = [];
    for (const land of lieOfTheLand({ min: { x: 0, y: 0 }, max: { x: 100, y: 50 } }, score, 500)) {
      sides.push(land.coarse);
      if (land.coarse > 1) continue;
      land.values.forEach((value, k) => {
        const x = land.origin.x + ((k % land.columns) + 0.5) * land.cell;
        const y = land.origin.y + (Math.floor(k / land.columns) + 0.5) * land.cell;
        if (x > 90) expect(value).toBeNaN();
        else expect(value).toBeCloseTo(x + y, 3);
      });
    }
    expect(sides).toEqual([8, 4, 2, 1]);
  });
});

describe('sureness', () => {
  it('is 1 for a post nothing comes near, low for one of twins, and names the weight that decides', async () => {
    const posts = [
      scored('alone', 0, 0, { bluebird: 90 }),
      scored('twin-a', 500, 0, { bluebird: 60 }),
      scored('twin-b', 520, 0, { bluebird: 59.9 }),
    ];
    const asked = input(posts, { wanted: [{ bird: 'bluebird', sites: 2 }] });
    const choice = await choose(asked);
    const run = () =>
      surenessOf({
        choose: asked,
        choice,
        criteria: ['openness', 'water'],
        seed: 2,
        rescore: (draw, post) =>
          post === 'alone' ? 90 : post === 'twin-a' ? 60 * draw.weight.openness : 60 * draw.weight.water - 0.1,
      });
    const sure = run();
    expect(sure.draws).toBe(200);
    expect(sure.share.alone).toBe(1);
    expect(sure.share['twin-a']).toBeGreaterThan(0.3);
    expect(sure.share['twin-a']).toBeLessThan(0.7);
    expect(sure.matters.map((m) => m.criterion).sort()).toEqual(['openness', 'water']);
    expect(run()).toEqual(sure);
  });
});

describe('a walk limit', () => {
  /** The crow's round through the stops in the order of their bearing from the start: longer than the best, never shorter. */
  const measure = (stops: readonly { at: { x: number; y: number } }[]) => {
    const round = [...stops].sort(
      (a, b) => Math.atan2(a.at.y - 300, a.at.x - 300) - Math.atan2(b.at.y - 300, b.at.x - 300),
    );
    const walk = [{ x: 300, y: 300 }, ...round.map((s) => s.at), { x: 300, y: 300 }];
    return walk.slice(1).reduce((sum, p, k) => sum + Math.hypot(p.x - walk[k].x, p.y - walk[k].y), 0);
  };
  const asked = input(randomPosts(120, 600, 11), { wanted: [{ bird: 'bluebird', sites: 15 }] });
  const walk = { start: { x: 300, y: 300 }, measure };

  it('is kept, and the reason is given for what it leaves out', async () => {
    const free = await choose(asked);
    const full = measure(free.sites.flatMap((s) => s.posts));
    const limited = { ...asked, walk: { ...walk, limit: full * 0.8 } };
    const choice = await choose(limited);
    expect(measure(choice.sites.flatMap((s) => s.posts))).toBeLessThanOrEqual(full * 0.8);
    expect(choice.proof.value).toBeLessThanOrEqual(free.proof.value);
    expect(choice.sites.length).toBeGreaterThan(0);
    expect(brokenRules(limited, choice)).toEqual([]);
  });

  it('gives a curve on which metres and score rise together, ending at the free choice', async () => {
    const points = await tradeOff({ choose: { ...asked, walk: { ...walk, limit: Infinity } }, points: 3 });
    expect(points.length).toBeGreaterThanOrEqual(2);
    points.slice(1).forEach((point, k) => {
      expect(point.metres).toBeGreaterThanOrEqual(points[k].metres);
      expect(point.score).toBeGreaterThan(points[k].score);
    });
    expect(points[points.length - 1].score).toBeCloseTo((await choose(asked)).proof.value, 6);
  });
});
