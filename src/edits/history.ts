/** Everything that was done to a site, as a stack of sites with sentences. A value: each function gives a new history. */
import type { Site } from '../site/types.ts';

/** A site and how it came about. */
export interface Step {
  readonly site: Site;
  /** What was done to come here: "Moved a corner of Woods “Long Spinney”". Empty for the start. */
  readonly sentence: string;
}

/** `steps[at]` is the present; those behind it can be redone. */
export interface History {
  readonly steps: readonly Step[];
  readonly at: number;
  /** Most steps kept; the oldest are forgotten. */
  readonly most: number;
}

/** A history with nothing to undo. */
export function startHistory(site: Site, most = 500): History {
  if (!(most >= 1)) throw new Error(`a history holds at least one step, not ${most}`);
  return { steps: [{ site, sentence: '' }], at: 0, most: Math.floor(most) };
}

/** The site as it is now. */
export function present(history: History): Site {
  return history.steps[history.at]!.site;
}

/** Puts a new site on top; what could be redone is gone. The same site again changes nothing. */
export function push(history: History, site: Site, sentence: string): History {
  if (site === present(history)) return history;
  const steps = [...history.steps.slice(0, history.at + 1), { site, sentence }].slice(-history.most);
  return { ...history, steps, at: steps.length - 1 };
}

/** Replaces the top (a drag going on): the steps below stay, so one undo takes the whole drag back. The start is never replaced but pushed upon. */
export function replaceTop(history: History, site: Site, sentence: string): History {
  if (history.at === 0) return push(history, site, sentence);
  const steps = [...history.steps.slice(0, history.at), { site, sentence }];
  return { ...history, steps };
}

/** One step back; the same history when there is none. */
export function undo(history: History): History {
  return history.at > 0 ? { ...history, at: history.at - 1 } : history;
}

/** One step forward again; the same history when there is none. */
export function redo(history: History): History {
  return history.at < history.steps.length - 1 ? { ...history, at: history.at + 1 } : history;
}

/** The sentence of what `undo` takes back, or null when there is nothing. */
export function canUndo(history: History): string | null {
  return history.at > 0 ? history.steps[history.at]!.sentence : null;
}

/** The sentence of what `redo` does again, or null when there is nothing. */
export function canRedo(history: History): string | null {
  return history.steps[history.at + 1]?.sentence ?? null;
}
