/** What is known of each box today: its nest, its clock, whether it may be opened, when it is due. Reckoned by the visits room. */
import type { BirdGuide } from '../../birds/guide.ts';
import { birdById, birdGuides, isBird } from '../../birds/index.ts';
import { dayOrNull, daysBetween } from '../../visits/days.ts';
import { type BoxNow, type Due, dueVisits } from '../../visits/due.ts';
import { settledVisits } from '../../visits/merge.ts';
import { activeNest, type Nest, nestsFrom } from '../../visits/nests.ts';
import { type Experience, type OpeningAdvice, openingAdvice, openingUnknown } from '../../visits/opening.ts';
import { isSouth, localSeason } from '../../visits/season-year.ts';
import { byTime, type Trouble, type Visit } from '../../visits/visit.ts';
import type { Stop } from './field-round.ts';

export interface StopNow extends BoxNow {
  readonly nest: Nest | null;
  /** The newest settled visit before now, or null. */
  readonly last: Visit | null;
  /** Trouble seen in the last year, newest first, each once with its day. */
  readonly troubles: readonly { readonly trouble: Trouble; readonly date: string }[];
}

const guideOf = (id: string | null): BirdGuide | null => (id !== null && isBird(id) ? birdById(id) : null);

/** One entry a stop, by post. */
export function stopsNow(stops: readonly Stop[], log: readonly Visit[], today: string): ReadonlyMap<string, StopNow> {
  const settled = settledVisits(log);
  const south = isSouth(stops.find((stop) => stop.position)?.position);
  const nests = nestsFrom(settled, birdGuides, today, south);
  const byPost = new Map<string, Visit[]>();
  for (const visit of settled) {
    const list = byPost.get(visit.post);
    if (list) list.push(visit);
    else byPost.set(visit.post, [visit]);
  }
  return new Map(stops.map((stop) => [stop.post, stopNow(stop, byPost.get(stop.post) ?? [], nests, today)]));
}

function stopNow(stop: Stop, given: readonly Visit[], nests: readonly Nest[], today: string): StopNow {
  // A date nobody can read says nothing of today; the checks name it elsewhere.
  const visits = given.filter((visit) => dayOrNull(visit.date) !== null).sort(byTime);
  const nest = activeNest(nests, stop.post);
  const planned = guideOf(stop.bird);
  return {
    post: stop.post,
    number: stop.number,
    visits,
    bird: guideOf(nest?.bird ?? null),
    clock: nest?.clock ?? null,
    ...(planned ? { season: localSeason(planned.season, isSouth(stop.position)) } : {}),
    nest,
    last: visits.at(-1) ?? null,
    troubles: recentTroubles(visits, today),
  };
}

const aYear = 365;

function recentTroubles(visits: readonly Visit[], today: string): StopNow['troubles'] {
  const found = new Map<Trouble, string>();
  for (const visit of [...visits].reverse()) {
    if (daysBetween(visit.date, today) > aYear) continue;
    for (const trouble of visit.trouble) if (!found.has(trouble)) found.set(trouble, visit.date);
  }
  return [...found].map(([trouble, date]) => ({ trouble, date }));
}

/** May this box be opened today? */
export function adviceToday(now: StopNow, today: string, experience: Experience): OpeningAdvice {
  const { nest, last, bird, clock } = now;
  if (!nest || !last) return openingAdvice(null, null, today, experience);
  if (!bird || !clock) return openingUnknown(last.state, daysBetween(last.date, today));
  return openingAdvice(bird, clock, today, experience);
}

/** The due list of a round. */
export function dueOf(now: ReadonlyMap<string, StopNow>, today: string, experience: Experience): readonly Due[] {
  return dueVisits([...now.values()], today, experience);
}
