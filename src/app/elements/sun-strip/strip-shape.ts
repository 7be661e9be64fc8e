/** Lays out the sun strip: degrees of azimuth and altitude → px, woods as they stand up, the sun's paths cut where they are shaded. */
import type { SkyView, SunPath } from '../../engine/sky-view.ts';

export const stripSize = { width: 352, height: 118 };

/** Degrees shown on each side of the middle (south, or north in the southern half of the earth). */
const reach = 108;
/** Degrees of sky kept free above the highest sun, and the least top. */
const spare = 9;
const leastTop = 40;

export interface StripLine {
  readonly date: string;
  /** Thin: the day's whole path; thick: 12–17 h in the sun; shaded: any part behind something. */
  readonly thin: string;
  readonly thick: string;
  readonly shaded: string;
  readonly label: { readonly x: number; readonly y: number } | null;
}

export interface StripShape {
  readonly woods: string;
  readonly hot: string;
  readonly lines: readonly StripLine[];
  readonly hours: readonly { readonly hour: number; readonly x: number; readonly y: number }[];
  readonly winds: readonly { readonly word: string; readonly x: number }[];
}

/** Solar hour the lowest path's month stands at, and how much later the next one's: wide enough that the words keep apart. */
const firstLabel = 7.5;
const labelStep = 1.25;

type Place = readonly [x: number, y: number];

export function stripShape(view: SkyView): StripShape {
  const middle = view.southern ? 0 : 180;
  const highest = Math.max(
    ...view.paths.flatMap((p) => p.points.map((q) => q.altitude)),
    ...visible(view.horizon, middle),
  );
  const top = Math.min(95, Math.max(leastTop, highest + spare));
  const x = (azimuth: number) => ((offset(azimuth, middle) + reach) / (2 * reach)) * stripSize.width;
  const y = (altitude: number) => stripSize.height * (1 - altitude / top);
  const place = (p: { azimuth: number; altitude: number }): Place => [x(p.azimuth), y(p.altitude)];
  return {
    woods: woodsPath(view.horizon, middle, x, y),
    hot: hotPath(view.paths, place),
    lines: byHeight(view.paths).map((path, i) => lineOf(path, i, place, middle)),
    hours: hourPlaces(view.paths, place),
    winds: (view.southern ? southern : northern).map(([word, azimuth]) => ({ word, x: x(azimuth) })),
  };
}

const northern = [
  ['E', 90],
  ['SE', 135],
  ['S', 180],
  ['SW', 225],
  ['W', 270],
] as const;
const southern = [
  ['W', 270],
  ['NW', 315],
  ['N', 0],
  ['NE', 45],
  ['E', 90],
] as const;

/** Degrees right of the middle, −180…180. */
function offset(azimuth: number, middle: number): number {
  return ((azimuth - middle + 540) % 360) - 180;
}

function visible(horizon: readonly number[], middle: number): number[] {
  return horizon.filter((_, azimuth) => Math.abs(offset(azimuth, middle)) <= reach);
}

function woodsPath(
  horizon: readonly number[],
  middle: number,
  x: (a: number) => number,
  y: (a: number) => number,
): string {
  const { width, height } = stripSize;
  let path = `M0 ${height}`;
  for (let d = -reach; d <= reach; d++) {
    const azimuth = (middle + d + 360) % 360;
    path += ` L${x(azimuth).toFixed(1)} ${y(Math.max(0, horizon[azimuth] ?? 0)).toFixed(1)}`;
  }
  return `${path} L${width} ${height} Z`;
}

function isHot(hour: number): boolean {
  return hour >= 12 - 1e-6 && hour <= 17 + 1e-6;
}

function lineOf(
  path: SunPath,
  index: number,
  place: (p: SunPath['points'][number]) => Place,
  middle: number,
): StripLine {
  const seen = path.points.filter((p) => p.altitude >= 0 && Math.abs(offset(p.azimuth, middle)) <= reach);
  const at = seen.find((p) => p.hour >= firstLabel + index * labelStep);
  return {
    date: path.date,
    thin: runs(seen, (p) => !p.shaded && !isHot(p.hour), place),
    thick: runs(seen, (p) => !p.shaded && isHot(p.hour), place),
    shaded: runs(seen, (p) => p.shaded, place),
    label: at ? { x: place(at)[0], y: place(at)[1] } : null,
  };
}

/** Path of the stretches where `wanted` holds, each reaching to the next point so that stretches touch. */
function runs(
  points: SunPath['points'],
  wanted: (p: SunPath['points'][number]) => boolean,
  place: (p: SunPath['points'][number]) => Place,
): string {
  let path = '';
  let drawing = false;
  points.forEach((p, i) => {
    const here = wanted(p);
    const next = points[i + 1];
    if (here && next) {
      if (!drawing) path += `M${show(place(p))}`;
      path += `L${show(place(next))}`;
    }
    drawing = here;
  });
  return path;
}

function show([x, y]: Place): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

/** The band the afternoon suns of the season fill: along the highest path and back along the lowest. */
function hotPath(paths: readonly SunPath[], place: (p: SunPath['points'][number]) => Place): string {
  const sorted = byHeight(paths);
  const top = (sorted.at(-1)?.points ?? []).filter((p) => isHot(p.hour) && p.altitude >= 0).map(place);
  const low = (sorted[0]?.points ?? []).filter((p) => isHot(p.hour) && p.altitude >= 0).map(place);
  const all = [...top, ...low.reverse()];
  return all.length > 2 ? `M${all.map(show).join('L')}Z` : '';
}

function hourPlaces(paths: readonly SunPath[], place: (p: SunPath['points'][number]) => Place) {
  const top = byHeight(paths).at(-1);
  return [12, 13, 14, 15, 16, 17].flatMap((hour) => {
    const p = top?.points.find((q) => Math.abs(q.hour - hour) < 0.05);
    return p && p.altitude >= 0 ? [{ hour, x: place(p)[0], y: place(p)[1] }] : [];
  });
}

function byHeight(paths: readonly SunPath[]): SunPath[] {
  const height = (path: SunPath) => Math.max(...path.points.map((p) => p.altitude), -90);
  return [...paths].sort((a, b) => height(a) - height(b));
}
