/**
 * Relative optical air mass at `altitude` degrees above the horizon: 1 overhead, about 38 at the horizon, Infinity below it.
 * Source: Kasten & Young, Applied Optics 28 (1989) 4735–4738, formula 3.
 */
export function airMass(altitude: number): number {
  if (altitude < 0) return Number.POSITIVE_INFINITY;
  return 1 / (Math.sin((altitude * Math.PI) / 180) + 0.50572 * (altitude + 6.07995) ** -1.6364);
}
