/** What looks wrong with visits that are about to be kept or were just taken in: said in words with a fix, never forbidden. */
import { birdGuides } from '../../birds/index.ts';
import type { Issue, Site } from '../../site/types.ts';
import { checkVisits, type KnownBox } from '../../visits/check-visits.ts';
import { dayOrNull } from '../../visits/days.ts';
import { settledVisits } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import { localTime } from '../field/local-time.ts';
import type { AppState } from '../state.ts';
import { roundsOf, today } from './round-view.ts';

/** Issues of `fresh` only; the log is looked at for visits of the same minute. The device's own time zone stands for the site's. */
export function oddVisits(state: AppState, fresh: readonly Visit[]): readonly Issue[] {
  const ids = new Set(fresh.map((one) => one.id));
  const corrected = new Set(fresh.map((one) => one.replaces));
  const days = new Set(fresh.map((one) => one.date));
  const beside = settledVisits(state.round.log).filter(
    (one) => days.has(one.date) && !ids.has(one.id) && !corrected.has(one.id),
  );
  const now = localTime(new Date());
  const asked = { boxes: boxesOf(state), birds: birdGuides, today: today(), zone: now.zone };
  return checkVisits([...beside, ...fresh], asked).filter((issue) => issue.feature !== null && ids.has(issue.feature));
}

/** Every post a visit can be of: those walked, those drawn, and those that have visits already. */
function boxesOf(state: AppState): readonly KnownBox[] {
  const found = new Map<string, KnownBox>();
  const add = (post: string, number: number | null) => {
    if (!found.has(post)) found.set(post, { post, number, since: standingSince(state.site, post) });
  };
  for (const stop of roundsOf(state).flatMap((round) => round.stops)) add(stop.post, stop.number);
  for (const feature of state.site?.features ?? []) if (feature.kind === 'post') add(feature.id, null);
  for (const visit of state.round.log) add(visit.post, null);
  return [...found.values()];
}

/** The day a box was put up, where the site file says so; null when it does not, or not as a date. */
export function standingSince(site: Site | null, post: string): string | null {
  const told = site?.features.find((feature) => feature.id === post)?.properties.since;
  return typeof told === 'string' && dayOrNull(told) !== null ? told : null;
}
