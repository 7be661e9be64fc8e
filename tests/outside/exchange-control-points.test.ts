/** Laying a picture down by control points, against least-squares examples worked by hand. */
import { describe, expect, it } from 'vitest';
import {
  type ControlPoint,
  fitAffine,
  fitSimilarity,
  isFitted,
  pictureCorners,
  pictureToGround,
} from '../../src/exchange/control-points.ts';
import { makeFrame } from '../../src/ground/frame.ts';

const at = (px: number, py: number, x: number, y: number): ControlPoint => ({
  picture: { x: px, y: py },
  ground: { x, y },
});

/**
 * SOURCE: worked by hand. Pixels (0,0) (10,0) (0,10) (10,10), x right, y down; ground (0,0) (20,0) (0,−20) (20,−16).
 * Affine, centred (p̄ = (5,5), ḡ = (10,−9)): Σu² = Σv² = 100, Σuv = 0;
 * Σux = 5·(10+10+10+10) = 200 → a = 2; Σvx = 5·(10−10−10+10) = 0 → b = 0; c = 10 − 10 = 0.
 * y′ = (9, 9, −11, −7): Σuy = 5·(−9+9+11−7) = 20 → d = 0.2; Σvy = 5·(−9−9−11−7) = −180 → e = −1.8; f = −9 − 1 + 9 = −1.
 * Fitted y: −1, 1, −19, −17; residuals 1, 1, 1, 1 m; rms 1 m.
 */
const askew = [at(0, 0, 0, 0), at(10, 0, 20, 0), at(0, 10, 0, -20), at(10, 10, 20, -16)];

describe('affine', () => {
  it('has the figures and residuals of the hand-worked example', () => {
    const fit = fitAffine(askew);
    if (!isFitted(fit)) throw new Error(fit.reason);
    const figures = [fit.a, fit.b, fit.c, fit.d, fit.e, fit.f];
    [2, 0, 0, 0.2, -1.8, -1].forEach((want, i) => {
      expect(figures[i]).toBeCloseTo(want, 12);
    });
    expect(fit.residuals.map((one) => Number(one.toFixed(12)))).toEqual([1, 1, 1, 1]);
    expect(fit.rms).toBeCloseTo(1, 12);
  });
});

describe('similarity', () => {
  /**
   * SOURCE: worked by hand, same points with picture y turned up: u = (−5,5,−5,5), v = (5,5,−5,−5); x′ = (−10,10,−10,10), y′ = (9,9,−11,−7).
   * Σ(ux + vy) = 200 + 5·(9+9+11+7) = 380; Σ(uy − vx) = 20 − 0 = 20; Σ(u² + v²) = 200 → s·cos = 1.9, s·sin = 0.1.
   * x = 1.9 u′ − 0.1 v′ + 10 with u′, v′ centred: first point −9.5 − 0.5 + 10 = 0; y = 0.1 u′ + 1.9 v′ − 9: −0.5 + 9.5 − 9 = 0.
   * So residual 1 is 0; the others: (10,0) → (19, 1): √2; (0,10) → (1, −19): √2; (10,10) → (20, −18): 2. rms = √((0+2+2+4)/4) = √2.
   */
  it('has the figures and residuals of the hand-worked example', () => {
    const fit = fitSimilarity(askew);
    if (!isFitted(fit)) throw new Error(fit.reason);
    expect(fit.residuals[0]).toBeCloseTo(0, 12);
    expect(fit.residuals[1]).toBeCloseTo(Math.SQRT2, 12);
    expect(fit.residuals[2]).toBeCloseTo(Math.SQRT2, 12);
    expect(fit.residuals[3]).toBeCloseTo(2, 12);
    expect(fit.rms).toBeCloseTo(Math.SQRT2, 12);
    expect(fit.metresPerPixel).toBeCloseTo(Math.hypot(1.9, 0.1), 12);
  });

  it('recovers a known turn, scale and shift exactly, and says how far the picture is turned', () => {
    // Picture up looks east: pixel (0,0) at (100, 200), right = south, down = west, half a metre a pixel.
    const points = [at(0, 0, 100, 200), at(100, 0, 100, 150), at(0, 100, 50, 200), at(100, 100, 50, 150)];
    for (const fit of [fitSimilarity(points), fitAffine(points)]) {
      if (!isFitted(fit)) throw new Error(fit.reason);
      expect(fit.rms).toBeLessThan(1e-9);
      expect(fit.metresPerPixel).toBeCloseTo(0.5, 12);
      expect(fit.turned).toBeCloseTo(90, 9);
      const middle = pictureToGround(fit, { x: 50, y: 50 });
      expect(middle.x).toBeCloseTo(75, 9);
      expect(middle.y).toBeCloseTo(175, 9);
    }
  });
});

it('gives the corners clockwise from the top left, as an image source wants them', () => {
  const frame = makeFrame([-81.25, 41.5]);
  const fit = fitSimilarity([at(0, 0, 0, 100), at(200, 0, 200, 100), at(0, 100, 0, 0)]);
  if (!isFitted(fit)) throw new Error(fit.reason);
  const planes = pictureCorners(fit, 200, 100, frame).map((corner) => frame.toPlane(corner));
  [
    [0, 100],
    [200, 100],
    [200, 0],
    [0, 0],
  ].forEach(([x, y], i) => {
    expect(planes[i]!.x).toBeCloseTo(x!, 5);
    expect(planes[i]!.y).toBeCloseTo(y!, 5);
  });
});

it.each([
  ['two points', [at(0, 0, 0, 0), at(1, 0, 1, 0)]],
  ['one place', [at(0, 0, 0, 0), at(0, 0, 1, 0), at(0, 0, 1, 1)]],
  ['not placed', [at(0, 0, 0, 0), at(5, 0, Number.NaN, 0), at(0, 5, 1, 1)]],
])('says why %s cannot be fitted', (_, points) => {
  for (const fit of [fitSimilarity(points), fitAffine(points)]) {
    expect(isFitted(fit)).toBe(false);
    expect('reason' in fit && fit.reason.length > 10).toBe(true);
  }
});

it('does not fit an affine to points in one line, but a similarity it can', () => {
  const line = [at(0, 0, 0, 0), at(50, 50, 50, -50), at(100, 100, 100, -100)];
  expect(isFitted(fitAffine(line))).toBe(false);
  expect(isFitted(fitSimilarity(line))).toBe(true);
});
