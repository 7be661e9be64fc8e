/** Choosing what is printed, and having the sheets drawn. A newer question cancels the older. */

import type { BookQuestion } from '../engine/calls/book.ts';
import { wasAborted } from '../engine/client.ts';
import type { DrawnSheet, PaperChoice, PaperState } from '../paper/paper-state.ts';
import { pressOf } from '../paper/press.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { dueOnPaper, revisionOf, visitsOnPaper } from './paper-facts.ts';
import { creditOf, readPictures } from './picture-state.ts';
import { openVisits } from './visit-log.ts';

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
  if (!hasPaper(store.state) || (!again && isDrawn(store.state))) return;
  running.get(store)?.abort();
  const stop = new AbortController();
  running.set(store, stop);
  setPaper(store, { at: 'drawing', trouble: null });
  try {
    const question = await questionOf(store);
    if (running.get(store) !== stop) return;
    if (!question) return setPaper(store, { at: 'rest' });
    const besides = besidesOf(store.state);
    const sheets = await pressOf(store).call('sheets', question, { signal: stop.signal });
    if (running.get(store) !== stop) return;
    const { plan: of, choice } = question;
    setPaper(store, {
      drawn: { of, choice, besides, sheets },
      at: 'rest',
      shown: sameSheet(store.state.paper, sheets),
    });
  } catch (error) {
    if (running.get(store) === stop && !wasAborted(error)) setPaper(store, { at: 'rest', trouble: sentenceOf(error) });
  }
}

/** Whether the drawn sheets are those of the newest plan, choice, visits and pictures. */
export function isDrawn(state: AppState): boolean {
  const { plan, paper } = state;
  const { drawn } = paper;
  const now = besidesOf(state);
  return drawn?.of === plan && drawn?.choice === paper.choice && drawn.besides.every((one, i) => one === now[i]);
}

/** What the sheets are drawn from besides plan and choice. */
function besidesOf(state: AppState): readonly unknown[] {
  return [visitsOnPaper(state), creditOf(state.pictures)];
}

function hasPaper({ plan, planOf }: AppState): boolean {
  return plan !== null && planOf !== null && plan.boxes.length > 0;
}

/** What the engine is asked; null when there is nothing to print. The visits and pictures of the site are read first, where nobody asked for them yet. */
export async function questionOf(store: Store): Promise<BookQuestion | null> {
  await Promise.all([openVisits(store), readPictures(store)]);
  const revision = await revisionOf(store);
  const { plan, planOf, paper, pictures } = store.state;
  if (!plan || !planOf || plan.boxes.length === 0) return null;
  const { protocol, origin, pathname } = location;
  const address = protocol === 'https:' ? `${origin}${pathname}` : null;
  const credit = creditOf(pictures) || null;
  return { site: planOf, plan, choice: paper.choice, address, credit, revision, visits: dueOnPaper(store.state) };
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
