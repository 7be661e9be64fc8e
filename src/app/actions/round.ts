/** What a walker does on the Round: going to a box, skipping, noting a visit, following the position. */

import { makeFrame } from '../../ground/frame.ts';
import { declination } from '../../sky/declination.ts';
import type { Visit, VisitState } from '../../visits/visit.ts';
import { birdName } from '../bird-name.ts';
import { sha256 } from '../digest.ts';
import { hashText, type Stop } from '../field/field-round.ts';
import { localTime } from '../field/local-time.ts';
import { courseOf, type Fix, isStale, type Whereabouts } from '../field/position.ts';
import { correctionOf, finishDraft, startDraft, type VisitDraft } from '../field/visit-draft.ts';
import { watchHeading } from '../field/watch-heading.ts';
import { watchPosition } from '../field/watch-position.ts';
import type { RoundPage } from '../round-state.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { nextOf, nowOf, roundOf, targetOf } from './round-view.ts';
import { say } from './say.ts';
import { select } from './select.ts';
import { keepVisits, setRound, undoVisit } from './visit-log.ts';

export function showPage(store: Store, page: RoundPage): void {
  setRound(store, { page });
}

/** Goes to a box, in any order. */
export function goToBox(store: Store, number: number): void {
  setRound(store, { page: 'walk', draft: null, arrived: null, follow: true });
  select(store, { of: 'box', number });
}

/** The next box in the order of the round; with none left the choice is dropped. */
export function goToNext(store: Store): void {
  const next = nextOf(store.state, targetOf(store.state)?.post ?? null);
  setRound(store, { draft: null, arrived: null, follow: true });
  select(store, next ? { of: 'box', number: next.number } : null);
}

export function skipBox(store: Store): void {
  const target = targetOf(store.state);
  if (!target) return;
  const { skipped } = store.state.round;
  setRound(store, { skipped: [...skipped.filter((post) => post !== target.post), target.post] });
  goToNext(store);
}

/** The walker stands at the box: its whole visit page is shown. */
export function arrive(store: Store, stop: Stop): void {
  setRound(store, { arrived: stop.post, draft: null });
}

/** Begins a visit in one state. */
export function beginVisit(store: Store, stop: Stop, state: VisitState): void {
  setRound(store, { draft: startDraft(stop.post, stop.number, state, nowOf(store.state).get(stop.post) ?? null) });
}

/** Opens a kept visit to be corrected: what is kept then stands in its place, and the old one stays in the log. */
export function correctVisit(store: Store, visit: Visit): void {
  setRound(store, { draft: correctionOf(visit), asking: false });
}

export function changeDraft(store: Store, change: Partial<VisitDraft>): void {
  const { draft } = store.state.round;
  if (draft) setRound(store, { draft: { ...draft, ...change } });
}

/** The visit the open draft would become now. */
export function draftedVisit({ round }: AppState, id = 'draft'): Visit | null {
  const { draft, observer, device } = round;
  return draft && finishDraft(draft, { id, observer, device, now: localTime(new Date()) });
}

/** Keeps the open draft as a visit, offers to take it back for ten seconds, and goes on to the next box. */
export async function keepDraft(store: Store): Promise<void> {
  const visit = draftedVisit(store.state, `v-${crypto.randomUUID()}`);
  if (!visit) return;
  const { words } = store.state;
  setRound(store, { draft: null, skipped: store.state.round.skipped.filter((post) => post !== visit.post) });
  goToNext(store);
  const kept = await keepVisits(store, [visit]);
  const sentence = words.round.keptVisit(visit.box ?? 0, visitWords(visit, words), kept);
  say(store, 'undo', sentence, { word: words.shell.undo, run: () => void takeBack(store, visit) });
}

async function takeBack(store: Store, visit: Visit): Promise<void> {
  await undoVisit(store, visit);
  if (visit.box !== null) goToBox(store, visit.box);
  say(store, 'tell', store.state.words.round.takenBack(visit.box ?? 0));
}

/** Such as "5 blue eggs" or "4 young, 3–5 days". */
export function visitWords(visit: Visit, words: AppState['words']): string {
  const { round } = words;
  const eggs = visit.eggs;
  if (visit.state === 'eggs' && eggs) {
    const color = eggs.color ? round.clue[eggs.color] : null;
    return round.eggsSeen(eggs.count, color);
  }
  if (visit.state === 'young') return round.youngSeen(visit.young, visit.age);
  const bird = visit.bird && visit.state !== 'empty' ? ` (${birdName(visit.bird)})` : '';
  return `${round.stateSeen[visit.state]}${bird}`;
}

const watching = new WeakMap<Store, () => void>();

/** Follows position and compass until `stopPosition`. */
export function startPosition(store: Store): void {
  stopPosition(store);
  const stops = [watchPosition((where) => hearPosition(store, where)), startHeading(store)];
  watching.set(store, () => {
    for (const stop of stops) stop();
  });
}

export function stopPosition(store: Store): void {
  watching.get(store)?.();
  watching.delete(store);
}

function startHeading(store: Store): () => void {
  return watchHeading(
    () => needleAt(store.state),
    (heading) => setRound(store, { heading }),
  );
}

/** Degrees the needle points east (+) of true north where the walker is; null when no model says. */
export function needleAt(state: AppState): number | null {
  const { where } = state.round;
  const place = where.at === 'fix' ? where.fix.position : roundOf(state)?.stops.find((stop) => stop.position)?.position;
  return place ? declination(place, localTime(new Date()).date).degrees : null;
}

function hearPosition(store: Store, where: Whereabouts): void {
  const { round } = store.state;
  if (where.at !== 'fix') {
    setRound(store, { where });
    return;
  }
  const before = round.where.at === 'fix' ? round.where.fix : null;
  const course = courseSince(before, where.fix);
  const heading =
    course === null
      ? round.heading
      : round.heading === null || round.heading.kind === 'course'
        ? { degrees: course, kind: 'course' as const }
        : round.heading;
  // The older fix stays the one to compare with until the walker has moved beyond its error.
  setRound(store, { where, heading, fixBefore: course === null ? (round.fixBefore ?? before) : before });
}

function courseSince(before: Fix | null, now: Fix): number | null {
  const frame = makeFrame(now.position);
  return courseOf(before && !isStale(before, now.time) ? before : null, now, frame.toPlane);
}

/** Keeps the plan's hash beside it, for codes and files. */
export async function followPlan(store: Store): Promise<void> {
  const { plan, round } = store.state;
  if (round.shared) return;
  const hash = plan && plan.boxes.length > 0 ? (await sha256(hashText(plan.boxes))).slice(0, 8) : null;
  if (store.state.plan === plan && store.state.round.hash !== hash) setRound(store, { hash });
}
