/** A criterion's curve as a small line, with the place of one post on it. */
import type { Curve } from '../../../birds/guide.ts';

export interface CurveShape {
  /** SVG path of the curve. */
  readonly path: string;
  readonly dot: { readonly x: number; readonly y: number };
}

/** px; the curve keeps 3 px clear of the edges for the dot. */
export const curveSize = { width: 54, height: 22 };
const pad = 3.5;

/** `raw` outside the knots widens the picture, so that the dot is always in it. */
export function curveShape(curve: Curve, raw: number, score: number): CurveShape {
  const raws = curve.map(([x]) => x);
  const low = Math.min(raw, ...raws);
  const high = Math.max(raw, ...raws);
  const spare = (high - low || 1) * 0.06;
  const x = (value: number) =>
    pad + ((value - low + spare) / (high - low + 2 * spare || 1)) * (curveSize.width - 2 * pad);
  const y = (value: number) => curveSize.height - pad - value * (curveSize.height - 2 * pad);
  const first = curve[0]?.[1] ?? score;
  const last = curve.at(-1)?.[1] ?? score;
  const knots = [[low - spare, first], ...curve, [high + spare, last]] as const;
  const path = knots.map(([a, b], i) => `${i === 0 ? 'M' : 'L'}${x(a).toFixed(1)} ${y(b).toFixed(1)}`).join(' ');
  return { path, dot: { x: x(raw), y: y(score) } };
}
