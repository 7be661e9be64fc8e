/** Choosing what is printed, and having the sheets drawn. A newer question cancels the older. */

import type { BookQuestion } from '../engine/calls/book.ts';
import { wasAborted } from '../engine/client.ts';
import type { DrawnSheet, PaperChoice, PaperState } from '../paper/paper-state.ts';
import { pressOf } from '../paper/press.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { creditOf } from './picture-state.ts';

const running = new WeakMap<Store, AbortController>();

/** Changes some of what was chosen, and has the sheets drawn anew. */
export function choosePaper(store: Store, change: Partial<PaperChoice>): void {
  const { paper } = store.state;
  setPaper(store, { choice: { ...paper.choice, ...change } });
  void drawSheets(store);
}

/** Shows the sheet of that place in the list large. */
export function showSheet(store: Store, index: number): void {
  const last = (store.state.paper.drawn?.sheets.length ?? 1) - 1;
  setPaper(store, { shown: Math.max(0, Math.min(last, index)) });
}

/** Draws the sheets of the newest plan, unless just these are drawn already. The old ones stay until the new ones are there. */
export async function drawSheets(store: Store, again = false): Promise<void> {
  const question = questionOf(store.state);
  if (!question || (!again && isDrawn(store.state))) return;
  running.get(store)?.abort();
  const stop = new AbortController();
  running.set(store, stop);
  setPaper(store, { at: 'drawing', trouble: null });
  try {
    const sheets = await pressOf(store).call('sheets', question, { signal: stop.signal });
    if (running.get(store) !== stop) return;
    const { plan: of, choice } = question;
    setPaper(store, { drawn: { of, choice, sheets }, at: 'rest', shown: sameSheet(store.state.paper, sheets) });
  } catch (error) {
    if (running.get(store) === stop && !wasAborted(error)) setPaper(store, { at: 'rest', trouble: sentenceOf(error) });
  }
}

/** Whether the drawn sheets are those of the newest plan and choice. */
export function isDrawn({ plan, paper }: AppState): boolean {
  return paper.drawn !== null && paper.drawn.of === plan && paper.drawn.choice === paper.choice;
}

/** What the engine is asked; null when there is nothing to print. */
export function questionOf({ plan, planOf, paper, pictures }: AppState): BookQuestion | null {
  if (!plan || !planOf || plan.boxes.length === 0) return null;
  const { protocol, origin, pathname } = location;
  const address = protocol === 'https:' ? `${origin}${pathname}` : null;
  return { site: planOf, plan, choice: paper.choice, address, credit: creditOf(pictures) || null };
}

/** Changes some members of the place's state. */
export function setPaper(store: Store, change: Partial<PaperState>): void {
  store.set({ paper: { ...store.state.paper, ...change } });
}

/** An error's own sentence. */
export function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Where the sheet that was shown is now; the first when it is gone. */
function sameSheet({ drawn, shown }: PaperState, sheets: readonly DrawnSheet[]): number {
  const id = drawn?.sheets[shown]?.id;
  return Math.max(
    0,
    sheets.findIndex((sheet) => sheet.id === id),
  );
}
