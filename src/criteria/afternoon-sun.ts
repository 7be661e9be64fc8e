import type { Figure } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';
import type { SunTable } from '../sky/sun-table.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { ours, reader } from './figures.ts';
import { percentText } from './units.ts';

const settings = {
  lowUnder: ours(2, 'h', [0.5, 4]),
  highOver: ours(3.5, 'h', [1, 5]),
  fullSun: ours(0.3, 'score', [0.05, 1], 'Score of five hours of sun.'),
  hotLoss: ours(
    0.1,
    'score',
    [0, 0.3],
    'Five hours of sun score this much less for a dark box, and again in a hot July.',
  ),
  hotJuly: ours(
    32,
    '°C',
    [20, 45],
    'Mean daily July maximum, as the person entered it, from which the grade goes up a step.',
  ),
  hotRamp: ours(4, '°C', [0.5, 10], 'Over which a hot July comes to count in the score, centered on `hotJuly`.'),
  mostUnmapped: ours(
    0.9,
    'share',
    [0.1, 1],
    'Not judged where more of the disc is not drawn and nothing tall stands within `tallReach`.',
  ),
  radius: ours(40, 'm', [20, 80]),
  tallReach: ours(150, 'm', [20, 500]),
} as const satisfies Record<string, Figure>;
export const sunOn = reader('afternoon-sun', settings);

export type SunGrade = 'LOW' | 'MID' | 'HIGH';
const grades: readonly SunGrade[] = ['LOW', 'MID', 'HIGH'];

/** Mean hours of direct sun on the post within solar 12–17 h, 0–5. */
export function sunHours(sun: SunTable, shaded: Uint8Array): number {
  let rays = 0;
  for (let i = 0; i < shaded.length; i++) if (!shaded[i] && sun.altitude[i]! > 0) rays++;
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

/** Whether so little is drawn around that shade cannot be known. */
function unknown({ spot, site }: PostContext): string | null {
  const { mostUnmapped, radius, tallReach } = sunOn(site);
  const { unmapped } = spot.shares(radius);
  if (unmapped <= mostUnmapped) return null;
  const tall = spot.ground.has('tall') ? spot.nearest('tall') : null;
  return tall && tall.distance <= tallReach ? null : `${percentText(unmapped)} of the surroundings is not drawn`;
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
  settings,
  measure(context) {
    const reason = unknown(context);
    if (reason) return { raw: null, reason };
    return { raw: sunHours(context.sun, context.spot.shaded(context.eye, context.sun)), at: { shape: 'sun' } };
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
