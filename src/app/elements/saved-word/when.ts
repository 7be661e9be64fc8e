/** Times as people say them. */
import type { Words } from '../../words/en.ts';

const day = 24 * 3_600_000;

/** "14:06" of the device's own clock; `time` in milliseconds since 1970. */
export function clock(time: number): string {
  const at = new Date(time);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** "today 14:06", "yesterday 9:00", "12 days ago". */
export function when(time: number, now: number, { library }: Words): string {
  const days = Math.round((midnight(now) - midnight(time)) / day);
  if (days <= 0) return library.today(clock(time));
  return days === 1 ? library.yesterday(clock(time)) : library.daysAgo(days);
}

/** Day and time, for lists where the order of states matters: "2026-06-15 14:06". */
export function stamp(time: number): string {
  const at = new Date(time);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${clock(time)}`;
}

function midnight(time: number): number {
  const at = new Date(time);
  return new Date(at.getFullYear(), at.getMonth(), at.getDate()).getTime();
}
