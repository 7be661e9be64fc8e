/** What the paper says besides site and plan: which revision it was printed from, and when each box is due. */
import { birdGuides } from '../../birds/index.ts';
import type { DueVisit } from '../../print/input.ts';
import { dueOfTrail } from '../../visits/due-boxes.ts';
import { settledVisits } from '../../visits/merge.ts';
import { isSouth } from '../../visits/season-year.ts';
import type { Visit } from '../../visits/visit.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { today } from './round-view.ts';

/** A save that takes longer than this many milliseconds is not waited for (ours). */
const patience = 3000;

/** "12" as the shelf counts, "demo", or that the newest change is on no shelf; with the hash beside it the paper names exactly one drawing. */
export async function revisionOf(store: Store): Promise<string> {
  await saved(store);
  const { siteId, saved: state } = store.state;
  if (siteId === null || state.at === 'demo') return 'demo';
  const head = await store.shelf.head(siteId).catch(() => null);
  if (!head) return 'not saved';
  return state.at === 'saved' ? String(head.rev) : `${head.rev}, changed since`;
}

/** Resolves when no save is under way. */
function saved(store: Store): Promise<void> {
  if (store.state.saved.at !== 'saving') return Promise.resolve();
  return new Promise((resolve) => {
    const stop = store.subscribe(({ saved: now }) => {
      if (now.at !== 'saving') done();
    });
    const late = setTimeout(() => done(), patience);
    const done = () => {
      stop();
      clearTimeout(late);
      resolve();
    };
  });
}

/** The season's real visits of the open site; made-up ones are never printed as true. */
export function visitsOnPaper({ round, siteId }: AppState): readonly Visit[] {
  return round.logOf === siteId ? round.log : none;
}

const none: readonly Visit[] = [];

/** One row a box; empty before the first visit of the trail: then every box would be due today. */
export function dueOnPaper(state: AppState): DueVisit[] {
  const visits = visitsOnPaper(state);
  const boxes = state.plan?.boxes ?? [];
  if (visits.length === 0) return [];
  const last = new Map<string, string>();
  for (const { post, date } of settledVisits(visits)) if (date > (last.get(post) ?? '')) last.set(post, date);
  const south = isSouth(boxes[0]?.position);
  return dueOfTrail(boxes, visits, birdGuides, today(), state.round.experience, south).flatMap((one) =>
    one.number === null ? [] : [{ box: one.number, due: one.due, last: last.get(one.post) ?? null }],
  );
}
