/** Next year's plan from the season's advice: shown line by line, made as one step of the history. */
import { type Change, changesOf, draftNextYear } from '../../plan/next-year.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { say } from './say.ts';
import { setSeason } from './season-review.ts';

/** The year after the last season looked at. */
export function draftYear({ season, plan }: AppState): number {
  const last = season.trail?.review.years.at(-1) ?? Number(plan?.date.slice(0, 4));
  return last + 1;
}

/** Every change the advice asks for; empty without a review. */
export function draftChanges({ season, plan }: AppState): readonly Change[] {
  return season.trail && plan ? changesOf(season.trail, plan) : [];
}

/** Those that are ticked and can be done. */
export function tickedChanges(state: AppState): readonly Change[] {
  return draftChanges(state).filter((one) => one.cannot === null && !state.season.struck.includes(one.key));
}

export function strike(store: Store, keys: readonly string[], off: boolean): void {
  const rest = store.state.season.struck.filter((one) => !keys.includes(one));
  setSeason(store, { struck: off ? [...rest, ...keys] : rest });
}

/** Makes the ticked changes. */
export function takeDraft(store: Store): void {
  const { site, plan, season } = store.state;
  if (!site || !plan || !season.trail) return;
  const { edit: answer, refused } = draftNextYear(
    site,
    plan,
    season.trail,
    tickedChanges(store.state),
    draftYear(store.state),
  );
  if ('refused' in answer) {
    say(store, 'trouble', answer.refused);
    return;
  }
  setSeason(store, { page: 'review', struck: [] });
  edit(store, answer.site, `${answer.sentence}.`);
  for (const sentence of refused) say(store, 'trouble', sentence);
}
