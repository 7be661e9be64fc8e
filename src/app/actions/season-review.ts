/** Looking back: which visits, which year, and the review of them made by the engine. */
import { inventForPlan } from '../../plan/invented-trail.ts';
import { dayOrNull } from '../../visits/days.ts';
import { settledVisits } from '../../visits/merge.ts';
import { isSouth, seasonOf } from '../../visits/season-year.ts';
import type { Visit } from '../../visits/visit.ts';
import { wasAborted } from '../engine/client.ts';
import type { SeasonPage, SeasonState } from '../season-state.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { today } from './round-view.ts';

/** Seasons that are made up to try the review with. */
const inventedYears = 3;

export function setSeason(store: Store, change: Partial<SeasonState>): void {
  store.set({ season: { ...store.state.season, ...change } });
}

export function showSeasonPage(store: Store, page: SeasonPage): void {
  setSeason(store, { page });
}

/** Whether a made-up season of the open site is shown. */
export function showsInvented({ season, siteId }: AppState): boolean {
  return season.invented !== null && season.invented.siteId === siteId;
}

/** The visits that are looked at: the made-up ones while they are shown, else the site's own. */
export function seasonVisits(state: AppState): readonly Visit[] {
  if (showsInvented(state)) return state.season.invented!.visits;
  return state.round.logOf === state.siteId ? state.round.log : none;
}

const none: readonly Visit[] = [];

/** Whether the trail lies south of the equator, where a season runs July to June. */
export function southOf({ plan }: AppState): boolean {
  return isSouth(plan?.boxes[0]?.position);
}

/** Seasons with visits, newest first. */
export function seasonYears(state: AppState): readonly number[] {
  const years = seasonVisits(state).filter((one) => dayOrNull(one.date) !== null);
  return [...new Set(years.map((one) => seasonOf(one.date, southOf(state))))].sort((a, b) => b - a);
}

/** Settled visits of the chosen season, or of all. */
export function yearVisits(state: AppState): readonly Visit[] {
  const { year } = state.season;
  const visits = settledVisits(seasonVisits(state));
  return year === null ? visits : visits.filter((one) => seasonOf(one.date, southOf(state)) === year);
}

/** Whether the review shown is that of the visits, plan and year of now. */
export function isReviewed({ season, plan }: AppState, visits: readonly Visit[]): boolean {
  const of = season.trailOf;
  return of !== null && of.plan === plan && of.visits === visits && of.year === season.year;
}

const running = new WeakMap<Store, AbortController>();

/** Has the engine look back; a newer question cancels the older. */
export async function review(store: Store): Promise<void> {
  const { plan, planOf, season } = store.state;
  const visits = seasonVisits(store.state);
  if (!plan || !planOf || visits.length === 0) return;
  running.get(store)?.abort();
  const stop = new AbortController();
  running.set(store, stop);
  const { year } = season;
  setSeason(store, { working: true, trouble: null, trailOf: { plan, visits, year } });
  try {
    const question = { site: planOf, plan, visits: yearVisits(store.state), today: lookedOn(visits) };
    const trail = await store.engine.call('seasonReview', question, { signal: stop.signal });
    if (running.get(store) === stop) setSeason(store, { trail, working: false });
  } catch (error) {
    if (running.get(store) !== stop || wasAborted(error)) return;
    setSeason(store, { working: false, trouble: error instanceof Error ? error.message : String(error) });
  }
}

/** Today, or the day of the newest visit when that is later (a made-up season may end after today). */
function lookedOn(visits: readonly Visit[]): string {
  return visits.reduce((day, { date }) => (dayOrNull(date) !== null && date > day ? date : day), today());
}

/** Looks back once more when anything it rests on changed. */
export function reviewWhenStale(store: Store): void {
  const { season, plan, engine } = store.state;
  const visits = seasonVisits(store.state);
  if (!plan || visits.length === 0 || engine.at === 'work') return;
  if (!isReviewed(store.state, visits) && season.trouble === null) void review(store);
}

export function chooseYear(store: Store, year: number | null): void {
  setSeason(store, { year, struck: [], trouble: null });
}

/** Makes up three seasons for the boxes of the plan. They are kept in this window only. */
export function inventSeason(store: Store): void {
  const { plan, siteId } = store.state;
  if (!plan || siteId === null) return;
  const invented = { siteId, visits: inventForPlan(plan, inventedYears, 1) };
  setSeason(store, { invented, year: null, page: 'review', struck: [], trouble: null });
}

export function endInvented(store: Store): void {
  setSeason(store, { invented: null, trail: null, trailOf: null, year: null, page: 'review', box: null, struck: [] });
}

/** Opens the page of one box and marks it on the map; the Season stays open. */
export function lookAtBox(store: Store, post: string, number: number | null): void {
  const planned = store.state.plan?.boxes.some((box) => box.number === number && box.post === post) ?? false;
  // In one step: who listens must not meet the box chosen while the page still shows another.
  store.set({
    selection: planned && number !== null ? { of: 'box', number } : null,
    season: { ...store.state.season, page: 'box', box: post },
  });
}

export function leaveBox(store: Store): void {
  store.set({ selection: null });
  setSeason(store, { page: 'review', box: null });
}
