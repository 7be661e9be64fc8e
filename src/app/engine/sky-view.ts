/** What one box sees of the afternoon: made by the engine, drawn by the sun strip. */

export interface SunPath {
  /** ISO date. */
  readonly date: string;
  /** Solar hour 0–24, degrees clockwise from north, degrees above the horizon, and whether something stands before the sun. */
  readonly points: readonly {
    readonly hour: number;
    readonly azimuth: number;
    readonly altitude: number;
    readonly shaded: boolean;
  }[];
}

export interface SkyView {
  /** Degrees above the horizon of what stands highest, per whole degree of azimuth (index 0 = north, clockwise). */
  readonly horizon: readonly number[];
  /** Early, high and late sun of the season. */
  readonly paths: readonly SunPath[];
  /** Whether the noon sun stands in the north. */
  readonly southern: boolean;
}
