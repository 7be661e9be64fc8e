import { describe, expect, it } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { afternoonSun, sunGrade } from '../../../src/criteria/afternoon-sun.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { rectangle, type Shape } from '../ground/plane-site.ts';
import { judged, make, post } from './fixture.ts';

const lawn: Shape = { kind: 'short-grass', rings: [rectangle(-400, -400, 400, 400)] };
const westWoods: Shape = { kind: 'woods', rings: [rectangle(-400, -400, -6, 400)], properties: { height: 25 } };
const sunOf = (shapes: readonly Shape[], settings = {}, facing: number | null = null) => {
  const { ground, suns } = make(shapes, settings);
  return scorePost(ground, post(0, 0, { facing }), birdById('eastern-bluebird'), suns, { who: false }).sun;
};

describe('afternoon sun', () => {
  it('is five hours on open ground, HIGH, with what helps', () => {
    const sun = sunOf([lawn]);
    expect(sun.hours).toBeCloseTo(5, 9);
    expect(sun.grade).toBe('HIGH');
    expect(sun.sunny).toEqual([[12, expect.closeTo(17, 9)]]);
    expect(sun.help.join(' ')).toMatch(/pale[\s\S]*[Vv]ents[\s\S]*roof[\s\S]*second skin/);
  });

  it('is less beside woods to the west, and gone inside them', () => {
    const sun = sunOf([lawn, westWoods]);
    expect(sun.hours).toBeLessThan(3);
    expect(sun.sunny[0]![0]).toBe(12);
    expect(sun.sunny.at(-1)![1]).toBeLessThan(16);
    expect(sunOf([{ kind: 'woods', rings: [rectangle(-50, -50, 50, 50)] }])).toMatchObject({
      hours: 0,
      grade: 'LOW',
      front: 0,
      help: [],
    });
  });

  it('never changes its grade or hours with the facing, only the beam on the walls', () => {
    const [east, west] = [sunOf([lawn, westWoods], {}, 90), sunOf([lawn, westWoods], {}, 270)];
    expect(west.grade).toBe(east.grade);
    expect(west.hours).toBe(east.hours);
    expect(west.roof).toBe(east.roof);
    expect(west.front).toBeGreaterThan(east.front);
  });

  it('has LOW under 2 h, MID to 3.5 h and HIGH above', () => {
    const site = make([]).ground.site.settings;
    expect([0, 1.99, 2, 3.5, 3.51, 5].map((hours) => sunGrade(hours, site))).toEqual([
      'LOW',
      'LOW',
      'MID',
      'MID',
      'HIGH',
      'HIGH',
    ]);
  });

  it('goes up one step, and only one, for a dark box or a July of 32 °C', () => {
    const grade = (settings: object) => sunGrade(1, make([], settings).ground.site.settings);
    expect(grade({ box: 'dark' })).toBe('MID');
    expect(grade({ julyMaximum: 32 })).toBe('MID');
    expect(grade({ julyMaximum: 31.9 })).toBe('LOW');
    expect(grade({ box: 'dark', julyMaximum: 36 })).toBe('MID');
  });

  it('scores 1 to two hours and 0.3 at five, less for a dark box', () => {
    expect(judged(afternoonSun, make([lawn]), 'eastern-bluebird').score).toBeCloseTo(0.3, 9);
    expect(judged(afternoonSun, make([lawn], { box: 'dark' }), 'eastern-bluebird').score).toBeCloseTo(0.2, 9);
    expect(
      judged(afternoonSun, make([{ kind: 'woods', rings: [rectangle(-50, -50, 50, 50)] }]), 'eastern-bluebird').score,
    ).toBe(1);
  });

  it('is not judged on ground nobody drew, and never counts it as open', () => {
    const bare = judged(afternoonSun, make([]), 'eastern-bluebird');
    expect(bare.score).toBeNull();
    expect(bare.sentence).toContain('is not drawn');
  });

  it('never prints a temperature', () => {
    const sun = sunOf([lawn], { julyMaximum: 35, box: 'dark' });
    const row = judged(afternoonSun, make([lawn], { julyMaximum: 35, box: 'dark' }), 'eastern-bluebird');
    for (const text of [sun.sentence, row.sentence, ...sun.help]) expect(text).not.toMatch(/°|degree|\bC\b|\bF\b/);
  });
});
