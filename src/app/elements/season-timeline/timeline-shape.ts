/** The season of one box in one year as shapes: certain stretches, and stretches that may have been. Days, not pixels, until the end. */
import { dayOf, type Span } from '../../../visits/days.ts';
import type { Nest } from '../../../visits/nests.ts';
import { seasonOf } from '../../../visits/season-year.ts';
import type { Visit } from '../../../visits/visit.ts';

export interface Stretch {
  readonly what: 'eggs' | 'young';
  /** Day numbers, `to` excluded. `sure` = it certainly held them then; else it may have. */
  readonly from: number;
  readonly to: number;
  readonly sure: boolean;
}

export interface NestRow {
  readonly nest: Nest;
  readonly stretches: readonly Stretch[];
  /** Day the end was seen; null when it was not. */
  readonly end: number | null;
}

export interface Timeline {
  readonly year: number;
  readonly from: number;
  readonly to: number;
  /** First days of months inside, with the month 1–12. */
  readonly months: readonly { readonly day: number; readonly month: number }[];
  readonly looks: readonly number[];
  readonly rows: readonly NestRow[];
}

const day = (date: string | null | undefined) => (date ? dayOf(date) : null);

/** A stretch between two events, each known from–to: sure between them, unsure over both their spans. */
function between(what: Stretch['what'], start: Span, end: Span | null, stop: number): Stretch[] {
  const [a, b] = [dayOf(start.earliest), dayOf(start.latest)];
  const c = Math.min(stop, end ? dayOf(end.earliest) : stop);
  const d = Math.min(stop, end ? dayOf(end.latest) : stop);
  const parts: Stretch[] = [
    { what, from: a, to: Math.min(b, d), sure: false },
    { what, from: b, to: c, sure: true },
    { what, from: Math.max(b, c), to: d, sure: false },
  ];
  return parts.filter((one) => one.to > one.from);
}

/** A failed or unfinished nest's bars stop where it was last seen alive, then run on as "may have been" to the look that showed the end. */
function stretchesOf(nest: Nest): Stretch[] {
  const { clock } = nest;
  const alive = day(nest.lastActive);
  const ended = day(nest.ended);
  if (!clock?.firstEgg || alive === null) {
    const found = day(nest.found);
    return found === null || alive === null ? [] : [{ what: 'eggs', from: found, to: alive + 1, sure: true }];
  }
  const stop = nest.outcome === 'fledged' ? Number.POSITIVE_INFINITY : (ended ?? alive + 1);
  const last = nest.outcome === 'fledged' ? (ended ?? Number.POSITIVE_INFINITY) : stop;
  const eggs = between('eggs', clock.firstEgg, clock.hatch, Math.min(last, clock.hatch ? stop : last));
  const young =
    clock.hatch && dayOf(clock.hatch.earliest) < stop ? between('young', clock.hatch, clock.fledge, last) : [];
  const whole = [...eggs, ...young];
  if (nest.outcome === 'fledged') return whole.filter((one) => Number.isFinite(one.to));
  return whole.flatMap((one) => cutAt(one, alive + 1));
}

function cutAt(one: Stretch, alive: number): Stretch[] {
  if (!one.sure || one.to <= alive) return [one];
  const parts = [
    { ...one, to: Math.max(one.from, alive) },
    { ...one, from: Math.max(one.from, alive), sure: false },
  ];
  return parts.filter((part) => part.to > part.from);
}

/** Days shown before and after what happened. */
const margin = 7;

/** Null when the box was not looked at in that season. `south`: of the equator, where it runs July to June. */
export function timelineOf(
  year: number,
  nests: readonly Nest[],
  visits: readonly Visit[],
  south = false,
): Timeline | null {
  const looks = visits.filter((one) => seasonOf(one.date, south) === year).map((one) => dayOf(one.date));
  if (looks.length === 0) return null;
  const rows = nests
    .filter((nest) => nest.year === year)
    .map((nest) => ({ nest, stretches: stretchesOf(nest), end: day(nest.ended) }));
  const days = [...looks, ...rows.flatMap((row) => row.stretches.flatMap((one) => [one.from, one.to]))];
  const from = Math.min(...days) - margin;
  const to = Math.max(...days) + margin;
  return { year, from, to, months: monthsIn(year, from, to), looks, rows };
}

function monthsIn(year: number, from: number, to: number): Timeline['months'] {
  return [year - 1, year, year + 1].flatMap((one) =>
    Array.from({ length: 12 }, (_, i) => ({
      day: dayOf(`${one}-${String(i + 1).padStart(2, '0')}-01`),
      month: i + 1,
    })).filter((month) => month.day >= from && month.day < to),
  );
}
