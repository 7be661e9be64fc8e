/** When each box wants its next look. Weekly while a nest is active (common practice); `today` comes from the caller. */

import type { BirdGuide } from '../birds/guide.ts';
import type { NestClock } from './clock.ts';
import { addDays, daysBetween, dayWords } from './days.ts';
import { type Experience, type OpeningAdvice, openingAdvice, openingUnknown } from './opening.ts';
import { byTime, type Visit } from './visit.ts';

/** Days between visits to an active nest. */
export const visitEvery = 7;

/** What is known of a box on the day. */
export interface BoxNow {
  readonly post: string;
  readonly number: number | null;
  /** All settled visits of the box. */
  readonly visits: readonly Visit[];
  readonly bird: BirdGuide | null;
  /** The clock of the nest that is active now, or null. */
  readonly clock: NestClock | null;
  /** Days of the year (MM-DD) with eggs or young of the bird the box stands for; weekly looks rest outside them. Absent: never. */
  readonly season?: { readonly from: string; readonly to: string };
}

export interface Due {
  readonly post: string;
  readonly number: number | null;
  readonly due: string;
  /** Days past due; 0 when not overdue. */
  readonly overdue: number;
  readonly active: boolean;
  /** `watch` when the box must not be opened on the due day (or today, if that is later). */
  readonly do: 'open' | 'watch';
  readonly sentence: string;
  /** What was seen last, and why the box stays shut: the sentence without box and day. */
  readonly detail: string;
}

const activeStates: readonly Visit['state'][] = ['building', 'eggs', 'young'];

/** May the box be opened on `day`? `nest` is the look at the active nest, or null. */
function adviceOn(box: BoxNow, nest: Visit | null, day: string, experience: Experience): OpeningAdvice {
  if (!nest) return openingAdvice(null, null, day, experience);
  if (!box.bird || !box.clock) return openingUnknown(nest.state, daysBetween(nest.date, day));
  return openingAdvice(box.bird, box.clock, day, experience);
}

/** Weeks before the season's first eggs for the first look of the year, and after its end for the last (ours). */
const early = 28;
const late = 21;

/** A weekly look that falls into the quiet months waits for the first look of the next season. */
function inSeason(due: string, season: BoxNow['season']): string {
  if (!season) return due;
  const year = Number(due.slice(0, 4));
  const opens = (of: number) => addDays(`${of}-${season.from}`, -early);
  // South of the equator a season ends in the year after it began.
  const ends = (of: number) => addDays(`${season.to < season.from ? of + 1 : of}-${season.to}`, late);
  const years = [year - 1, year, year + 1];
  return years.some((of) => opens(of) <= due && due <= ends(of)) ? due : years.map(opens).find((day) => day > due)!;
}

/** Next look at one box: a week after the last, never visited boxes today, the day after the latest fledging to see the outcome when that comes first. */
export function nextVisit(box: BoxNow, today: string, experience: Experience): Due {
  const last = [...box.visits].sort(byTime).at(-1) ?? null;
  const active = last !== null && activeStates.includes(last.state);
  const next = last ? addDays(last.date, visitEvery) : today;
  const weekly = active ? next : inSeason(next, box.season);
  const outcome = active && box.clock?.fledge ? addDays(box.clock.fledge.latest, 1) : null;
  const due = outcome !== null && last !== null && outcome > last.date && outcome < weekly ? outcome : weekly;
  const overdue = Math.max(0, daysBetween(due, today));
  const day = due > today ? due : today;
  const advice = adviceOn(box, active ? last : null, day, experience);
  const name = `Box ${box.number ?? box.post}`;
  const state = last ? `last seen ${dayWords(last.date)} (${last.state})` : 'not visited yet';
  const behind = overdue > 0 ? `, overdue by ${overdue} ${overdue === 1 ? 'day' : 'days'}` : '';
  const watch = advice.do === 'watch' ? ` ${advice.sentence}` : '';
  return {
    post: box.post,
    number: box.number,
    due,
    overdue,
    active,
    do: advice.do,
    sentence: `${name}: next visit ${dayWords(due)}${behind}; ${state}.${watch}`,
    detail: `${state[0]!.toUpperCase()}${state.slice(1)}.${watch}`,
  };
}

/** All boxes, most overdue first, then by due day, active nests before empty boxes, then by number. */
export function dueVisits(boxes: readonly BoxNow[], today: string, experience: Experience): readonly Due[] {
  return boxes
    .map((box) => nextVisit(box, today, experience))
    .sort(
      (a, b) =>
        b.overdue - a.overdue ||
        (a.due < b.due ? -1 : a.due > b.due ? 1 : 0) ||
        Number(b.active) - Number(a.active) ||
        (a.number ?? Infinity) - (b.number ?? Infinity) ||
        (a.post < b.post ? -1 : 1),
    );
}
