/** Changes of the site, undo and redo. An edit itself is a pure function of `src/edits/`: here its result becomes the open site. */
import type { Site } from '../../site/types.ts';
import type { Store } from '../store.ts';
import { replan } from './plan.ts';
import { say } from './say.ts';

/** Makes `site` the open one; `sentence` says what was changed ("Box 12 moved 6 m west."). `replace` = a live drag's next step. */
export function edit(store: Store, site: Site, sentence: string, replace = false): void {
  const { site: old, past } = store.state;
  if (!old || site === old) return;
  const steps =
    replace && past.length > 0
      ? past.slice(0, -1).concat({ site: past.at(-1)!.site, sentence })
      : [...past, { site: old, sentence }];
  store.set({ site, past: steps, future: [], units: site.settings.units });
  if (!replace) say(store, 'undo', sentence, { word: store.state.words.shell.undo, run: () => undo(store) });
  replan(store);
}

/** Takes the last change back. */
export function undo(store: Store): void {
  const { site, past, future } = store.state;
  const step = past.at(-1);
  if (!site || !step) return;
  store.set({
    site: step.site,
    past: past.slice(0, -1),
    future: [...future, { site, sentence: step.sentence }],
    units: step.site.settings.units,
  });
  say(store, 'tell', store.state.words.shell.undoWhat(step.sentence));
  replan(store);
}

/** Makes the last change taken back again. */
export function redo(store: Store): void {
  const { site, past, future } = store.state;
  const step = future.at(-1);
  if (!site || !step) return;
  store.set({
    site: step.site,
    future: future.slice(0, -1),
    past: [...past, { site, sentence: step.sentence }],
    units: step.site.settings.units,
  });
  say(store, 'tell', store.state.words.shell.redoWhat(step.sentence));
  replan(store);
}
