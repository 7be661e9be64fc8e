import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixByBearing, fixByTapes, isFix } from '../../../src/geometry/fix.ts';
import { bearing, distance } from '../../../src/geometry/point.ts';

describe('two tapes', () => {
  it('gives the two places of a 3-4-5 triangle', () => {
    const answer = fixByTapes({ x: 0, y: 0 }, 3, { x: 5, y: 0 }, 4);
    if (!isFix(answer)) throw new Error(answer.reason);
    expect(answer.left.x).toBeCloseTo(1.8, 12);
    expect(answer.left.y).toBeCloseTo(2.4, 12);
    expect(answer.right.y).toBeCloseTo(-2.4, 12);
    expect(answer.crossing).toBeCloseTo(90, 9);
  });

  it('finds any place again from its distances, on one side or the other', () => {
    const metre = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(metre, metre, metre, metre, metre, metre, (ax, ay, bx, by, px, py) => {
        const [a, b, p] = [
          { x: ax, y: ay },
          { x: bx, y: by },
          { x: px, y: py },
        ];
        fc.pre(distance(a, b) > 1 && distance(a, p) > 1 && distance(b, p) > 1);
        const answer = fixByTapes(a, distance(a, p), b, distance(b, p));
        if (!isFix(answer)) return false;
        // Where the tapes nearly lie in line, the last digits of a double move the place by more.
        const slack = answer.crossing < 1 ? 0.01 : 1e-6;
        return Math.min(distance(answer.left, p), distance(answer.right, p)) < slack;
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('says why there is no place', () => {
    const short = fixByTapes({ x: 0, y: 0 }, 3, { x: 10, y: 0 }, 4);
    expect(isFix(short)).toBe(false);
    expect(short).toMatchObject({ gap: 3 });
    const long = fixByTapes({ x: 0, y: 0 }, 20, { x: 10, y: 0 }, 4);
    expect(long).toMatchObject({ gap: 6 });
    expect(fixByTapes({ x: 0, y: 0 }, 3, { x: 0, y: 0 }, 3)).toHaveProperty('reason');
    expect(() => fixByTapes({ x: 0, y: 0 }, -1, { x: 1, y: 0 }, 3)).toThrow();
    expect(() => fixByTapes({ x: 0, y: 0 }, Number.NaN, { x: 1, y: 0 }, 3)).toThrow();
  });

  it('gives one place twice when the tapes just touch', () => {
    const answer = fixByTapes({ x: 0, y: 0 }, 6, { x: 10, y: 0 }, 4);
    if (!isFix(answer)) throw new Error(answer.reason);
    expect(distance(answer.left, answer.right)).toBeLessThan(1e-6);
    expect(answer.crossing).toBeCloseTo(0, 3);
  });
});

it('goes along a bearing', () => {
  const place = fixByBearing({ x: 5, y: 5 }, 90, 20);
  expect(place.x).toBeCloseTo(25, 12);
  expect(bearing({ x: 5, y: 5 }, place)).toBeCloseTo(90, 9);
  expect(() => fixByBearing({ x: 0, y: 0 }, 90, -1)).toThrow();
});
