/** Calendar days as whole numbers, so that spans of dates can be added up. No clock: dates come from the caller. */

const dayLength = 86_400_000;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** An earliest and a latest date, YYYY-MM-DD. */
export interface Span {
  readonly earliest: string;
  readonly latest: string;
}

/** Days since 1970-01-01, or null when the text is not a date of the calendar written YYYY-MM-DD, or of no century that has nest boxes (1800–2199). */
export function dayOrNull(text: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts || parts[1]! < '1800' || parts[1]! > '2199') return null;
  const time = Date.parse(`${text}T00:00:00Z`);
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== text) return null;
  return time / dayLength;
}

/** Days since 1970-01-01; throws on what is not a date: check a person's dates first. */
export function dayOf(text: string): number {
  const day = dayOrNull(text);
  if (day === null) throw new Error(`not a date (YYYY-MM-DD): ${text}`);
  return day;
}

/** YYYY-MM-DD of a day number; part days are cut off. */
export function dateOf(day: number): string {
  return new Date(Math.floor(day) * dayLength).toISOString().slice(0, 10);
}

/** The date so many days later. */
export function addDays(date: string, days: number): string {
  return dateOf(dayOf(date) + days);
}

/** Days from `a` to `b`; negative when `b` is before `a`. */
export function daysBetween(a: string, b: string): number {
  return dayOf(b) - dayOf(a);
}

/** Such as "May 18". */
export function dayWords(date: string): string {
  return `${months[Number(date.slice(5, 7)) - 1]} ${Number(date.slice(8, 10))}`;
}

/** Such as "May 18–19", "May 30–June 2" as "May 30–Jun 2", or one day when both are the same. */
export function spanWords({ earliest, latest }: Span): string {
  if (earliest === latest) return dayWords(earliest);
  const sameMonth = earliest.slice(0, 7) === latest.slice(0, 7);
  return `${dayWords(earliest)}–${sameMonth ? Number(latest.slice(8, 10)) : dayWords(latest)}`;
}
