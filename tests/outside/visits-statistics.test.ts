/** Intervals and nest survival against published figures. */
import { describe, expect, test } from 'vitest';
import { exactInterval, wilsonInterval } from '../../src/visits/intervals.ts';
import { exposureDays, nestsFrom } from '../../src/visits/nests.ts';
import { mayfield, periodSurvival } from '../../src/visits/survival.ts';
import { makeVisit } from '../../src/visits/visit.ts';

describe('binomial intervals, 95 %', () => {
  // SOURCE: results of the R package binom (binom.confint), as printed in statsmodels, statsmodels/stats/tests/results/results_proportion.py, commit
  // 1a63aa78b1c7bad09354b07b5bd4f700230a24a8. Tolerance: 1e-8, or half the last printed digit where 8 digits or fewer are printed.
  test.each([
    [18, 20, 0.6830172859809176, 0.9876514728297052, 0.6989663547715128, 0.972133518786232, 1e-8],
    [4, 20, 0.05733399705003284, 0.436614002996668, 0.0806576625797981, 0.4160174322518935, 1e-8],
    [4, 200, 0.005475565879556443, 0.05041360908989634, 0.00780442641634947, 0.05028708690582643, 1e-8],
    [190, 200, 0.9099724622986486, 0.975765834527891, 0.910421851861224, 0.972617354399236, 1e-8],
    [1, 30, 8.435709e-4, 0.17216946, 5.90859e-3, 0.16670391, 6e-8],
    [29, 30, 0.8278305, 0.9991564, 0.8332961, 0.9940914, 6e-8],
    [0, 30, 0, 0.11570331, 0, 0.11351339, 6e-8],
    [30, 30, 0.8842967, 1, 0.8864866, 1, 6e-8],
  ])('%d of %d', (k, n, exactLow, exactHigh, wilsonLow, wilsonHigh, tolerance) => {
    const [exact, wilson] = [exactInterval(k, n), wilsonInterval(k, n)];
    expect(Math.abs(exact.low - exactLow)).toBeLessThan(tolerance);
    expect(Math.abs(exact.high - exactHigh)).toBeLessThan(tolerance);
    expect(Math.abs(wilson.low - wilsonLow)).toBeLessThan(tolerance);
    expect(Math.abs(wilson.high - wilsonHigh)).toBeLessThan(tolerance);
  });
  // SOURCE: table of W. J. Conover, Practical Nonparametric Statistics (1999), quoted by influentialpoints.com, "Confidence intervals of proportions".
  test('5 of 25 is 0.068 to 0.407 in the printed table', () => {
    const { low, high } = exactInterval(5, 25);
    expect([low.toFixed(3), high.toFixed(3)]).toEqual(['0.068', '0.407']);
  });
});

describe('nest survival', () => {
  let n = 0;
  const look = (date: string, state: 'eggs' | 'failed') => makeVisit({ id: `v${n++}`, post: 'p', date, state });
  // SOURCE: US Geological Survey, Northern Prairie Wildlife Research Center, "A draft protocol for assessing piping plover reproductive success on Great
  // Plains alkali lakes", Appendix C: E = 10.5 days for a nest found 7 June, incubated when visited 14 June, and destroyed when visited 21 June.
  test('exposure of a nest lost between two looks runs to the middle', () => {
    const [nest] = nestsFrom(
      [look('2001-06-07', 'eggs'), look('2001-06-14', 'eggs'), look('2001-06-21', 'failed')],
      [],
      '2002-01-01',
    );
    expect(exposureDays(nest!)).toBe(10.5);
  });
  // SOURCE: same page: the exposure of a nest of unknown fate ends on the last date that a viable nest was observed; also Manolis et al. 2000, Auk 117:615–626.
  test('a nest of unknown fate counts to the last look alive', () => {
    const [nest] = nestsFrom([look('2001-06-07', 'eggs'), look('2001-06-14', 'eggs')], [], '2002-01-01');
    expect(exposureDays(nest!)).toBe(7);
  });
  // SOURCE: Klett, Duebbert, Faanes & Higgins 1986, Techniques for Studying Nest Success of Ducks in Upland Habitats, "Estimating Nest Success" (page of the
  // Northern Prairie Wildlife Research Center): at a daily rate of 0.96, P35 = 0.2396 and P30 = 0.2939; 2 days 0.922, 3 days 0.885.
  test('a daily rate of 0.96 gives the printed success', () => {
    const survival = mayfield([
      { days: 20, lost: true },
      { days: 5, lost: false },
    ])!;
    expect(survival.daily).toBeCloseTo(0.96, 12);
    expect(periodSurvival(survival, 35).share.toFixed(4)).toBe('0.2396');
    expect(periodSurvival(survival, 30).share.toFixed(4)).toBe('0.2939');
    expect(periodSurvival(survival, 2).share.toFixed(3)).toBe('0.922');
    expect(periodSurvival(survival, 3).share.toFixed(3)).toBe('0.885');
  });
  // No printed worked example of this standard error could be found or seen (Johnson 1979, Hensler & Nichols 1981 and the pages above were looked for): worked by hand from the formula sqrt((E − L) L / E³).
  // E = 400 days, L = 16: daily 1 − 16/400 = 0.96; variance 384 × 16 / 64,000,000 = 0.000096; its root 0.0097980.
  test('standard error, worked by hand', () => {
    const survival = mayfield([
      ...Array.from({ length: 16 }, () => ({ days: 10, lost: true })),
      ...Array.from({ length: 12 }, () => ({ days: 20, lost: false })),
    ])!;
    expect(survival).toMatchObject({ nests: 28, losses: 16, exposureDays: 400 });
    expect(survival.standardError).toBeCloseTo(0.009797959, 9);
    expect(survival.interval.low).toBeCloseTo(0.96 - 1.959964 * 0.009797959, 7);
  });
});
