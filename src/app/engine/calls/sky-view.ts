/** What one box sees of the afternoon: the horizon around it and the season's sun. */
import { birdById } from '../../../birds/index.ts';
import type { Point } from '../../../geometry/point.ts';
import type { Ground } from '../../../ground/types.ts';
import { seasonDates } from '../../../sky/season-dates.ts';
import { solarNoon, sunPosition } from '../../../sky/sun-position.ts';
import type { Calls } from '../calls.ts';
import { prepare } from '../prepared.ts';
import type { SkyView, SunPath } from '../sky-view.ts';

const wholeDegrees = Float64Array.from({ length: 360 }, (_, i) => i);

/** Points of a path an hour. */
const perHour = 6;

export function skyView({ site, x, y, eye, bird }: Calls['skyView']['input']): SkyView {
  const { ground } = prepare(site);
  const at = { x, y };
  const [lon, lat] = ground.frame.centre;
  const { season } = birdById(bird);
  const { dates } = seasonDates(lat, season.from, season.to, Number(site.settings.date.slice(0, 4)));
  const paths = threeOf(dates, lat, lon).map((date) => pathOf(date, ground, at, eye));
  const noons = paths.map((p) => p.points.find((q) => Math.abs(q.hour - 12) < 0.05)?.azimuth ?? 180);
  return {
    horizon: [...ground.horizon(at, eye, wholeDegrees)],
    paths,
    southern: noons.every((azimuth) => azimuth < 90 || azimuth > 270),
  };
}

/** First day, day of the highest noon, last day: each once. */
function threeOf(dates: readonly string[], lat: number, lon: number): string[] {
  const noon = (date: string) => sunPosition(solarNoon(date, lat, lon), lat, lon).altitude;
  const first = dates[0];
  const last = dates.at(-1);
  if (!first || !last) return [];
  const highest = dates.reduce((best, date) => (noon(date) > noon(best) ? date : best), first);
  return [...new Set([first, highest, last])];
}

/** All azimuths of a day are asked for at once: each question to the ground gathers what stands around first. */
function pathOf(date: string, ground: Ground, at: Point, eye: number): SunPath {
  const [lon, lat] = ground.frame.centre;
  const noon = solarNoon(date, lat, lon);
  const sun = Array.from({ length: 16 * perHour + 1 }, (_, i) => {
    const hour = 4 + i / perHour;
    return { hour, ...sunPosition(noon + (hour - 12) * 3_600_000, lat, lon) };
  }).filter(({ altitude }) => altitude > -3);
  const stands = ground.horizon(
    at,
    eye,
    Float64Array.from(sun, ({ azimuth }) => azimuth),
  );
  const points = sun.map(({ hour, azimuth, altitude }, i) => ({
    hour,
    azimuth,
    altitude,
    shaded: (stands[i] ?? 0) > altitude,
  }));
  return { date, points };
}
