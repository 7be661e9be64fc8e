/** The device's own day and minute, as a visit notes them, and whether its clock can be believed. */
import { dayOrNull, daysBetween } from '../../visits/days.ts';
import type { Visit } from '../../visits/visit.ts';

export interface LocalTime {
  /** YYYY-MM-DD */
  readonly date: string;
  /** HH:MM */
  readonly time: string;
  /** Minutes ahead of UTC. */
  readonly zone: number;
  /** ISO 8601 in UTC. */
  readonly instant: string;
}

const two = (n: number) => String(n).padStart(2, '0');

export function localTime(now: Date): LocalTime {
  return {
    date: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    time: `${two(now.getHours())}:${two(now.getMinutes())}`,
    zone: -now.getTimezoneOffset(),
    instant: now.toISOString(),
  };
}

/** Minutes local time may be off the sun's: summer time and the widest zones together come to about three hours (ours). */
const offTheSun = 210;

export type ClockDoubt =
  | { readonly kind: 'behind'; readonly today: string; readonly last: string }
  | { readonly kind: 'zone'; readonly hours: number };

/** Why the device's clock cannot be right: the log is ahead of it, or its zone is not that of this longitude. Null when nothing speaks against it. */
export function clockDoubt(now: LocalTime, log: readonly Visit[], lon: number | null): ClockDoubt | null {
  const days = log.map((visit) => visit.date).filter((date) => dayOrNull(date) !== null);
  const last = days.sort().at(-1) ?? '';
  if (last !== '' && daysBetween(now.date, last) > 0) return { kind: 'behind', today: now.date, last };
  if (lon === null) return null;
  const apart = ((now.zone - lon * 4 + 2160) % 1440) - 720;
  return Math.abs(apart) > offTheSun ? { kind: 'zone', hours: Math.round(apart / 60) } : null;
}
