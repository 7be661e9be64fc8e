import { describe, expect, it } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { entrance } from '../../../src/criteria/entrance.ts';
import { perch } from '../../../src/criteria/perch.ts';
import { turn } from '../../../src/geometry/point.ts';
import type { LonLat } from '../../../src/site/types.ts';
import { rectangle, type Shape } from '../ground/plane-site.ts';
import { contextOf, judged, make, ohio, post } from './fixture.ts';

const lawn: Shape = { kind: 'short-grass', rings: [rectangle(-400, -400, 400, 400)] };
const wishAt = (shapes: readonly Shape[], centre: LonLat = ohio, settings = {}) =>
  contextOf(make(shapes, settings, centre), 'eastern-bluebird').wish;

describe('the best facing', () => {
  it('lies between east and southeast from 40° north, between north and northeast in the hot south', () => {
    expect(turn(wishAt([lawn]).best, 112.5)).toBeLessThan(25);
    expect(turn(wishAt([lawn], [-84, 31]).best, 22.5)).toBeLessThan(25);
  });

  it('is mirrored south of the equator: 40° S looks east to northeast', () => {
    expect(turn(wishAt([lawn], [145, -40]).best, 67.5)).toBeLessThan(25);
  });

  it('lies inside its band, and the band leaves out the afternoon sun', () => {
    const { best, from, to } = wishAt([lawn]);
    expect(from < best && best < to).toBe(true);
    expect(to).toBeLessThan(180);
  });

  it('turns to a lone perch in front and away from a storm', () => {
    const tree: Shape = { kind: 'tree', at: [20, 20], properties: { height: 2.5, crownRadius: 1 } };
    expect(turn(wishAt([lawn, tree]).best, 45)).toBeLessThan(turn(wishAt([lawn]).best, 45));
    const storm = wishAt([lawn], ohio, { stormFrom: 135 }).best;
    expect(turn(storm, 135)).toBeGreaterThan(turn(wishAt([lawn]).best, 135));
  });

  it('looks over open land and not into the woods', () => {
    const woods: Shape = { kind: 'woods', rings: [rectangle(6, -400, 400, 400)] };
    expect(turn(wishAt([lawn, woods]).best, 90)).toBeGreaterThan(45);
  });

  it('minds the afternoon sun less where woods shade it', () => {
    const west: Shape = { kind: 'woods', rings: [rectangle(-400, -400, -8, 400)], properties: { height: 30 } };
    const south: Shape = { kind: 'woods', rings: [rectangle(-400, -400, 400, -8)], properties: { height: 30 } };
    const open = wishAt([lawn]);
    const shaded = wishAt([lawn, west, south]);
    expect(shaded.worth[200]! - shaded.worth[20]!).not.toBeCloseTo(open.worth[200]! - open.worth[20]!, 3);
  });
});

describe('the facing on the card', () => {
  const made = make([lawn], { date: '2026-06-15' });
  const card = (facing: number | null) =>
    scorePost(made.ground, post(0, 0, { facing }), birdById('eastern-bluebird'), made.suns, { who: false }).facing;

  it('says best and band in one sentence, true and by compass with model and date', () => {
    const advice = card(null);
    expect(advice.used).toBe(advice.best);
    expect(advice.sentence).toContain(`Face ${advice.best}°, anything ${advice.from}–${advice.to}° is as good`);
    expect(advice.magnetic!.model).toBe('World Magnetic Model 2025, 2026-06-15');
    expect(advice.magnetic!.degrees).toBeCloseTo(advice.used - advice.magnetic!.declination, 9);
    expect(advice.sentence).toContain('World Magnetic Model 2025, 2026-06-15');
  });

  it('keeps a person’s own facing and says what turning it would give', () => {
    const advice = card(240);
    expect(advice).toMatchObject({ used: 240, word: 'WSW' });
    expect(advice.sentence).toMatch(/^Faces 240°; \d+° would be better/);
  });

  it('gives no compass degrees after the model’s end, and says why', () => {
    const later = make([lawn], { date: '2031-05-01' });
    const advice = scorePost(later.ground, post(), birdById('eastern-bluebird'), later.suns, { who: false }).facing;
    expect(advice.magnetic).toBeNull();
    expect(advice.sentence).toContain('No magnetic model covers 2031-05-01');
  });
});

describe('the entrance criterion', () => {
  it('scores the facing in use on its own curve', () => {
    const made = make([lawn]);
    const context = contextOf(made, 'eastern-bluebird', post(0, 0, { facing: 95 }));
    const row = judged(entrance, made, 'eastern-bluebird', post(0, 0, { facing: 95 }));
    expect(entrance.curve!(context)[19]).toEqual([95, expect.closeTo(row.score!, 9)]);
    expect(row.at).toMatchObject({ shape: 'wedge' });
  });

  it('never calls a facing hopeless', () => {
    const made = make([lawn], { stormFrom: 250 });
    for (let facing = 0; facing < 360; facing += 10) {
      expect(judged(entrance, made, 'eastern-bluebird', post(0, 0, { facing })).score).toBeGreaterThanOrEqual(0.2);
    }
  });
});

describe('perch in front', () => {
  const tree = (x: number, y: number): Shape => ({ kind: 'shrub', at: [x, y] });
  const at = (facing: number) => post(0, 0, { facing });

  it('counts 25–100 ft before the hole and not behind it', () => {
    const made = make([tree(20, 0)]);
    expect(judged(perch, made, 'eastern-bluebird', at(90)).score).toBe(1);
    expect(judged(perch, made, 'eastern-bluebird', at(90)).sentence).toBe(
      'Shrub 20 m off to the E, wants one 8–30 m off in front',
    );
    expect(judged(perch, made, 'eastern-bluebird', at(270)).score).toBeCloseTo(0.4, 6);
    expect(judged(perch, make([tree(60, 0)]), 'eastern-bluebird', at(90)).score).toBeCloseTo(0.4, 6);
  });

  it('sees the part of a long fence that is in front', () => {
    const fence: Shape = {
      kind: 'fence',
      line: [
        [12, -300],
        [12, 300],
      ],
    };
    expect(judged(perch, make([fence]), 'eastern-bluebird', at(90)).score).toBe(1);
    expect(judged(perch, make([fence]), 'eastern-bluebird', at(0)).score).toBeGreaterThan(0.9);
  });

  it('is not judged where none is drawn and not asked for by a bird that wants none', () => {
    expect(judged(perch, make([lawn]), 'eastern-bluebird').score).toBeNull();
    expect(judged(perch, make([tree(20, 0)]), 'tree-swallow').weight).toBe(0);
  });
});
