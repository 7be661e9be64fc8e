import type { SunTable } from './sun-table.ts';

const degree = Math.PI / 180;
const sine = Float64Array.from({ length: 360 }, (_, g) => Math.sin(g * degree));
const cosine = Float64Array.from({ length: 360 }, (_, g) => Math.cos(g * degree));

/**
 * Clear-sky beam of a mean afternoon on an upright face looking toward each whole degree, kWh/m² (index 0 = north, clockwise). Rays
 * marked 1 in `shaded` bring nothing; null = nothing shades. Exact for whole degrees: a face sees the rays within 90° of it, so the
 * sums over those, gathered by degree, slide round the circle once instead of being taken 360 times.
 */
export function faceBeams(table: Pick<SunTable, 'rays' | 'east' | 'north'>, shaded: Uint8Array | null): Float64Array {
  const { east, north } = table;
  const { azimuth } = table.rays;
  const eastBy = new Float64Array(360);
  const northBy = new Float64Array(360);
  for (let i = 0; i < azimuth.length; i++) {
    if (shaded?.[i]) continue;
    const bin = Math.floor(azimuth[i]!) % 360;
    eastBy[bin]! += east[i]!;
    northBy[bin]! += north[i]!;
  }
  return slide(eastBy, northBy);
}

/** Beam on each bearing from the vectors gathered in each degree: bins from 90° left of it up to 90° right of it. */
function slide(eastBy: Float64Array, northBy: Float64Array): Float64Array {
  const faces = new Float64Array(360);
  let e = 0;
  let n = 0;
  for (let bin = 270; bin < 450; bin++) {
    e += eastBy[bin % 360]!;
    n += northBy[bin % 360]!;
  }
  for (let g = 0; g < 360; g++) {
    faces[g] = Math.max(0, e * sine[g]! + n * cosine[g]!);
    const leaves = (g + 270) % 360;
    const enters = (g + 90) % 360;
    e += eastBy[enters]! - eastBy[leaves]!;
    n += northBy[enters]! - northBy[leaves]!;
  }
  return faces;
}
