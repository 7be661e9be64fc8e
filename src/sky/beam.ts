import { airMass } from './air-mass.ts';

const degree = Math.PI / 180;

/** Power outside the air, kW/m². Source: Meinel & Meinel, Applied Solar Energy (1976), as printed by PVEducation.org. */
const outsideAir = 1.353;

/**
 * Clear-sky direct beam through `mass` air masses, kW/m² on a face turned to the sun. Source: Meinel & Meinel 1976;
 * with `km` above sea level the form of Laue, Solar Energy 13 (1970), as printed by PVEducation.org.
 */
export function beamThrough(mass: number, km = 0): number {
  return outsideAir * ((1 - 0.14 * km) * 0.7 ** (mass ** 0.678) + 0.14 * km);
}

/** Clear-sky direct beam with the sun at `altitude` degrees, kW/m²; 0 at and below the horizon, where the formula means nothing. */
export function directBeam(altitude: number, km = 0): number {
  return altitude > 0 ? beamThrough(airMass(altitude), km) : 0;
}

/**
 * Clear-sky power on level ground from sun and sky, W/m²; 0 at and below the horizon. Source: Haurwitz, Journal of
 * Meteorology 2 (1945) and 3 (1946), with the constant 0.059 (some texts print 0.057).
 */
export function haurwitz(altitude: number): number {
  if (altitude <= 0) return 0;
  const sine = Math.sin(altitude * degree);
  return 1098 * sine * Math.exp(-0.059 / sine);
}

/** Part of a `beam` that falls on an upright face looking toward `facing`, same unit. All angles in degrees, clockwise from north. */
export function onFace(beam: number, altitude: number, azimuth: number, facing: number): number {
  return beam * Math.cos(altitude * degree) * Math.max(0, Math.cos((azimuth - facing) * degree));
}

/** Part of a `beam` that falls on a flat roof, same unit; 0 with the sun below the horizon. */
export function onRoof(beam: number, altitude: number): number {
  return beam * Math.max(0, Math.sin(altitude * degree));
}
