import { describe, expect, it } from 'vitest';
import { airMass } from '../../src/sky/air-mass.ts';
import { beamThrough, directBeam, haurwitz, onFace, onRoof } from '../../src/sky/beam.ts';

const degree = Math.PI / 180;

describe('air mass', () => {
  // SOURCE: pvlib-python test suite, commit 6382338 (Kasten & Young 1989): zenith 0, 80 and 89.9 degrees.
  it.each([
    [90, 1.0],
    [10, 5.586],
    [0.1, 36.467],
  ])('at %d° is %d', (altitude, mass) => expect(Math.abs(airMass(altitude) - mass)).toBeLessThan(0.0005));

  it('has no figure below the horizon', () => expect(airMass(-8)).toBe(Number.POSITIVE_INFINITY));
});

describe('direct beam', () => {
  // SOURCE: Meinel & Meinel 1976 as on PVEducation.org; values worked with Kasten–Young air mass (arithmetic, not measured).
  it.each([
    [1, 51.2, 105.88],
    [5, 238.82, 285.62],
    [10, 430.55, 469.3],
    [20, 648.98, 678.55],
    [30, 765.5, 790.18],
    [45, 862.02, 882.64],
    [60, 913.27, 931.74],
    [90, 947.17, 964.21],
  ])('with the sun at %d° is %d W/m² at sea level and %d at 300 m', (altitude, sea, high) => {
    expect(Math.abs(directBeam(altitude) * 1000 - sea)).toBeLessThan(0.01);
    expect(Math.abs(directBeam(altitude, 0.3) * 1000 - high)).toBeLessThan(0.01);
  });

  // SOURCE: trade handbook §9 item 19.
  it('through 1.5 and 1 air masses is 846.0 and 947.1 W/m²', () => {
    expect(beamThrough(1.5) * 1000).toBeCloseTo(846.0, 1);
    expect(beamThrough(1) * 1000).toBeCloseTo(947.1, 1);
  });

  it.each([0, -0.1, -30])('is nothing with the sun at %d°, also up a mountain', (altitude) => {
    expect(directBeam(altitude)).toBe(0);
    expect(directBeam(altitude, 2)).toBe(0);
  });
});

describe('sun and sky on level ground', () => {
  // SOURCE: pvlib-python test suite, commit 6382338 (Haurwitz 1945, constant 0.059).
  it.each([
    [5, 48.63],
    [10, 135.74],
    [30, 487.89],
    [50, 778.77],
    [90, 1035.09],
    [-5, 0],
  ])('at %d° is %d W/m²', (altitude, power) => expect(Math.abs(haurwitz(altitude) - power)).toBeLessThan(0.006));
});

/** The sun by spherical trigonometry for a fixed declination: `hour` solar, all degrees. */
function idealSun(lat: number, hour: number, declination = 23.44) {
  const [phi, delta, turn] = [lat * degree, declination * degree, (hour - 12) * 15 * degree];
  const altitude = Math.asin(Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(turn));
  const azimuth = Math.atan2(Math.sin(turn), Math.cos(turn) * Math.sin(phi) - Math.tan(delta) * Math.cos(phi));
  return { altitude: altitude / degree, azimuth: azimuth / degree + 180 };
}

/** kWh/m² of an afternoon on a face, or on the roof (null), at the midpoints of ten-minute steps. */
function afternoon(lat: number, facing: number | null): number {
  let sum = 0;
  for (let i = 0; i < 30; i++) {
    const { altitude, azimuth } = idealSun(lat, 12 + (i + 0.5) / 6);
    const beam = directBeam(altitude);
    sum += (facing === null ? onRoof(beam, altitude) : onFace(beam, altitude, azimuth, facing)) / 6;
  }
  return sum;
}

describe('the walls of a box on 21 June', () => {
  // SOURCE: trade handbook §5c, worked for a declination of 23.44° without refraction (arithmetic, printed to two decimals).
  it.each([
    [33, [2.21, 1.7, 1.46, 0.33, 0.04, 0, 0.14, 3.5]],
    [40, [2.21, 1.99, 1.24, 0.67, 0.11, 0, 0.06, 3.44]],
    [48, [2.2, 2.31, 1.01, 1.09, 0.22, 0, 0.02, 3.29]],
  ])('at %d° north get W, SW, NW, S, SE, E, N and roof as worked by hand (± 0.01 kWh/m²)', (lat, worked) => {
    const faces = [270, 225, 315, 180, 135, 90, 0, null];
    for (const [i, facing] of faces.entries()) expect(Math.abs(afternoon(lat, facing) - worked[i]!)).toBeLessThan(0.01);
  });

  // SOURCE: trade handbook §9 item 20.
  it('at 40° north and 15 h get 570, 99 and 0 W/m² on W, S and E and 661 on the roof', () => {
    const { altitude, azimuth } = idealSun(40, 15);
    expect(altitude).toBeCloseTo(48.82, 1);
    expect(azimuth).toBeCloseTo(260.2, 1);
    const beam = directBeam(altitude) * 1000;
    expect(Math.round(onFace(beam, altitude, azimuth, 270))).toBe(570);
    expect(Math.round(onFace(beam, altitude, azimuth, 180))).toBe(99);
    expect(onFace(beam, altitude, azimuth, 90)).toBe(0);
    expect(Math.round(onRoof(beam, altitude))).toBe(661);
  });

  // SOURCE: trade handbook §9 item 21.
  it('rank W > SW > NW > S at 40° north, and SW over W at 48°', () => {
    const at40 = [270, 225, 315, 180].map((facing) => afternoon(40, facing));
    expect(at40).toEqual([...at40].sort((a, b) => b - a));
    expect(afternoon(48, 225)).toBeGreaterThan(afternoon(48, 270));
  });
});
