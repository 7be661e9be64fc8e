/** How long the scale bar is and what stands at it. */
import type { Units } from '../../../site/types.ts';
import { pixelsPerMetre22 } from '../../map/ground-scale.ts';

export interface ScaleBar {
  /** px */
  readonly width: number;
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
  readonly label: string;
  /** "2 800" of 1 : 2 800, at 96 px an inch. */
  readonly ratio: string;
}

const metresPerFoot = 0.3048;
/** An inch is 96 CSS px (CSS Values, "absolute lengths"). */
const metresPerPixel = 0.0254 / 96;

/** The longest round length that fits into `widest` px. */
export function scaleBar(zoom: number, latitude: number, units: Units, widest: number): ScaleBar {
  const perMetre = pixelsPerMetre22(latitude) * 2 ** (zoom - 22);
  const { length, unit, metres } = rounded(widest / perMetre, units);
  const width = metres * perMetre;
  const half = length / 2;
  return {
    width,
    ticks: [
      { x: 0, label: '0' },
      { x: width / 2, label: String(half) },
      { x: width, label: `${length} ${unit}` },
    ],
    label: `${length} ${unit}`,
    ratio: thousands(1 / perMetre / metresPerPixel),
  };
}

function rounded(most: number, units: Units): { length: number; unit: string; metres: number } {
  if (units === 'metric') {
    const km = most >= 2000;
    const length = nice(km ? most / 1000 : most);
    return { length, unit: km ? 'km' : 'm', metres: length * (km ? 1000 : 1) };
  }
  const miles = most >= 1609.344;
  const length = nice(miles ? most / 1609.344 : most / metresPerFoot);
  return { length, unit: miles ? 'mi' : 'ft', metres: length * (miles ? 1609.344 : metresPerFoot) };
}

/** The largest of 1, 2, 4, 10, 20 … that is not more. */
function nice(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return ([4, 2, 1].find((n) => n * power <= most) ?? 1) * power;
}

function thousands(ratio: number): string {
  const power = 10 ** Math.max(0, Math.floor(Math.log10(ratio)) - 1);
  return String(Math.round(ratio / power) * power).replace(/\B(?=(\d{3})+$)/g, ' ');
}
