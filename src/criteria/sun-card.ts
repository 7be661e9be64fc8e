/** The afternoon sun as the card shows it. */

import { faceBeams } from '../sky/face-beams.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { hotReasons, sunGrade, sunHours } from './afternoon-sun.ts';
import type { AfternoonSun } from './card-types.ts';
import type { PostContext } from './criterion.ts';

const firstHour = 12;

/** Spans of solar hours (by 10 minutes) in which the sun is on the post on at least half of the days. */
function sunnySpans(sun: SunTable, shaded: Uint8Array): readonly (readonly [number, number])[] {
  const slots = new Float64Array(Math.round(5 / sun.step));
  for (let i = 0; i < shaded.length; i++) {
    if (!shaded[i] && sun.altitude[i]! > 0) slots[Math.floor((sun.hour[i]! - firstHour) / sun.step)]!++;
  }
  const spans: [number, number][] = [];
  slots.forEach((days, slot) => {
    if (days * 2 < sun.dates.length) return;
    const last = spans.at(-1);
    if (last && Math.abs(last[1] - (firstHour + slot * sun.step)) < 1e-9) last[1] = firstHour + (slot + 1) * sun.step;
    else spans.push([firstHour + slot * sun.step, firstHour + (slot + 1) * sun.step]);
  });
  return spans;
}

/** "12:00–14:30" for solar hours. */
function clock([from, to]: readonly [number, number]): string {
  const say = (hour: number) => {
    const minutes = Math.round(hour * 60);
    return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
  };
  return `${say(from)}–${say(to)}`;
}

/** What helps a box that stands in the sun, most first. Never a promise and never a temperature. */
const help = [
  'A post with shade from the west from noon to 17 h does more than anything done to the box.',
  'Paint or stain the outside pale; leave the inside bare.',
  'Vents under the roof.',
  'A deep roof: let it reach out over the front and the west side.',
  'A second skin: a board on spacers over the roof and the west side.',
] as const;

/** The vague hour words of the sentence. */
function sentence(
  hours: number,
  grade: string,
  spans: readonly (readonly [number, number])[],
  reasons: string[],
): string {
  const when = spans.length ? `, mostly ${spans.map(clock).join(' and ')} by the sun` : '';
  const why = reasons.length ? ` (a step up for ${reasons.join(' and ')})` : '';
  return `${grade}: sun on the box ${hours.toFixed(1)} of 5 afternoon hours${when}${why}.`;
}

/** Hours, grade and clear-sky beam of a post; facing changes the beam on the walls and never the grade. */
export function sunCard({ spot, sun, site, eye, facing }: PostContext): AfternoonSun {
  const shaded = spot.shaded(eye, sun);
  const hours = sunHours(sun, shaded);
  const grade = sunGrade(hours, site);
  const faces = faceBeams(sun, shaded);
  const wall = (turned: number) => faces[(((Math.round(facing) + turned) % 360) + 360) % 360]!;
  const sunny = sunnySpans(sun, shaded);
  return {
    hours,
    grade,
    front: wall(0),
    roof: sun.roof.reduce((sum, power, i) => sum + (shaded[i] ? 0 : power), 0),
    hottestWall: Math.max(wall(0), wall(90), wall(180), wall(270)),
    sunny,
    sentence: [sentence(hours, grade, sunny, hotReasons(site)), sun.note].filter(Boolean).join(' '),
    help: grade === 'HIGH' ? help : [],
  };
}
