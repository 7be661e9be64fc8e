/** Trade handbook §9, items 9–11, 14–16 and 22: woods, brush, holes, grass, facing, heat and shade. */
import { describe, expect, it } from 'vitest';
import { admits } from '../../src/birds/hole.ts';
import { birdById } from '../../src/birds/index.ts';
import { foot, inch } from '../../src/birds/make.ts';
import { brush } from '../../src/criteria/brush.ts';
import { scorePost } from '../../src/criteria/card.ts';
import { entrance } from '../../src/criteria/entrance.ts';
import { openness } from '../../src/criteria/openness.ts';
import { woodsEdge } from '../../src/criteria/woods-edge.ts';
import { contextOf, judged, make, post } from '../unit/criteria/fixture.ts';
import { rectangle, type Shape } from '../unit/ground/plane-site.ts';

const field = (kind: 'short-grass' | 'meadow'): Shape => ({ kind, rings: [rectangle(-400, -400, 400, 400)] });

describe('edges', () => {
  // 9. SOURCE: TWRA: at least 100 ft from a forest edge.
  it('9. a swallow post 90 ft from a forest edge is refused, 101 ft is not', () => {
    const made = make([{ kind: 'woods', rings: [rectangle(0, -300, 300, 300)] }]);
    expect(judged(woodsEdge, made, 'tree-swallow', post(-foot(90))).hard).not.toBeNull();
    expect(judged(woodsEdge, made, 'tree-swallow', post(-foot(101))).hard).toBeNull();
  });

  // 10. SOURCE: NFW 50 ft, BBNE 200 ft; the ramp between is the handbook's proposal.
  it('10. 40 ft from brush scores 0 against wrens, 200 ft scores 1, 125 ft scores 0.5', () => {
    const made = make([{ kind: 'brush', rings: [rectangle(0, -300, 300, 300)] }]);
    const at = (feet: number) => judged(brush, made, 'eastern-bluebird', post(-foot(feet))).score!;
    expect(at(40)).toBe(0);
    expect(at(200)).toBeCloseTo(1, 4);
    expect(at(125)).toBeCloseTo(0.5, 4);
  });
});

describe('holes', () => {
  const round = (inches: number) => ({ width: inch(inches), height: inch(inches), shape: 'round' as const });

  // 11. SOURCE: FB609, HFB, USFWS, HP, BestN.
  it('11. 1 1/2 in suits the Eastern and not the Mountain Bluebird; 1 1/8 in keeps House Sparrows out', () => {
    expect(admits(round(1.5), birdById('eastern-bluebird'))).toBe(true);
    expect(admits(round(1.5), birdById('mountain-bluebird'))).toBe(false);
    expect(admits(round(1.125), birdById('house-sparrow'))).toBe(false);
    expect(admits(round(1.125), birdById('carolina-chickadee'))).toBe(true);
    expect(admits(round(1.25), birdById('tufted-titmouse'))).toBe(true);
    for (const bird of ['american-kestrel', 'eastern-screech-owl']) expect(admits(round(3), birdById(bird))).toBe(true);
  });

  it('11. the card gives each bird of the region its own hole', () => {
    const { ground, suns } = make([field('short-grass')], { units: 'us' });
    const { who } = scorePost(ground, post(), birdById('eastern-bluebird'), suns);
    const hole = (bird: string) => who.find((one) => one.bird === bird)!.hole;
    expect([hole('eastern-bluebird'), hole('tufted-titmouse'), hole('american-kestrel')]).toEqual([
      '1 1/2 in',
      '1 1/4 in',
      '3 in',
    ]);
  });
});

describe('grass', () => {
  // 14. SOURCE: Navara & Anderson 2011: over 65 % of boxes used with little vegetation around, 21 % in tall.
  it('14. short grass outscores tall grass at the same post', () => {
    const score = (kind: 'short-grass' | 'meadow') => judged(openness, make([field(kind)]), 'eastern-bluebird').score!;
    expect(score('short-grass')).toBeGreaterThan(score('meadow') + 0.2);
  });
});

describe('facing', () => {
  // 15. SOURCE: Ardia 2006, TWRA, Butler 2009 (hatching SW 12/21, NW 9/9).
  it('15. 90° scores above 240° at 40° north', () => {
    const score = (facing: number) =>
      judged(entrance, make([field('short-grass')]), 'eastern-bluebird', post(0, 0, { facing })).score!;
    expect(score(90)).toBeGreaterThan(score(240) + 0.3);
  });
});

describe('heat', () => {
  const west: Shape = { kind: 'woods', rings: [rectangle(-400, -400, -4, 400)], properties: { height: 25 } };
  const grade = (shapes: Shape[], facing: number) => {
    const { ground, suns } = make(shapes);
    return scorePost(ground, post(0, 0, { facing }), birdById('eastern-bluebird'), suns, { who: false }).sun.grade;
  };

  // 16. SOURCE: Ellis 2016, Ellis & Rhind 2022 (shade and walls 5–9.5 °C), Butler 2009 (bearing 0.6 °C).
  it('16. moving from full sun to afternoon shade changes the grade; turning by 180° does not', () => {
    expect(grade([field('short-grass')], 90)).toBe('HIGH');
    expect(grade([field('short-grass'), west], 90)).not.toBe('HIGH');
    for (const shapes of [[field('short-grass')], [field('short-grass'), west]]) {
      expect(grade(shapes, 270)).toBe(grade(shapes, 90));
    }
  });

  // 22. SOURCE: arithmetic: shadow length = height / tan(elevation); the eye is 1.2 m up, so the tree's shadow there is that of 8.8 m.
  it('22. a 10 m tree throws 17.3 m of shadow at 30°: a post 15 m due east of it is shaded at 270°, 18 m is not', () => {
    expect(10 / Math.tan(Math.PI / 6)).toBeCloseTo(17.3, 1);
    const { ground } = make([{ kind: 'tree', at: [0, 0], properties: { height: 10, crownRadius: 0.5 } }]);
    const rays = { azimuth: Float64Array.of(270), tangent: Float64Array.of(Math.tan(Math.PI / 6)) };
    const shaded = (x: number, eye: number) => ground.shaded({ x, y: 0 }, eye, rays)[0];
    expect([shaded(15, 0), shaded(17.1, 0), shaded(18.2, 0)]).toEqual([1, 1, 0]);
    expect(shaded(15, 1.2)).toBe(1);
  });

  it('22. the same shade reaches the post’s own count of sun', () => {
    const open = contextOf(make([field('short-grass')]), 'eastern-bluebird', post(15, 0));
    const tree: Shape = { kind: 'tree', at: [0, 0], properties: { height: 10, crownRadius: 3 } };
    const behind = contextOf(make([field('short-grass'), tree]), 'eastern-bluebird', post(8, 0));
    const sum = (context: typeof open) => context.spot.shaded(context.eye, context.sun).reduce((a, b) => a + b, 0);
    expect(sum(behind)).toBeGreaterThan(sum(open));
  });
});
