import { describe, expect, it } from 'vitest';
import { brush } from '../../../src/criteria/brush.ts';
import { buildingsAndFeeders } from '../../../src/criteria/buildings-and-feeders.ts';
import { predatorPath } from '../../../src/criteria/predator-path.ts';
import { water } from '../../../src/criteria/water.ts';
import { woodsEdge } from '../../../src/criteria/woods-edge.ts';
import { rectangle, type Shape } from '../ground/plane-site.ts';
import { judged, make, post } from './fixture.ts';

/** Something that begins at x = 0 and runs east; posts stand west of it at x < 0, inside at x > 0. */
const east = (kind: 'woods' | 'brush' | 'water' | 'building', properties = {}): Shape => ({
  kind,
  rings: [rectangle(0, -200, 200, 200)],
  properties,
});

describe('woods edge', () => {
  const made = make([east('woods')]);

  it('rises for a bluebird from 15 to 45 m', () => {
    expect(judged(woodsEdge, made, 'eastern-bluebird', post(-15)).score).toBeCloseTo(0, 6);
    expect(judged(woodsEdge, made, 'eastern-bluebird', post(-30)).score).toBeCloseTo(0.5, 6);
    expect(judged(woodsEdge, made, 'eastern-bluebird', post(-46)).score).toBe(1);
  });

  it('is below zero inside and good there for a nuthatch', () => {
    const inside = judged(woodsEdge, made, 'white-breasted-nuthatch', post(12));
    expect(inside.raw).toBeCloseTo(-12, 6);
    expect(inside.score).toBeGreaterThan(0.9);
    expect(inside.sentence).toContain('12 m inside the woods, wants to be inside');
  });

  it('says distance and wish', () => {
    expect(judged(woodsEdge, made, 'eastern-bluebird', post(-46)).sentence).toBe('Woods edge 46 m off, wants 45 m');
    expect(judged(woodsEdge, make([east('woods')], { units: 'us' }), 'eastern-bluebird', post(-60.96)).sentence).toBe(
      'Woods edge 200 ft off, wants 148 ft',
    );
  });

  it('shows the place that decided', () => {
    expect(judged(woodsEdge, made, 'eastern-bluebird', post(-46, 7)).at).toMatchObject({
      shape: 'place',
      feature: 'f0',
      at: { x: expect.closeTo(0, 3), y: expect.closeTo(7, 3) },
    });
  });

  it('is not judged where no woods are drawn', () => {
    const bare = judged(woodsEdge, make([]), 'eastern-bluebird');
    expect(bare.score).toBeNull();
    expect(bare.sentence).toBe('No woods drawn: not judged');
  });

  it('can be moved by the site, for all birds of open country or for one', () => {
    const sooner = make([east('woods')], { figures: { 'woods-edge.full': 30 } });
    expect(judged(woodsEdge, sooner, 'eastern-bluebird', post(-30)).score).toBeCloseTo(1, 6);
    const one = make([east('woods')], { figures: { 'eastern-bluebird.habitat.woodsEdge.1.0': 60 } });
    expect(judged(woodsEdge, one, 'eastern-bluebird', post(-37.5)).score).toBeCloseTo(0.5, 6);
    expect(judged(woodsEdge, one, 'western-bluebird', post(-46)).score).toBe(1);
  });
});

describe('brush', () => {
  it('names the wren risk and never calls a place safe', () => {
    const made = make([east('brush')]);
    expect(judged(brush, made, 'eastern-bluebird', post(-43)).sentence).toBe(
      'Brush 43 m off, wants 61 m: some wren risk',
    );
    expect(judged(brush, made, 'eastern-bluebird', post(-5)).sentence).toContain('high wren risk');
    expect(judged(brush, made, 'eastern-bluebird', post(-90)).sentence).toContain('little wren risk');
  });

  it('counts for a wren the other way, without talk of risk', () => {
    const near = judged(brush, make([east('brush')]), 'house-wren', post(-5));
    expect(near.score).toBe(1);
    expect(near.sentence).not.toContain('risk');
  });

  it('has no weight for a bird that does not mind', () => {
    expect(judged(brush, make([east('brush')]), 'american-kestrel', post(-5))).toMatchObject({
      weight: 0,
      score: null,
    });
  });
});

describe('buildings and feeders', () => {
  const shapes: Shape[] = [
    { kind: 'building', rings: [rectangle(0, -5, 10, 5)], properties: { name: 'Shed' } },
    { kind: 'feeder', at: [-100, 0] },
  ];

  it('takes the one that scores lower', () => {
    const made = make(shapes);
    expect(judged(buildingsAndFeeders, made, 'eastern-bluebird', post(-30)).sentence).toBe(
      'Shed 30 m off, wants 91 m; sparrows may still come',
    );
    expect(judged(buildingsAndFeeders, made, 'eastern-bluebird', post(-80)).sentence).toContain('Feeder 20 m off');
  });

  it('always says sparrows may still come, also at full score', () => {
    const far = judged(buildingsAndFeeders, make(shapes.slice(0, 1)), 'eastern-bluebird', post(-293));
    expect(far.score).toBe(1);
    expect(far.sentence).toBe('Shed 293 m off, wants 91 m; sparrows may still come');
  });

  it('is judged by what is drawn, and not at all where nothing is', () => {
    expect(judged(buildingsAndFeeders, make(shapes.slice(1)), 'eastern-bluebird', post(0)).score).toBe(1);
    expect(judged(buildingsAndFeeders, make([]), 'eastern-bluebird').score).toBeNull();
  });
});

describe('water', () => {
  it('is wanted by swallows at 50–400 m and left out for bluebirds', () => {
    const made = make([east('water')]);
    expect(judged(water, made, 'tree-swallow', post(-60)).score).toBe(1);
    // A risk and no bar: .4 at the shore to 1 at 50 yd.
    expect(judged(water, made, 'tree-swallow', post(-20)).score).toBeCloseTo(0.4 + (0.6 * 20) / 45.72, 6);
    expect(judged(water, made, 'tree-swallow', post(-60)).sentence).toBe('Water 60 m off, wants 46–400 m');
    expect(judged(water, made, 'eastern-bluebird', post(-60)).weight).toBe(0);
  });
});

describe('predator path', () => {
  it('is a penalty beside a fence and none at 10 ft', () => {
    const made = make([
      {
        kind: 'fence',
        line: [
          [0, -100],
          [0, 100],
        ],
      },
    ]);
    const beside = judged(predatorPath, made, 'eastern-bluebird', post(-0.1));
    expect(beside.score).toBeCloseTo(0.4, 6);
    expect(judged(predatorPath, made, 'eastern-bluebird', post(-3.05)).score).toBe(1);
    expect(beside.sentence).toContain('hang a guard anyway');
  });

  it('counts from the crown of a tree, not its trunk', () => {
    const made = make([{ kind: 'tree', at: [0, 0], properties: { height: 9, crownRadius: 4 } }]);
    expect(judged(predatorPath, made, 'eastern-bluebird', post(-5)).raw).toBeCloseTo(1, 6);
  });
});
