import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../src/geometry/random.ts';
import { exactInterval, incompleteBeta, wilsonInterval } from '../../../src/visits/intervals.ts';
import { mayfield, periodSurvival } from '../../../src/visits/survival.ts';
import { type BoxOutcome, whichTold } from '../../../src/visits/told.ts';

/** P(X ≤ k) by plain summing: the twin of the incomplete beta function. */
function binomialTail(k: number, n: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let i = 1; i <= k; i++) {
    term *= ((n - i + 1) / i) * (p / (1 - p));
    sum += term;
  }
  return sum;
}

describe('intervals', () => {
  const counts = fc.integer({ min: 1, max: 60 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  test('the incomplete beta function is the binomial tail', () => {
    const cases = fc.tuple(
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 0, max: 39 }),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    );
    fc.assert(
      fc.property(cases, ([n, rawK, p]) => {
        const k = rawK % n;
        expect(incompleteBeta(1 - p, n - k, k + 1)).toBeCloseTo(binomialTail(k, n, p), 9);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
  test('contain the share, stay in 0–1, mirror, and widen with the level; the exact one is what its definition says', () => {
    fc.assert(
      fc.property(counts, ([k, n]) => {
        for (const of of [wilsonInterval, exactInterval]) {
          const { low, high } = of(k, n);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low <= k / n && k / n <= high).toBe(true);
          const mirror = of(n - k, n);
          expect(mirror.low).toBeCloseTo(1 - high, 9);
          const wide = of(k, n, '0.99');
          expect(wide.low <= low && wide.high >= high).toBe(true);
        }
        const exact = exactInterval(k, n);
        if (k < n) expect(binomialTail(k, n, exact.high)).toBeCloseTo(0.025, 8);
        if (k > 0) expect(1 - binomialTail(k - 1, n, exact.low)).toBeCloseTo(0.025, 8);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
  test.each([
    [1, 0],
    [-1, 5],
    [6, 5],
    [Number.NaN, 5],
  ])('%d of %d is a mistake', (k, n) => {
    expect(() => wilsonInterval(k, n)).toThrow(/0 ≤ successes/);
    expect(() => exactInterval(k, n)).toThrow(/0 ≤ successes/);
  });
});

describe('survival', () => {
  // Johnson (1979, Auk 96:651–661) gives the error as that of the maximum-likelihood estimate: it must be the curvature of the likelihood at its top.
  test('the standard error is the curvature of the likelihood', () => {
    const cases = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 60, max: 2000 }));
    fc.assert(
      fc.property(cases, ([losses, days]) => {
        const nests = Array.from({ length: losses + 1 }, (_, i) => ({
          days: i < losses ? 1 : days - losses,
          lost: i < losses,
        }));
        const { daily, standardError } = mayfield(nests)!;
        const logLikelihood = (rate: number) => (days - losses) * Math.log(rate) + losses * Math.log(1 - rate);
        const step = (1 - daily) * 1e-3;
        const curve =
          (logLikelihood(daily + step) - 2 * logLikelihood(daily) + logLikelihood(daily - step)) / step ** 2;
        expect(logLikelihood(daily)).toBeGreaterThan(logLikelihood(daily + step));
        expect(logLikelihood(daily)).toBeGreaterThan(logLikelihood(daily - step));
        expect(standardError * Math.sqrt(-curve)).toBeCloseTo(1, 3);
      }),
      { seed: 9, numRuns: 100 },
    );
  });
  test('no exposure, no answer', () => {
    expect(mayfield([])).toBeNull();
    expect(mayfield([{ days: 0, lost: true }])).toBeNull();
  });
  test('no losses: the rate is 1 and the interval still is honest', () => {
    const survival = mayfield([
      { days: 60, lost: false },
      { days: 40, lost: false },
    ])!;
    expect(survival.daily).toBe(1);
    expect(survival.interval.low).toBeCloseTo(0.025 ** (1 / 100), 9);
  });
  test('recovers the rate of simulated nests found at any age, where the plain share does not', () => {
    const random = seededRandom(11);
    const rate = 0.97;
    const nests: { days: number; lost: boolean }[] = [];
    while (nests.length < 4000) {
      const found = Math.floor(random() * 30);
      let day = 0;
      while (day < 33 && random() < rate) day++;
      if (day <= found) continue; // lost before anybody came
      nests.push({ days: day < 33 ? day + 0.5 - found : 33 - found, lost: day < 33 });
    }
    const survival = mayfield(nests)!;
    expect(Math.abs(survival.daily - rate)).toBeLessThan(0.003);
    const plain = nests.filter((nest) => !nest.lost).length / nests.length;
    expect(plain - rate ** 33).toBeGreaterThan(0.2);
    expect(Math.abs(periodSurvival(survival, 33).share - rate ** 33)).toBeLessThan(0.04);
  });
  test('the standard error is the spread of repeated seasons', () => {
    const random = seededRandom(12);
    const rates: number[] = [];
    let error = 0;
    for (let season = 0; season < 400; season++) {
      const nests = Array.from({ length: 40 }, () => {
        let days = 0;
        while (days < 30 && random() < 0.96) days++;
        return days < 30 ? { days: days + 1, lost: true } : { days: 30, lost: false };
      });
      const survival = mayfield(nests)!;
      rates.push(survival.daily);
      error += survival.standardError / 400;
    }
    const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
    const spread = Math.sqrt(rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / (rates.length - 1));
    expect(error / spread).toBeGreaterThan(0.85);
    expect(error / spread).toBeLessThan(1.15);
  });
});

describe('which criterion told success from failure', () => {
  /** Boxes whose outcome follows `openness` and nothing else. */
  const trail = (boxes: number, effect: number, seed: number): BoxOutcome[] => {
    const random = seededRandom(seed);
    return Array.from({ length: boxes }, () => {
      const openness = random();
      const nests = 2;
      const fledged = Array.from({ length: nests }, () => random() < 0.5 + effect * (openness - 0.5)).filter(
        Boolean,
      ).length;
      return { scores: { openness, perch: random(), water: null, same: 0.5 }, fledged, failed: nests - fledged };
    });
  };
  test('too few nests are not talked over', () => {
    const answer = whichTold(trail(6, 1, 1), 1);
    expect(answer.kind).toBe('too-few');
    expect(answer.kind === 'too-few' && answer.sentence).toMatch(
      /^Too few nests to tell: \d+ fledged and \d+ failed in 6 boxes/,
    );
    expect(whichTold([], 1).kind).toBe('too-few');
    expect(
      whichTold(
        Array.from({ length: 40 }, () => ({ scores: { a: 1 }, fledged: 2, failed: 0 })),
        1,
      ).kind,
    ).toBe('too-few');
  });
  test('finds the one that matters; not judged and never-differing ones are left out', () => {
    const answer = whichTold(trail(40, 1, 2), 1);
    if (answer.kind !== 'told') throw new Error('expected an answer');
    expect(answer.criteria.map((one) => one.criterion)).toEqual(['openness', 'perch']);
    expect(answer.criteria[0]).toMatchObject({ verdict: 'told' });
    expect(answer.criteria[0]!.auc).toBeGreaterThan(0.65);
    expect(answer.criteria[0]!.interval!.low).toBeGreaterThan(0.5);
    expect(answer.criteria[1]).toMatchObject({ verdict: 'no-sign' });
  });
  test('the same seed gives the same answer', () => {
    expect(whichTold(trail(20, 1, 3), 9)).toEqual(whichTold(trail(20, 1, 3), 9));
  });
  test('AUC is the share of pairs in the right order, ties half', () => {
    const random = seededRandom(4);
    const boxes = Array.from({ length: 12 }, () => ({
      scores: { a: Math.floor(random() * 5) / 4 },
      fledged: Math.floor(random() * 3),
      failed: 1 + Math.floor(random() * 2),
    }));
    let [wins, pairs] = [0, 0];
    for (const up of boxes) {
      for (const down of boxes) {
        const count = up.fledged * down.failed;
        pairs += count;
        wins += count * (up.scores.a > down.scores.a ? 1 : up.scores.a === down.scores.a ? 0.5 : 0);
      }
    }
    const answer = whichTold(boxes, 1);
    expect(answer.kind === 'told' && answer.criteria[0]!.auc).toBeCloseTo(wins / pairs, 12);
  });
  test('without any effect it cries wolf in about 5 of 100 trails, not more', () => {
    let cries = 0;
    for (let seed = 100; seed < 160; seed++) {
      const answer = whichTold(trail(16, 0, seed), seed);
      if (answer.kind === 'told' && answer.criteria.some((one) => one.verdict !== 'no-sign')) cries++;
    }
    expect(cries).toBeLessThanOrEqual(8); // binomial(60, 0.05): 8 or more has a chance of 1 in 100
  });
});
