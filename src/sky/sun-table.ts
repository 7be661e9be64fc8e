/** The sun of a bird's season over one site: made once, then only read. */

/** Sun rays prepared for a site: strictly rising azimuths, degrees clockwise from north, and the tangent of each altitude. */
export interface Rays {
  readonly azimuth: Float64Array;
  readonly tangent: Float64Array;
}

/**
 * Every 7th day of the season, every 10 minutes of solar 12–17 h (interval midpoints, so a sunlit afternoon sums to exactly 5 h).
 * Altitudes are airless (no refraction). Positions below the horizon carry no beam and count as no sun.
 */
export interface SunTable {
  /** ISO dates sampled. */
  readonly dates: readonly string[];
  /** Rays in rising azimuth; the arrays below are in the same order. */
  readonly rays: Rays;
  /** Degrees above the horizon. */
  readonly altitude: Float64Array;
  /** Index into `dates`. */
  readonly day: Uint16Array;
  /** Solar hour, 12–17. */
  readonly hour: Float64Array;
  /** Clear-sky direct normal beam, kW/m² (Kasten & Young 1989 air mass, Meinel beam). */
  readonly beam: Float64Array;
  /** Hours each ray stands for. */
  readonly step: number;
  /** What each ray brings to a mean afternoon, kWh/m², by the wall that takes it: toward east, toward north, and on a flat roof. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly roof: Float64Array;
  /** The most an unshaded upright face takes in a mean afternoon over all bearings, kWh/m²; 0 in polar night. */
  readonly brightest: number;
  /** Said when the season has a polar summer or winter day; null otherwise. */
  readonly note: string | null;
}
