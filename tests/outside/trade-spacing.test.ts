/** Trade handbook §9, items 1–8: spacing, pairs and the nearest things. Each row names where the rule was read. */
import { describe, expect, it } from 'vitest';
import { birdById } from '../../src/birds/index.ts';
import { foot, yard } from '../../src/birds/make.ts';
import { openness } from '../../src/criteria/openness.ts';
import { pairing } from '../../src/criteria/pairing.ts';
import { spacing } from '../../src/criteria/spacing.ts';
import { water } from '../../src/criteria/water.ts';
import { woodsEdge } from '../../src/criteria/woods-edge.ts';
import { defaultSettings } from '../../src/site/defaults.ts';
import type { SiteSettings } from '../../src/site/types.ts';
import { judged, make, post } from '../unit/criteria/fixture.ts';
import { rectangle } from '../unit/ground/plane-site.ts';

const site: SiteSettings = { ...defaultSettings, name: 'Test' };
const apart = (metres: number, bird: string, figures: Record<string, number> = {}) =>
  spacing(
    { at: { x: 0, y: 0 }, bird: birdById(bird) },
    { at: { x: 0, y: metres }, bird: birdById(bird) },
    { ...site, figures },
  ).ok;

describe('spacing of one bird', () => {
  // 1. SOURCE: NRCS-NH, KS: 100 yd.
  it('1. two bluebird boxes 80 yd apart break the rule, 101 yd pass', () => {
    expect(apart(yard(80), 'eastern-bluebird')).toBe(false);
    expect(apart(yard(101), 'eastern-bluebird')).toBe(true);
  });

  // 2. SOURCE: Ref (200–300 yd, 125–150 yd), Env (300 yd).
  it('2. two Mountain Bluebird boxes 150 yd apart break 200 and 300 yd; Eastern ones pass 100 and 125', () => {
    expect(apart(yard(150), 'mountain-bluebird')).toBe(false);
    expect(apart(yard(150), 'mountain-bluebird', { 'mountain-bluebird.spacing.same': yard(300) })).toBe(false);
    expect(apart(yard(150), 'eastern-bluebird')).toBe(true);
    expect(apart(yard(150), 'eastern-bluebird', { 'eastern-bluebird.spacing.same': yard(125) })).toBe(true);
  });

  // 3. SOURCE: TWRA, Berner: within 25 ft one site.
  it('3. boxes 20 ft apart are a pair and one site; 60 ft apart they are two sites and break the rule', () => {
    expect(pairing(foot(20), birdById('eastern-bluebird'), site).kind).toBe('pair');
    expect(apart(foot(20), 'eastern-bluebird')).toBe(true);
    expect(pairing(foot(60), birdById('eastern-bluebird'), site).kind).toBe('between');
    expect(apart(foot(60), 'eastern-bluebird')).toBe(false);
  });

  // 4. SOURCE: handbook §3: distance between pairs is that of the bird.
  it('4. pair sites 90 yd apart break the bluebird rule though each pair is good', () => {
    for (const metres of [yard(90), yard(90) + foot(20), yard(90) - foot(20)])
      expect(apart(metres, 'eastern-bluebird')).toBe(false);
  });

  // 5. SOURCE: TWRA 100 ft; Muldal 1985: no preference beyond 36 m.
  it('5. two swallow boxes 25 m apart break 100 ft, 31 m pass', () => {
    expect(apart(25, 'tree-swallow')).toBe(false);
    expect(apart(31, 'tree-swallow')).toBe(true);
    const { range } = birdById('tree-swallow').spacing.same;
    expect(range![1]).toBeLessThan(40);
  });

  // 6. SOURCE: NRCS-K: half a mile; more than 50 yd from a woodland edge.
  it('6. kestrel boxes 700 m apart break half a mile; a post 40 m from woods is refused', () => {
    expect(apart(700, 'american-kestrel')).toBe(false);
    expect(apart(805, 'american-kestrel')).toBe(true);
    const made = make([{ kind: 'woods', rings: [rectangle(0, -300, 300, 300)] }]);
    expect(judged(woodsEdge, made, 'american-kestrel', post(-40)).hard).toContain('46 m from the woods edge');
    expect(judged(woodsEdge, made, 'american-kestrel', post(-46)).hard).toBeNull();
  });

  // 7. SOURCE: POLK: 600 ft apart; 30–150 ft from shore.
  it('7. duck boxes 150 m apart break 600 ft; 100 ft from shore is within the wish, 200 ft is beyond it', () => {
    expect(apart(150, 'wood-duck')).toBe(false);
    expect(apart(183, 'wood-duck')).toBe(true);
    const made = make([{ kind: 'water', rings: [rectangle(0, -300, 300, 300)] }]);
    expect(judged(water, made, 'wood-duck', post(-foot(100))).score).toBe(1);
    expect(judged(water, made, 'wood-duck', post(-foot(200))).score).toBeLessThan(1);
  });

  // 8. SOURCE: martin pages: at least 40 ft, better 60 ft, from anything taller.
  it('8. a martin pole 35 ft from a taller tree is refused; 50 ft passes but scores below 60 ft', () => {
    const tree = { kind: 'tree' as const, at: [0, 0] as const, properties: { height: 12, crownRadius: 0.01 } };
    const made = make([tree, { kind: 'short-grass', rings: [rectangle(-200, -200, 200, 200)] }]);
    expect(judged(openness, made, 'purple-martin', post(-foot(35))).hard).not.toBeNull();
    expect(judged(openness, made, 'purple-martin', post(-foot(50))).hard).toBeNull();
    const [at50, at60] = [50, 60].map((feet) => judged(woodsEdge, made, 'purple-martin', post(-foot(feet))).score!) as [
      number,
      number,
    ];
    expect(at50).toBeLessThan(at60);
    expect(at50).toBeGreaterThan(0);
  });
});
