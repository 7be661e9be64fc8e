/** Intervals for small counts: Wilson (1927) and Clopper & Pearson (1934), two-sided. */

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Normal quantiles of two-sided levels. */
const quantile: Readonly<Record<'0.90' | '0.95' | '0.99', number>> = {
  '0.90': 1.6448536269514722,
  '0.95': 1.959963984540054,
  '0.99': 2.5758293035489004,
};

export type Level = keyof typeof quantile;

function checkCounts(successes: number, trials: number): void {
  if (!(trials > 0 && successes >= 0 && successes <= trials)) {
    throw new Error(`an interval needs 0 ≤ successes ≤ trials and trials > 0, not ${successes} of ${trials}`);
  }
}

/** Normal quantile for the level, such as 1.96 for 0.95. */
export function normalQuantile(level: Level): number {
  return quantile[level];
}

/** Wilson score interval of a share: good for small numbers, never leaves 0–1. */
export function wilsonInterval(successes: number, trials: number, level: Level = '0.95'): Interval {
  checkCounts(successes, trials);
  const z = quantile[level];
  const share = successes / trials;
  const scale = 1 + (z * z) / trials;
  const middle = (share + (z * z) / (2 * trials)) / scale;
  const half = (z / scale) * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  return { low: successes === 0 ? 0 : middle - half, high: successes === trials ? 1 : middle + half };
}

/** Lanczos's coefficients, g = 7, n = 9 (as printed by Godfrey 2001). */
const lanczos = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/** ln Γ(x) for x > 0.5. */
function logGamma(x: number): number {
  const z = x - 1;
  const series = lanczos.reduce((sum, coefficient, i) => (i === 0 ? coefficient : sum + coefficient / (z + i)), 0);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(series);
}

/** Continued fraction of the incomplete beta function (Abramowitz & Stegun 26.5.8), by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const safe = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let d = 1 / safe(1 - ((a + b) * x) / (a + 1));
  let c = 1;
  let value = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const term of [even, odd]) {
      d = 1 / safe(1 + term * d);
      c = safe(1 + term / c);
      step = d * c;
      value *= step;
    }
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return value;
}

/** Regularized incomplete beta function I_x(a, b). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** x with I_x(a, b) = p, by halving: 60 steps leave less than 1e-17. */
function betaQuantile(p: number, a: number, b: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (incompleteBeta(middle, a, b) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Exact (Clopper–Pearson) interval of a share: never too short, often too long. */
export function exactInterval(successes: number, trials: number, level: Level = '0.95'): Interval {
  checkCounts(successes, trials);
  const tail = (1 - Number(level)) / 2;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, trials - successes + 1),
    high: successes === trials ? 1 : betaQuantile(1 - tail, successes + 1, trials - successes),
  };
}
