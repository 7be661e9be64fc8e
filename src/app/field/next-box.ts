/** Which box comes next: in the order of the round, skipped ones at the end, any order allowed. */
import { settledVisits } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import type { Stop } from './field-round.ts';

/** Posts with a visit on that day, corrections settled. */
export function seenOn(log: readonly Visit[], date: string): ReadonlySet<string> {
  return new Set(settledVisits(log.filter((visit) => visit.date === date)).map((visit) => visit.post));
}

/** The next stop to go to after `current` (null = the start of the round); null when every box was seen. */
export function nextStop(
  stops: readonly Stop[],
  seen: ReadonlySet<string>,
  skipped: ReadonlySet<string>,
  current: string | null,
): Stop | null {
  const from = stops.findIndex((stop) => stop.post === current) + 1;
  const ahead = [...stops.slice(from), ...stops.slice(0, from)].filter((stop) => !seen.has(stop.post));
  const wanted = ahead.filter((stop) => !skipped.has(stop.post));
  // Skipped boxes come back once the others are done, in the order of the round; the one just skipped last of all.
  return (
    wanted.find((stop) => stop.post !== current) ??
    wanted[0] ??
    ahead.find((s) => s.post !== current) ??
    ahead[0] ??
    null
  );
}

/** How each stop stands, for the row of dots and the list. */
export type StopMark = 'seen' | 'skipped' | 'here' | 'open';

export function markOf(
  stop: Stop,
  seen: ReadonlySet<string>,
  skipped: ReadonlySet<string>,
  current: string | null,
): StopMark {
  if (stop.post === current) return 'here';
  if (seen.has(stop.post)) return 'seen';
  return skipped.has(stop.post) ? 'skipped' : 'open';
}
