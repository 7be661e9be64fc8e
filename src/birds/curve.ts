/** Reading a curve of a guide. */

import type { Curve } from './guide.ts';

/** Score 0–1 at `raw`: straight between knots, flat outside. Infinite raw reads the end knot; NaN or an empty curve is the caller's mistake and throws. */
export function curveAt(curve: Curve, raw: number): number {
  if (Number.isNaN(raw) || curve.length === 0)
    throw new Error(`no score: raw ${raw} on a curve of ${curve.length} knots`);
  // A plain loop: this is asked for several times a post, bird and draw.
  let after = 0;
  while (after < curve.length && curve[after]![0] < raw) after++;
  if (after === curve.length) return curve[curve.length - 1]![1];
  const [x1, y1] = curve[after]!;
  if (after === 0 || x1 === raw) return y1;
  const [x0, y0] = curve[after - 1]!;
  return y0 + ((y1 - y0) * (raw - x0)) / (x1 - x0);
}
