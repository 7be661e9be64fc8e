/** How long walking takes. */

/** Minutes for a metre on a path: 5 km/h on the level (Naismith 1892, handbook §8). */
export const minutesPerMetreOnPath = 60 / 5000;

/** Minutes for a metre over open ground: 3.6 km/h, Tobler's greatest off-path speed (Tobler 1993, NCGIA 93-1: 6 km/h × 0.6). */
export const minutesPerMetreOffPath = 60 / 3600;

/** Minutes for looking into one box (handbook §8: `LWC`, 12 boxes about an hour, leaves about 4). */
export const defaultMinutesPerBox = 4;

/** Minutes by Naismith's rule (1892): 5 km/h and an hour for each 600 m of climb. Lengths in metres. */
export function naismithMinutes(metres: number, climb: number, kilometresPerHour = 5): number {
  return (metres / 1000 / kilometresPerHour) * 60 + Math.max(0, climb) / 10;
}

/** Walking speed in km/h on a slope (rise over run, downhill negative): Tobler 1993, NCGIA 93-1; ×0.6 off paths. */
export function toblerSpeed(slope: number, offPath = false): number {
  return 6 * Math.exp(-3.5 * Math.abs(slope + 0.05)) * (offPath ? 0.6 : 1);
}
