import { directBeam, onRoof } from './beam.ts';
import { faceBeams } from './face-beams.ts';
import type { LonLat } from './place.ts';
import { seasonDates } from './season-dates.ts';
import { polarDay, solarNoon, sunPosition } from './sun-position.ts';
import type { SunTable } from './sun-table.ts';

/** Solar hours looked at: from noon to 17 h. Source: handbook §5b (mid to late afternoon is when boxes are hottest). */
const firstHour = 12;
const perDay = 30;
const step = 1 / 6;
const degree = Math.PI / 180;

interface Ray {
  readonly azimuth: number;
  readonly altitude: number;
  readonly day: number;
  readonly hour: number;
}

/** The rays of one afternoon, at the midpoints of its 10-minute intervals. */
function afternoon(date: string, day: number, [lon, lat]: LonLat): Ray[] {
  const noon = solarNoon(date, lat, lon);
  return Array.from({ length: perDay }, (_, i) => {
    const hour = firstHour + (i + 0.5) * step;
    const { azimuth, altitude } = sunPosition(noon + (hour - 12) * 3_600_000, lat, lon);
    return { azimuth, altitude, day, hour };
  });
}

/** What polar days mean for the count; null where the sun rises and sets on every sampled day. */
function polarNote(dates: readonly string[], [lon, lat]: LonLat): string | null {
  const days = dates.map((date) => polarDay(date, lat, lon));
  const up = days.filter((day) => day === 'up').length;
  const down = days.filter((day) => day === 'down').length;
  const said = [
    up
      ? `Polar summer: the sun does not set on ${up} of ${dates.length} sampled days; solar 12–17 h is still what counts.`
      : '',
    down ? `Polar night: the sun does not rise on ${down} of ${dates.length} sampled days; they count as no sun.` : '',
  ].filter(Boolean);
  return said.length ? said.join(' ') : null;
}

/** Azimuths in the order given, each at least a billionth of a degree past the one before. */
function strictlyRising(rays: readonly Ray[]): Float64Array {
  const azimuth = Float64Array.from(rays, (ray) => ray.azimuth);
  for (let i = 1; i < azimuth.length; i++) azimuth[i] = Math.max(azimuth[i]!, azimuth[i - 1]! + 1e-9);
  return azimuth;
}

/** What each ray brings to a mean afternoon on an upright wall (as a vector) and on the roof, kWh/m². */
function brings(rays: readonly Ray[], beam: Float64Array, days: number) {
  const share = step / days;
  const level = (i: number) => beam[i]! * Math.cos(rays[i]!.altitude * degree) * share;
  return {
    east: beam.map((_, i) => level(i) * Math.sin(rays[i]!.azimuth * degree)),
    north: beam.map((_, i) => level(i) * Math.cos(rays[i]!.azimuth * degree)),
    roof: beam.map((power, i) => onRoof(power, rays[i]!.altitude) * share),
  };
}

/**
 * The afternoon sun of a nesting season over `centre`: see the contract in `sun-table.ts`. `seasonFrom` and `seasonTo` are "MM-DD"
 * of a northern season; `year` is the year it begins in.
 */
export function makeSunTable(centre: LonLat, seasonFrom: string, seasonTo: string, year: number): SunTable {
  const { dates, note } = seasonDates(centre[1], seasonFrom, seasonTo, year);
  const rays = dates.flatMap((date, day) => afternoon(date, day, centre)).sort((a, b) => a.azimuth - b.azimuth);
  const altitude = Float64Array.from(rays, (ray) => ray.altitude);
  const beam = altitude.map((h) => directBeam(h));
  const notes = [note, polarNote(dates, centre)].filter((text) => text !== null);
  const table = {
    dates,
    rays: { azimuth: strictlyRising(rays), tangent: altitude.map((h) => Math.tan(h * degree)) },
    altitude,
    day: Uint16Array.from(rays, (ray) => ray.day),
    hour: Float64Array.from(rays, (ray) => ray.hour),
    beam,
    step,
    ...brings(rays, beam, dates.length),
    brightest: 0,
    note: notes.length ? notes.join(' ') : null,
  };
  return { ...table, brightest: Math.max(...faceBeams(table, null)) };
}
