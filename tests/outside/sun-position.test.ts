import { getSpa } from 'nrel-spa';
import { describe, expect, it } from 'vitest';
import { airless, solarNoon, sunPosition } from '../../src/sky/sun-position.ts';

const degree = Math.PI / 180;

/** Sideways error on the sky in degrees: an azimuth error matters less the higher the sun stands. */
function aside(azimuth: number, wanted: number, altitude: number): number {
  const apart = Math.abs(((azimuth - wanted + 540) % 360) - 180);
  return apart * Math.cos(altitude * degree);
}

/** Mulberry32: the same places every run. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

describe('the sun against the NREL Solar Position Algorithm', () => {
  // SOURCE: Reda & Andreas, NREL/TP-560-34302 (rev. January 2008), worked example, table A5.1.
  it('stands where the report prints it: 39.872046° high (airless), 194.34024° round', () => {
    const sun = sunPosition(Date.parse('2003-10-17T12:30:30-07:00'), 39.742476, -105.1786);
    expect(Math.abs(sun.altitude - 39.872046)).toBeLessThan(0.015);
    expect(Math.abs(sun.azimuth - 194.34024)).toBeLessThan(0.01);
  });

  // Oracle: npm nrel-spa 2.0.2, airless (pressure 0). Measured on these 400: altitude 0.012°, azimuth·cos(altitude) 0.008°.
  it('agrees within 0.015° in height and sideways over 400 seeded places and times, 2000–2040', () => {
    const next = random(20260615);
    let high = 0;
    let sideways = 0;
    for (let i = 0; i < 400; i++) {
      const ms = Date.UTC(2000, 0, 1) + Math.floor(next() * 40 * 365.25 * 86_400) * 1000;
      const lat = -70 + next() * 140;
      const lon = -180 + next() * 360;
      const spa = getSpa(new Date(ms), lat, lon, 0, { pressure: 0, delta_t: 71, function: 0 });
      const sun = sunPosition(ms, lat, lon);
      high = Math.max(high, Math.abs(sun.altitude - (90 - spa.zenith)));
      sideways = Math.max(sideways, aside(sun.azimuth, spa.azimuth, sun.altitude));
    }
    expect(high).toBeGreaterThan(0);
    expect(high).toBeLessThan(0.015);
    expect(sideways).toBeLessThan(0.015);
  });

  // SOURCE: computed with npm astronomy-engine 2.1.19 (topocentric, airless, VSOP87); nrel-spa agrees to 0.0005°.
  it.each([
    ['2032-05-03T19:06:46Z', -29.1534, -31.898, 290.99792, 4.274704],
    ['2018-10-26T17:45:33Z', -60.2987, 25.6712, 241.263757, -1.326125],
    ['2016-09-23T08:03:15Z', -33.3453, 129.9137, 279.490775, 14.572155],
    ['2017-08-02T10:58:53Z', -24.183, 96.7573, 290.182568, 1.605884],
    ['2018-08-01T00:14:11Z', 22.3213, 134.5089, 87.789045, 49.055906],
    ['2015-08-21T04:36:11Z', 14.8843, 94.6113, 96.962942, 73.106455],
    ['2024-06-12T18:01:06Z', 54.7993, 169.7155, 68.426129, 13.288082],
    ['2016-05-03T05:10:49Z', 62.3989, 150.017, 238.666942, 32.452331],
  ])('agrees within 0.015° with an independent ephemeris at %s', (utc, lat, lon, azimuth, altitude) => {
    const sun = sunPosition(Date.parse(utc), lat, lon);
    expect(Math.abs(sun.altitude - altitude)).toBeLessThan(0.015);
    expect(aside(sun.azimuth, azimuth, altitude)).toBeLessThan(0.015);
  });
});

describe('refraction', () => {
  it('is undone to rounding: the apparent sun less 16.4 of Meeus gives back the height it came from', () => {
    for (let height = 0; height <= 90; height += 0.25) {
      // Meeus 16.4 in its printed form: arc minutes for degrees; suncalc folds the rounding of its constants in radians.
      const bent = height + 1.02 / Math.tan((height + 10.26 / (height + 5.1)) * degree) / 60;
      expect(Math.abs(airless(bent) - height)).toBeLessThan(2e-5);
    }
  });

  it('lifts a sun on the horizon by about half a degree and a high one by next to nothing', () => {
    const low = sunPosition(Date.parse('2018-10-26T17:45:33Z'), -60.2987, 25.6712);
    expect(low.apparent - low.altitude).toBeCloseTo(0.484, 2);
  });
});

describe('solar noon', () => {
  it.each([-179.9, -105, 0, 77, 180])(
    'falls within the place’s own day at longitude %d, with the sun on the meridian',
    (lon) => {
      const noon = solarNoon('2026-06-15', 41, lon);
      const local = new Date(noon + lon * 240_000);
      expect(local.toISOString().slice(0, 10)).toBe('2026-06-15');
      expect(Math.abs(local.getUTCHours() + local.getUTCMinutes() / 60 - 12)).toBeLessThan(0.35);
      expect(Math.abs(sunPosition(noon, 41, lon).azimuth - 180)).toBeLessThan(0.05);
    },
  );
});
