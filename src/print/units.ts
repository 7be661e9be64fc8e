/** Lengths, directions and places in the words of the site's units. */
import type { LonLat, Units } from '../site/types.ts';

const yard = 0.9144;
const foot = 0.3048;

/** A walking length: yards up to a mile and then miles, or metres up to a kilometre and then kilometres. */
export function walkWords(metres: number, units: Units): string {
  if (units === 'us') return metres < 1609 ? `${Math.round(metres / yard)} yd` : `${(metres / 1609.344).toFixed(1)} mi`;
  return metres < 1000 ? `${Math.round(metres)} m` : `${(metres / 1000).toFixed(1)} km`;
}

/** A length for a tape: feet and inches, or metres to a decimetre. */
export function tapeWords(metres: number, units: Units): string {
  if (units === 'metric') return `${metres.toFixed(1)} m`;
  const inches = Math.round((metres / foot) * 12);
  const rest = inches % 12;
  return rest === 0 ? `${Math.floor(inches / 12)} ft` : `${Math.floor(inches / 12)} ft ${rest} in`;
}

/** A height above ground: feet to a quarter, or metres to 5 cm. */
export function heightWords(metres: number, units: Units): string {
  if (units === 'metric') return `${(Math.round(metres * 20) / 20).toFixed(2)} m`;
  return `${trim(Math.round((metres / foot) * 4) / 4)} ft`;
}

/** A small length: inches in sixteenths ("1 9/16 in"), or millimetres. */
export function smallWords(millimetres: number, units: Units): string {
  return units === 'metric' ? `${Math.round(millimetres)} mm` : `${inchFraction(millimetres / 25.4)} in`;
}

/** Inches as whole and lowest fraction of sixteenths: 1.5 → "1 1/2". */
export function inchFraction(inches: number): string {
  const sixteenths = Math.round(inches * 16);
  const whole = Math.floor(sixteenths / 16);
  let [top, bottom] = [sixteenths % 16, 16];
  if (top === 0) return String(whole);
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

const winds = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];

/** One of sixteen compass words for degrees clockwise from north. */
export function windOf(degrees: number): string {
  return winds[Math.round((((degrees % 360) + 360) % 360) / 22.5) % 16] ?? 'N';
}

/** Whole degrees 0–359 with the sign. */
export function degreeWords(degrees: number): string {
  return `${((Math.round(degrees) % 360) + 360) % 360}°`;
}

/** Latitude and longitude in decimal degrees with hemispheres, five decimals (about 1 m). */
export function placeWords([lon, lat]: LonLat): [string, string] {
  return [`${Math.abs(lat).toFixed(5)}° ${lat < 0 ? 'S' : 'N'}`, `${Math.abs(lon).toFixed(5)}° ${lon < 0 ? 'W' : 'E'}`];
}

/** Minutes as "1 h 20 min". */
export function timeWords(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`;
}

/** A figure without needless zeros. */
export function trim(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}

/** "1–7, 17, 18" from numbers in any order. */
export function spanWords(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b);
  const spans: [number, number][] = [];
  for (const n of sorted) {
    const last = spans[spans.length - 1];
    if (last && n === last[1] + 1) last[1] = n;
    else spans.push([n, n]);
  }
  return spans.map(([a, b]) => (a === b ? String(a) : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(', ');
}
