const dayMs = 86_400_000;

/** The season's sampled days at a place, and what was done to them, if anything. */
export interface SeasonDates {
  readonly dates: readonly string[];
  readonly note: string | null;
}

/** Days in a month (1–12) of a year. */
function monthLength(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** "MM-DD" as milliseconds in `year`, `later` months on; a day the month does not have becomes its last. */
function dayIn(year: number, monthDay: string, later: number): number {
  const [month, day] = monthDay.split('-').map(Number) as [number, number];
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31)) throw new Error(`not a month and day: ${monthDay}`);
  const wanted = ((month - 1 + later) % 12) + 1;
  return Date.UTC(year, wanted - 1, Math.min(day, monthLength(year, wanted)));
}

/**
 * Every 7th day from `from` to `to` ("MM-DD", a northern season) beginning in `year`. South of the equator the season is moved
 * half a year; one that runs over New Year ends in the next year.
 */
export function seasonDates(lat: number, from: string, to: string, year: number): SeasonDates {
  const later = lat < 0 ? 6 : 0;
  const first = dayIn(year, from, later);
  let last = dayIn(year, to, later);
  if (last < first) last = dayIn(year + 1, to, later);
  const dates: string[] = [];
  for (let day = first; day <= last; day += 7 * dayMs) dates.push(new Date(day).toISOString().slice(0, 10));
  const note = later
    ? `South of the equator the nesting season is moved by half a year: ${dates[0]} to ${new Date(last).toISOString().slice(0, 10)}.`
    : null;
  return { dates, note };
}
