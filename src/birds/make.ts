/** Small words the guide files are written with: exact unit conversion and a figure that cannot be born without a source. */

import type { Curve, Figure, Grade, HoleSize } from './guide.ts';
import type { SourceKey } from './sources.ts';

/** Millimetres of so many inches: 1 in = 25.4 mm exactly, without binary dust (1.5 in is 38.1). */
export function inch(inches: number): number {
  return Math.round(inches * 254_000) / 10_000;
}

/** Metres of so many feet: 1 ft = 0.3048 m exactly. */
export function foot(feet: number): number {
  return Math.round(feet * 3_048_000) / 10_000_000;
}

/** Metres of so many yards: 1 yd = 0.9144 m exactly. */
export function yard(yards: number): number {
  return foot(yards * 3);
}

interface More {
  readonly range?: readonly [number, number];
  readonly note?: string;
}

/** A figure with its unit, grade and sources. */
export function figure<T>(
  value: T,
  unit: string,
  grade: Grade,
  source: readonly SourceKey[],
  more: More = {},
): Figure<T> {
  return { value, unit, source, grade, ...more };
}

/** A round hole of this many millimetres. */
export function hole(millimetres: number, grade: Grade, source: readonly SourceKey[], more?: More): Figure<HoleSize> {
  return figure({ width: millimetres, height: millimetres, shape: 'round' }, 'mm', grade, source, more);
}

/** Two lengths in millimetres: inside width and depth of a floor, or least and most. */
export function span(a: number, b: number, grade: Grade, source: readonly SourceKey[], more?: More) {
  return figure<readonly [number, number]>([a, b], 'mm', grade, source, more);
}

/** Least and most metres. */
export function metres(a: number, b: number, grade: Grade, source: readonly SourceKey[], more?: More) {
  return figure<readonly [number, number]>([a, b], 'm', grade, source, more);
}

/** Least and most days. */
export function days(a: number, b: number, grade: Grade, source: readonly SourceKey[], more?: More) {
  return figure<readonly [number, number]>([a, b], 'days', grade, source, more);
}

/** Words, such as what a nest is made of. */
export function words(value: string, grade: Grade, source: readonly SourceKey[], more?: More): Figure<string> {
  return figure(value, 'words', grade, source, more);
}

/** Raw metres → score. */
export function byMetres(value: Curve, grade: Grade, source: readonly SourceKey[], more?: More): Figure<Curve> {
  return figure(value, 'm → score', grade, source, more);
}

/** Raw share 0–1 → score. */
export function byShare(value: Curve, grade: Grade, source: readonly SourceKey[], more?: More): Figure<Curve> {
  return figure(value, 'share → score', grade, source, more);
}
