/** Figures as people read them, in the unit of the site. */
import type { Units } from '../site/types.ts';

const feetPerMetre = 1 / 0.3048;

/** "46 m" or "151 ft"; long ones "1.2 km" or "0.7 mi". */
export function length(metres: number, units: Units): string {
  if (units === 'metric') return metres < 1000 ? `${round(metres)} m` : `${(metres / 1000).toFixed(1)} km`;
  const feet = metres * feetPerMetre;
  return feet < 2640 ? `${round(feet)} ft` : `${(metres / 1609.344).toFixed(1)} mi`;
}

/** "1.2 ha" or "3.0 acres". */
export function area(squareMetres: number, units: Units): string {
  if (units === 'metric')
    return squareMetres < 1000 ? `${round(squareMetres)} m²` : `${(squareMetres / 10_000).toFixed(1)} ha`;
  const acres = squareMetres / 4046.8564224;
  return acres < 0.1 ? `${round(squareMetres * 10.7639104)} sq ft` : `${acres.toFixed(1)} acres`;
}

const winds = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];

/** The nearest of sixteen compass words. */
export function compass(degrees: number): string {
  const turned = ((degrees % 360) + 360) % 360;
  return winds[Math.round(turned / 22.5) % 16] ?? 'N';
}

/** Whole degrees 0–359 with their sign. */
export function degrees(value: number): string {
  return `${((Math.round(value) % 360) + 360) % 360}°`;
}

/** One decimal under ten, else whole. */
function round(value: number): string {
  return Math.abs(value) < 10 && value % 1 !== 0 ? value.toFixed(1) : String(Math.round(value));
}
