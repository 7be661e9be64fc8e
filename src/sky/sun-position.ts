import { getPosition, getTimes } from 'suncalc';

const degree = Math.PI / 180;

/** Where the sun stands, degrees. `azimuth` clockwise from true north. */
export interface SunPosition {
  readonly azimuth: number;
  /** Without the air's bending of light: what casts a straight shadow. */
  readonly altitude: number;
  /** As seen, with refraction. */
  readonly apparent: number;
}

/** Refraction in degrees as suncalc 2 adds it (Meeus, Astronomical Algorithms, 16.4; constant below the horizon). */
function refraction(airlessDegrees: number): number {
  const h = Math.max(0, airlessDegrees * degree);
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)) / degree;
}

/** Altitude without refraction from suncalc's apparent one, both in degrees: undoes its own formula to rounding. */
export function airless(apparent: number): number {
  const atHorizon = refraction(0);
  if (apparent <= atHorizon) return apparent - atHorizon;
  let altitude = apparent;
  // Each round shrinks the error at least fivefold, as refraction never falls faster than 0.2° per degree.
  for (let round = 0; round < 24; round++) {
    const next = apparent - refraction(altitude);
    if (Math.abs(next - altitude) < 1e-13) return next;
    altitude = next;
  }
  return altitude;
}

/** The sun at `ms` (milliseconds UTC since 1970) over a place. Within 0.02° of the NREL algorithm (see tests/outside). */
export function sunPosition(ms: number, lat: number, lon: number): SunPosition {
  const { azimuth, altitude } = getPosition(new Date(ms), lat, lon);
  return { azimuth, altitude: airless(altitude), apparent: altitude };
}

/** Milliseconds of UTC noon shifted to the mean noon of `lon`: inside the right solar day at any longitude. */
function meanNoon(date: string, lon: number): number {
  const noon = Date.parse(`${date.slice(0, 10)}T12:00:00Z`);
  if (Number.isNaN(noon)) throw new Error(`not a date: ${date}`);
  return noon - lon * 240_000;
}

/** Milliseconds UTC when the sun crosses the meridian on the place's own `date` ("2026-06-15"). */
export function solarNoon(date: string, lat: number, lon: number): number {
  return getTimes(new Date(meanNoon(date, lon)), lat, lon).solarNoon.getTime();
}

/** Nearer to the equator than this the sun rises and sets every day: 90° less the tilt (23.45°), refraction and half the disc (0.83°). */
const alwaysRises = 65.5;

/** Whether the sun stays up or down the whole of `date`; null when it rises and sets. */
export function polarDay(date: string, lat: number, lon: number): 'up' | 'down' | null {
  if (Math.abs(lat) < alwaysRises) return null;
  const times = getTimes(new Date(meanNoon(date, lon)), lat, lon);
  if (times.alwaysUp) return 'up';
  return times.alwaysDown ? 'down' : null;
}
