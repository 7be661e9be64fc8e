import geomagnetism from 'geomagnetism';
import type { LonLat } from './place.ts';

const dayMs = 86_400_000;

/** How far the needle points east (+) or west (−) of true north. */
export interface Declination {
  readonly degrees: number;
  /** Change in degrees a year, same sign rule. */
  readonly yearly: number;
  /** Such as "World Magnetic Model 2025". */
  readonly model: string;
  /** ISO day the figure is for. */
  readonly date: string;
  /** Last ISO day the model is good for. */
  readonly until: string;
}

/** A figure, or why there is none: a wrong one on paper is worse than none. */
export type DeclinationAnswer = Declination | { readonly degrees: null; readonly reason: string };

/** The model for an instant, or null outside the dates it was made for (the package throws then). */
function modelAt(ms: number) {
  try {
    return geomagnetism.model(new Date(ms));
  } catch {
    return null;
  }
}

/** Difference of two declinations, −180 to 180. */
const difference = (a: number, b: number) => ((((a - b + 180) % 360) + 360) % 360) - 180;

/**
 * Change in degrees a year at `ms`, by the slope over the twenty days around it that the same model covers. They stay within one calendar
 * year, because the package counts every year as 365 days and so stumbles by a day at the end of a leap year.
 */
function yearlyChange(ms: number, place: number[], name: string): number {
  const year = new Date(ms).getUTCFullYear();
  const covered = (other: number) => modelAt(other)?.name === name && new Date(other).getUTCFullYear() === year;
  const from = covered(ms - 10 * dayMs) ? ms - 10 * dayMs : ms;
  const to = covered(ms + 10 * dayMs) ? ms + 10 * dayMs : ms;
  const change = difference(modelAt(to)!.point(place).decl, modelAt(from)!.point(place).decl);
  return (change / (to - from)) * 365 * dayMs;
}

/**
 * Magnetic declination at a place on an ISO day (or instant), `km` above the ellipsoid. Source: World Magnetic Model, NOAA/NCEI and
 * British Geological Survey; near the magnetic poles (horizontal field under 2000 nT, the model's own "blackout zone") there is no answer.
 */
export function declination(place: LonLat, isoDate: string, km = 0): DeclinationAnswer {
  const ms = Date.parse(isoDate);
  if (Number.isNaN(ms)) throw new Error(`not a date: ${isoDate}`);
  const model = modelAt(ms);
  if (!model)
    return {
      degrees: null,
      reason: `No magnetic model covers ${isoDate.slice(0, 10)}: look up the declination for that day.`,
    };
  const at = [place[1], place[0], km];
  const field = model.point(at);
  if (field.h < 2000)
    return { degrees: null, reason: 'Too near a magnetic pole: a compass needle cannot be trusted here.' };
  return {
    degrees: field.decl,
    yearly: yearlyChange(ms, at, model.name),
    model: `World Magnetic Model ${model.epoch}`,
    date: isoDate.slice(0, 10),
    until: model.end_date.toISOString().slice(0, 10),
  };
}
