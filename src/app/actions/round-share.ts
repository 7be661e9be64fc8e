/** What goes out of the Round and what comes back: the round, the visits, the calendar. */

import { encodeRound } from '../../print/round-code.ts';
import { dueCalendar } from '../../visits/calendar.ts';
import { forSharing, mergeVisits } from '../../visits/merge.ts';
import { writeVisitFile } from '../../visits/visit-file.ts';
import { dueOf } from '../field/box-now.ts';
import { fileWords, type OutFile } from '../field/hand-over.ts';
import { localTime } from '../field/local-time.ts';
import { looksLikeRound, type Places, readRoundFile, writeRoundFile } from '../field/round-file.ts';
import { type Home, type Taken, takeVisits } from '../field/take-visits.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { openRound } from './round-open.ts';
import { nowOf, roundOf, roundsOf, today } from './round-view.ts';
import { keepVisits, openVisits } from './visit-log.ts';
import { oddVisits } from './visit-odd.ts';

/** The site the round belongs to, as its files name it. */
export const siteName = (state: AppState): string => state.round.shared?.site ?? state.site?.settings.name ?? '';

/** The round as a file, with what was seen last at its boxes. */
export function roundFile(state: AppState, places: Places): OutFile | null {
  const round = roundOf(state);
  if (!round) return null;
  const posts = new Set(round.stops.map((stop) => stop.post));
  const text = writeRoundFile(
    {
      round: { ...round, site: siteName(state) },
      region: state.site?.settings.region ?? '',
      units: state.units,
      visits: state.round.log.filter((visit) => posts.has(visit.post)),
    },
    places,
  );
  const name = fileWords(siteName(state), state.words.round.share.roundFile, String(round.walker));
  return { name: `${name}.json`, type: 'application/json', text };
}

/** All visits of the site, without device and photos. */
export function visitsFile(state: AppState): OutFile {
  const { log, observer } = state.round;
  const text = writeVisitFile({ site: siteName(state), invented: false, visits: mergeVisits(log.map(forSharing)) });
  const name = fileWords(siteName(state), state.words.round.share.visitsFile, observer, today());
  return { name: `${name}.json`, type: 'application/json', text };
}

export function calendarFile(state: AppState): OutFile {
  const site = siteName(state);
  const due = dueOf(nowOf(state), today(), state.round.experience);
  const stamp = localTime(new Date()).instant;
  return { name: `${fileWords(site, 'due')}.ics`, type: 'text/calendar', text: dueCalendar(site, due, stamp) };
}

/** The link that opens the round on another phone; null without places, with blurred ones or with too many boxes. */
export function roundLink(state: AppState, base: string): string | null {
  const round = roundOf(state);
  if (!round || round.blur > 0) return null;
  const stops = round.stops.flatMap(({ number, position }) => (position ? [{ number, position }] : []));
  if (stops.length === 0 || stops.length < round.stops.length || stops.length > 500) return null;
  return `${base.replace(/#.*$/, '')}#round=${encodeRound({ hash: round.hash, stops })}`;
}

/** The open site as the merge needs it. */
export function homeOf(state: AppState): Home {
  const stops = roundsOf(state).flatMap((round) => round.stops);
  const posts = new Set([
    ...stops.map((stop) => stop.post),
    ...(state.site?.features ?? []).filter((feature) => feature.kind === 'post').map((feature) => feature.id),
    ...(state.plan?.leftOut ?? []).map((left) => left.post),
    ...state.round.log.map((visit) => visit.post),
  ]);
  return { site: siteName(state), hash: state.round.hash, boxes: stops, posts: [...posts] };
}

export type Answer =
  | { readonly kind: 'visits'; readonly taken: Taken; readonly kept: boolean }
  | { readonly kind: 'round'; readonly boxes: number }
  | { readonly kind: 'refused'; readonly reason: string };

/** Takes in a file that came back or came out: visits are merged, a round is opened. */
export async function takeFile(store: Store, text: string): Promise<Answer> {
  if (looksLikeRound(text)) return takeRound(store, text);
  const taken = takeVisits(store.state.round.log, text, homeOf(store.state));
  if (taken.refused !== null) return { kind: 'refused', reason: taken.refused };
  const issues = [...taken.issues, ...oddVisits(store.state, taken.added)];
  const kept = taken.added.length === 0 || (await keepVisits(store, taken.added));
  return { kind: 'visits', taken: { ...taken, issues }, kept };
}

async function takeRound(store: Store, text: string): Promise<Answer> {
  const { file, ...rest } = readRoundFile(text);
  if (!file) return { kind: 'refused', reason: 'reason' in rest ? rest.reason : '' };
  openRound(store, file.round, { region: file.region, units: file.units });
  await openVisits(store);
  await keepVisits(store, file.visits);
  return { kind: 'round', boxes: file.round.stops.length };
}
