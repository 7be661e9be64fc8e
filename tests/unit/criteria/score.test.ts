import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combine } from '../../../src/criteria/score.ts';

describe('one number', () => {
  it('is the weighted geometric mean, worked by hand: 0.5² · 1 under weights 2 and 1 is the cube root of 0.25', () => {
    const rows = [
      { weight: 2, score: 0.5 },
      { weight: 1, score: 1 },
    ];
    expect(combine(rows).score).toBeCloseTo(100 * 0.25 ** (1 / 3), 9);
  });

  it('is 0 where one criterion is hopeless, however light, and never NaN', () => {
    expect(
      combine([
        { weight: 0.1, score: 0 },
        { weight: 9, score: 1 },
      ]).score,
    ).toBe(0);
    expect(combine([])).toEqual({ score: 0, judged: 0 });
    expect(combine([{ weight: 0, score: 0 }])).toEqual({ score: 0, judged: 0 });
    expect(combine([{ weight: 1, score: null }])).toEqual({ score: 0, judged: 0 });
  });

  it('can be given a floor, and then a hopeless criterion counts for that much', () => {
    const rows = [
      { weight: 1, score: 0 },
      { weight: 1, score: 1 },
    ];
    expect(combine(rows, 0.04).score).toBeCloseTo(20, 9);
  });

  it('leaves out what could not be judged and says how much of the weight that was', () => {
    const { score, judged } = combine([
      { weight: 3, score: 0.8 },
      { weight: 1, score: null },
    ]);
    expect(score).toBeCloseTo(80, 9);
    expect(judged).toBe(0.75);
  });

  it('lies between the lowest and the highest score and does not care for the scale of the weights', () => {
    const row = fc.record({
      weight: fc.double({ min: 0.01, max: 10, noNaN: true }),
      score: fc.double({ min: 0.001, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 9 }), (rows) => {
        const { score } = combine(rows);
        const scores = rows.map((one) => 100 * one.score);
        expect(score).toBeGreaterThanOrEqual(Math.min(...scores) - 1e-9);
        expect(score).toBeLessThanOrEqual(Math.max(...scores) + 1e-9);
        expect(combine(rows.map((one) => ({ ...one, weight: 7 * one.weight }))).score).toBeCloseTo(score, 8);
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});
