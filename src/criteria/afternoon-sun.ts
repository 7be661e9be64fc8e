import type { SiteSettings } from '../site/types.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { sunFigures, sunOn } from './afternoon-sun-figures.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { ours } from './figures.ts';
import { drawnShare, littleDrawn } from './little-drawn.ts';

export type SunGrade = 'LOW' | 'MID' | 'HIGH';
const grades: readonly SunGrade[] = ['LOW', 'MID', 'HIGH'];

/** Mean hours of direct sun on the post within solar 12–17 h, 0–5. */
export function sunHours(sun: SunTable, shaded: Uint8Array): number {
  // A sun below the horizon counts as shaded.
  let rays = 0;
  for (let i = 0; i < shaded.length; i++) rays += 1 - shaded[i]!;
  return (rays * sun.step) / sun.dates.length;
}

/** Why the box runs hotter than the sun alone says; empty when it does not. */
export function hotReasons(site: SiteSettings): string[] {
  const reasons = site.box === 'dark' ? ['a dark box'] : [];
  if (site.julyMaximum !== null && site.julyMaximum >= sunOn(site).hotJuly) reasons.push('hot July afternoons');
  return reasons;
}

/** LOW, MID or HIGH by hours of sun, a step up for a dark box or a hot July. Where the hole looks takes no part. */
export function sunGrade(hours: number, site: SiteSettings): SunGrade {
  const { lowUnder, highOver } = sunOn(site);
  const step = hours < lowUnder ? 0 : hours <= highOver ? 1 : 2;
  return grades[Math.min(2, step + (hotReasons(site).length ? 1 : 0))]!;
}

/** How much of the two heat losses applies, 0–2. */
function heat(site: SiteSettings): number {
  const { hotJuly, hotRamp } = sunOn(site);
  const july = site.julyMaximum === null ? 0 : (site.julyMaximum - hotJuly) / hotRamp + 0.5;
  return (site.box === 'dark' ? 1 : 0) + Math.min(1, Math.max(0, july));
}

/** Hours → score: 1 up to the low grade, then a straight fall to five hours. */
function hoursCurve({ site }: Pick<PostContext, 'site'>) {
  const { lowUnder, fullSun, hotLoss } = sunOn(site);
  return [
    [Math.min(lowUnder, 4.9), 1],
    [5, Math.max(0.05, fullSun - hotLoss * heat(site))],
  ] as const;
}

/** Direct sun on the post in the afternoon: shade moves a box's heat by far more than the way it faces. */
export const afternoonSun: Criterion = {
  id: 'afternoon-sun',
  title: 'Afternoon sun',
  unit: 'h',
  weight: ours(
    1.5,
    'weight',
    [0, 10],
    'Shade, paint and walls were measured to matter, the bearing hardly (Ellis 2016, Ellis & Rhind 2022, Butler 2009).',
  ),
  settings: sunFigures,
  costly: true,
  measure(context) {
    const reason = littleDrawn(context);
    if (reason) return { raw: null, reason };
    const raw = sunHours(context.sun, context.spot.shaded(context.eye, context.sun));
    return { raw, known: drawnShare(context), at: { shape: 'sun' } };
  },
  score({ raw }, context) {
    const [[start, top], [end, bottom]] = hoursCurve(context);
    return raw <= start ? top : top + ((raw - start) / (end - start)) * (bottom - top);
  },
  explain(measured, { site }) {
    if (measured.raw === null) return `Afternoon sun not judged: ${measured.reason}`;
    const reasons = hotReasons(site);
    const why = reasons.length ? `, a step up for ${reasons.join(' and ')}` : '';
    return `Sun on the box ${measured.raw.toFixed(1)} of 5 afternoon hours: ${sunGrade(measured.raw, site)}${why}; wants under ${sunOn(site).lowUnder} h`;
  },
  curve: (context) => hoursCurve(context),
  sources: () => ['Ellis 2016', 'Ellis & Rhind 2022', 'Butler 2009', 'Kasten & Young 1989', 'PVEducation', 'ours'],
};
