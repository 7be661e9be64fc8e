/** Figures along a map's edges: degrees and minutes, and UTM metres with the square of the US National Grid. */
import * as loaded from 'mgrs';
import proj4 from 'proj4';
import type { Frame } from '../ground/types.ts';
import type { LonLat } from '../site/types.ts';
import type { View } from './view.ts';

// Node hands over the package's older build under `default`, bundlers its module build with names (and warn of a plain `.default`).
const mgrs = (Reflect.get(loaded, 'default') as typeof loaded | undefined) ?? loaded;

/** A tick on an edge: mm from the edge's start, and its words. */
export interface Tick {
  readonly at: number;
  readonly words: string;
}

/** The grid zone of a place: "17T", the 100 km square "LE", and metres in that zone; null outside UTM (north of 84°, south of 80°). */
export interface GridZone {
  readonly zone: string;
  readonly square: string;
  toUtm(position: LonLat): [easting: number, northing: number];
}

/** Zone of the map's middle; the whole map is ticked in it. The zones of Norway and Svalbard are the mgrs package's. */
export function gridZone(centre: LonLat): GridZone | null {
  if (centre[1] > 84 || centre[1] < -80) return null;
  const found = /^(\d{1,2})([C-X])([A-Z]{2})/.exec(mgrs.forward(centre, 1));
  if (!found) return null;
  const [, number, band, square] = found as unknown as [string, string, string, string];
  const south = band < 'N' ? ' +south' : '';
  const projection = proj4('EPSG:4326', `+proj=utm +zone=${number} +datum=WGS84 +units=m${south}`);
  return {
    zone: `${number}${band}`,
    square,
    toUtm: (position) => projection.forward([...position]) as [number, number],
  };
}

/** Ticks of the four edges. */
export interface EdgeTicks {
  readonly left: readonly Tick[];
  readonly bottom: readonly Tick[];
  readonly right: readonly Tick[];
  readonly top: readonly Tick[];
}

/** UTM on the left and at the bottom, degrees on the right and at the top; `apart` = least mm between two of them. */
export function edgeTicks(view: View, frame: Frame, zone: GridZone | null, apart: number): EdgeTicks {
  const { x, y, width, height } = view.window;
  const place = (px: number, py: number) => frame.toLonLat(view.toGround(px, py));
  const down = (px: number, value: (p: LonLat) => number) => (t: number) => value(place(px, y + t));
  const across = (py: number, value: (p: LonLat) => number) => (t: number) => value(place(x + t, py));
  const degrees = { steps: minuteSteps, words: minuteWords };
  const metres = { steps: metreSteps, words: metreWords };
  const lat = (p: LonLat) => p[1] * 60;
  const lon = (p: LonLat) => p[0] * 60;
  return {
    left: zone
      ? ticksOf(
          down(x, (p) => zone.toUtm(p)[1]),
          height,
          apart,
          metres,
          'N',
        )
      : [],
    bottom: zone
      ? ticksOf(
          across(y + height, (p) => zone.toUtm(p)[0]),
          width,
          apart,
          metres,
          'E',
        )
      : [],
    right: ticksOf(down(x + width, lat), height, apart, degrees, 'lat'),
    top: ticksOf(across(y, lon), width, apart, degrees, 'lon'),
  };
}

interface Scale {
  readonly steps: readonly number[];
  readonly words: (value: number, step: number, axis: string) => string;
}

const metreSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000];
const minuteSteps = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60];

/** Round values along an edge whose value runs nearly evenly; each place is found by false position to 0.001 mm or so. */
function ticksOf(value: (t: number) => number, length: number, apart: number, scale: Scale, axis: string): Tick[] {
  const [from, to] = [value(0), value(length)];
  const perMm = Math.abs(to - from) / length;
  const step = scale.steps.find((one) => one >= perMm * apart);
  if (step === undefined || !Number.isFinite(perMm) || perMm === 0) return [];
  const ticks: Tick[] = [];
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  for (let i = Math.ceil(low / step); i * step <= high; i++) {
    const at = solve(value, i * step, length, from, to);
    ticks.push({ at, words: scale.words(i * step, step, axis) });
  }
  return ticks.sort((a, b) => a.at - b.at);
}

function solve(value: (t: number) => number, wanted: number, length: number, from: number, to: number): number {
  let [a, fa, b, fb] = [0, from - wanted, length, to - wanted];
  let t = 0;
  for (let i = 0; i < 8 && fb !== fa; i++) {
    t = b - (fb * (b - a)) / (fb - fa);
    const ft = value(t) - wanted;
    if (Math.abs(t - b) < 1e-6) break;
    [a, fa, b, fb] = [b, fb, t, ft];
  }
  return Math.min(length, Math.max(0, t));
}

/** "4 441 200 N": kilometres and hundreds set apart as on field maps. */
function metreWords(value: number, _step: number, axis: string): string {
  const whole = Math.round(value);
  return `${String(whole).replace(/\B(?=(\d{3})+$)/g, ' ')} ${axis}`;
}

/** "40°07.55′ N" from minutes. */
function minuteWords(minutes: number, step: number, axis: string): string {
  const side = axis === 'lat' ? (minutes < 0 ? 'S' : 'N') : minutes < 0 ? 'W' : 'E';
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : step >= 0.01 ? 2 : 3;
  const unit = 10 ** decimals;
  const whole = Math.round(Math.abs(minutes) * unit);
  const degrees = Math.floor(whole / (60 * unit));
  const rest = ((whole % (60 * unit)) / unit).toFixed(decimals);
  return `${degrees}°${rest.padStart(decimals > 0 ? decimals + 3 : 2, '0')}′ ${side}`;
}
