import type { SunTable } from './sun-table.ts';

const degree = Math.PI / 180;
const sine = Float64Array.from({ length: 360 }, (_, g) => Math.sin(g * degree));
const cosine = Float64Array.from({ length: 360 }, (_, g) => Math.cos(g * degree));

/** Room to work in, so that thousands of posts need no new arrays: made once by the caller, overwritten by every call. */
export interface BeamRoom {
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly faces: Float64Array;
}

/** New room for `faceBeams`. */
export function beamRoom(): BeamRoom {
  return { east: new Float64Array(360), north: new Float64Array(360), faces: new Float64Array(360) };
}

/**
 * Clear-sky beam of a mean afternoon on an upright face looking toward each whole degree, kWh/m² (index 0 = north, clockwise). Rays
 * marked 1 in `shaded` bring nothing; null = nothing shades. Exact for whole degrees: a face sees the rays within 90° of it, so the
 * sums over those, gathered by degree, slide round the circle once instead of being taken 360 times. The answer lies in `room.faces`.
 */
export function faceBeams(
  { rays, east, north }: Pick<SunTable, 'rays' | 'east' | 'north'>,
  shaded: Uint8Array | null,
  room: BeamRoom = beamRoom(),
): Float64Array {
  const { azimuth } = rays;
  room.east.fill(0);
  room.north.fill(0);
  for (let i = 0; i < azimuth.length; i++) {
    if (shaded !== null && shaded[i] !== 0) continue;
    // Truncated to an integer, as the remainder of a fraction costs more than all the rest here.
    const whole = azimuth[i]! | 0;
    const bin = whole >= 360 ? whole - 360 : whole;
    room.east[bin]! += east[i]!;
    room.north[bin]! += north[i]!;
  }
  return slide(room);
}

/** Beam on each bearing from the vectors gathered in each degree: bins from 90° left of it up to 90° right of it. */
function slide({ east, north, faces }: BeamRoom): Float64Array {
  let e = 0;
  let n = 0;
  for (let bin = 270; bin < 450; bin++) {
    e += east[bin % 360]!;
    n += north[bin % 360]!;
  }
  for (let g = 0; g < 360; g++) {
    const beam = e * sine[g]! + n * cosine[g]!;
    faces[g] = Math.max(beam, 0);
    const leaves = g < 90 ? g + 270 : g - 90;
    const enters = g < 270 ? g + 90 : g - 270;
    e += east[enters]! - east[leaves]!;
    n += north[enters]! - north[leaves]!;
  }
  return faces;
}
