/** Changes of the site, undo and redo, on the one history of `src/edits/`. An edit itself is a pure function there: here its result becomes the open site. */
import {
  type History,
  present,
  push,
  redo as redoStep,
  replaceTop,
  startHistory,
  undo as undoStep,
} from '../../edits/history.ts';
import type { Site } from '../../site/types.ts';
import { leavesPlan } from '../same-plan.ts';
import type { AppState, Selection, Step } from '../state.ts';
import type { Store } from '../store.ts';
import { replan } from './plan.ts';
import { say } from './say.ts';
import { mayWrite } from './shelf-may-write.ts';

/** Makes `site` the open one; `sentence` says what was changed ("Box 12 moved 6 m west."). `replace` = a live drag's next step. */
export function edit(store: Store, site: Site, sentence: string, replace = false): void {
  const history = historyOf(store.state);
  const before = store.state.site;
  if (!history || site === store.state.site || !mayWrite(store)) return;
  show(store, replace ? replaceTop(history, site, sentence) : push(history, site, sentence));
  if (!replace) say(store, 'undo', sentence, { word: store.state.words.shell.undo, run: () => undo(store) });
  planAgain(store, before);
}

/** Takes the last change back. */
export function undo(store: Store): void {
  const sentence = store.state.past.at(-1)?.sentence;
  const history = historyOf(store.state);
  if (!history || sentence === undefined || !mayWrite(store)) return;
  const before = store.state.site;
  show(store, undoStep(history));
  say(store, 'tell', store.state.words.shell.undoWhat(sentence));
  planAgain(store, before);
}

/** Makes the last change taken back again. */
export function redo(store: Store): void {
  const sentence = store.state.future.at(-1)?.sentence;
  const history = historyOf(store.state);
  if (!history || sentence === undefined || !mayWrite(store)) return;
  const before = store.state.site;
  show(store, redoStep(history));
  say(store, 'tell', store.state.words.shell.redoWhat(sentence));
  planAgain(store, before);
}

/** A new plan where the change can alter it; a change that cannot lets the plan stand, for the site as it is now. */
function planAgain(store: Store, before: Site | null): void {
  const { site, planOf } = store.state;
  if (!leavesPlan(before, site)) void replan(store);
  else if (planOf === before) store.set({ planOf: site });
}

/** The history of the open site; a new one when another site was opened since. */
function historyOf({ history, site }: AppState): History | null {
  if (!site) return null;
  return history && present(history) === site ? history : startHistory(site);
}

function show(store: Store, history: History): void {
  const { state } = store;
  const site = present(history);
  const units = site.settings.units === state.site?.settings.units ? state.units : site.settings.units;
  store.set({
    site,
    history,
    units,
    ...stepsOf(history),
    selection: stillThere(site, state.selection),
    land: { ...state.land, corner: null, trouble: null },
  });
}

/** The history as the slips read it: what undo takes back (newest last), and what redo makes again (next one last). */
export function stepsOf({ steps, at }: History): { past: readonly Step[]; future: readonly Step[] } {
  const past = steps.slice(1, at + 1).map(({ sentence }, i) => ({ site: steps[i]!.site, sentence }));
  return { past, future: steps.slice(at + 1).reverse() };
}

/** A thing that is gone is no longer chosen. */
function stillThere(site: Site, selection: Selection | null): Selection | null {
  if (selection === null || selection.of === 'box') return selection;
  return site.features.some(({ id }) => id === selection.id) ? selection : null;
}
