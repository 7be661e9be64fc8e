/** What can be said about a guide's curve, and how a person bends it. */
import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { SiteSettings, Units } from '../site/types.ts';
import { lengthText, spanText } from './units.ts';

/** Whether more is better from the first knot to the last. */
export function rises(curve: Curve): boolean {
  return curve[curve.length - 1]![1] > curve[0]![1];
}

/** Raw values between which the curve is at its height; −Infinity or Infinity where it stays there to the end. */
export function plateau(curve: Curve): readonly [from: number, to: number] {
  const top = Math.max(...curve.map(([, score]) => score)) - 1e-9;
  const first = curve.findIndex(([, score]) => score >= top);
  const last = curve.findLastIndex(([, score]) => score >= top);
  return [
    first === 0 ? Number.NEGATIVE_INFINITY : curve[first]![0],
    last === curve.length - 1 ? Number.POSITIVE_INFINITY : curve[last]![0],
  ];
}

/** The longest length a curve's wish names, metres: a distance shown beside it takes its unit. */
export function wantsLength(curve: Curve): number {
  const [from, to] = plateau(curve);
  return Math.max(0, Number.isFinite(to) ? to : from);
}

/**
 * What a curve over metres asks for: "wants 45 m", "wants 0–20 m", "wants at most 15 m"; `like` is the distance it is compared with. Metres
 * below zero are inside.
 */
export function wantsText(curve: Curve, units: Units, like: number): string {
  const [from, to] = plateau(curve);
  if (from === Number.NEGATIVE_INFINITY && to === Number.POSITIVE_INFINITY) return 'any distance will do';
  if (to <= 0) return 'wants to be inside';
  if (from === Number.NEGATIVE_INFINITY) return `wants at most ${lengthText(to, units, like)}`;
  const least = Math.max(0, from);
  return to === Number.POSITIVE_INFINITY
    ? `wants ${lengthText(least, units, like)}`
    : `wants ${spanText(least, to, units, like)}`;
}

/** Raw where the rise starts and where it is over. */
function rise(curve: Curve): readonly [zero: number, full: number] {
  const top = curve.findIndex(([, score]) => score >= plateauHeight(curve) - 1e-9);
  return [curve[0]![0], curve[top]![0]];
}

const plateauHeight = (curve: Curve) => Math.max(...curve.map(([, score]) => score));

/** The rising part of a curve moved to lie between `zero` and `full`; later knots keep their place, pushed on where they must be. */
export function bend(curve: Curve, zero: number, full: number): Curve {
  const [oldZero, oldFull] = rise(curve);
  if (!(full > zero) || oldFull <= oldZero) return curve;
  let past = Number.NEGATIVE_INFINITY;
  return curve.map(([raw, score]) => {
    const moved = raw <= oldFull ? zero + ((raw - oldZero) / (oldFull - oldZero)) * (full - zero) : raw;
    past = Math.max(moved, past + 1e-6);
    return [past, score] as const;
  });
}

/** A curve with its raw axis stretched by `factor` (> 0): the trial draws of the sureness move knees with it. */
export function stretch(curve: Curve, factor: number): Curve {
  return curve.map(([raw, score]) => [raw * factor, score] as const);
}

/** Mean of a curve between two raw values (from < to), exact: it is straight between knots. */
export function meanOver(curve: Curve, from: number, to: number): number {
  const inner = curve.map(([raw]) => raw).filter((raw) => raw > from && raw < to);
  const stops = [from, ...inner, to];
  let area = 0;
  for (let i = 1; i < stops.length; i++) {
    const [a, b] = [stops[i - 1]!, stops[i]!];
    area += ((curveAt(curve, a) + curveAt(curve, b)) / 2) * (b - a);
  }
  return area / (to - from);
}

/** The means of a curve over spans of one width, by where the span starts: a curve of its own, by steps of a fiftieth from 0 to 1. */
export function meanCurve(curve: Curve, width: number): Curve {
  if (width === 0) return curve;
  return Array.from({ length: 51 }, (_, i) => [i / 50, meanOver(curve, i / 50, i / 50 + width)] as const);
}

/** A guide's rising curve as the site has it: `<id>.zero` and `<id>.full` in the site's figures move its ends. */
export function bender(id: string): (curve: Curve, site: SiteSettings) => Curve {
  const [zeroKey, fullKey] = [`${id}.zero`, `${id}.full`];
  return (curve, site) => {
    const zero = site.figures[zeroKey];
    const full = site.figures[fullKey];
    if ((zero === undefined && full === undefined) || !rises(curve)) return curve;
    const [oldZero, oldFull] = rise(curve);
    return bend(curve, zero ?? oldZero, full ?? oldFull);
  };
}
