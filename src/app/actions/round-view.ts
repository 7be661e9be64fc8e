/** What the state says about the round: which one is walked, its boxes, what is known of each. Worked out once a change. */

import { type StopNow, stopsNow } from '../field/box-now.ts';
import { type FieldRound, frameOfStops, otherWay, placeOf, roundsOfPlan, type Stop } from '../field/field-round.ts';
import { localTime } from '../field/local-time.ts';
import { nextStop, seenOn } from '../field/next-box.ts';
import { boxesWithin, type WayThere, wayThere } from '../field/position.ts';
import type { AppState } from '../state.ts';

/** Remembers the last answer while the things asked about are the same objects. */
function remembered<In extends readonly unknown[], Out>(work: (...given: In) => Out): (...given: In) => Out {
  let last: { given: In; out: Out } | null = null;
  return (...given) => {
    if (last?.given.every((one, i) => one === given[i])) return last.out;
    last = { given, out: work(...given) };
    return last.out;
  };
}

const planRounds = remembered((plan: AppState['plan'], hash: string | null) => (plan ? roundsOfPlan(plan, hash) : []));
const turned = remembered((round: FieldRound) => otherWay(round));
const frameFor = remembered((round: FieldRound) => frameOfStops(round.stops));
const nowFor = remembered((round: FieldRound, log: AppState['round']['log'], today: string) =>
  stopsNow(round.stops, log, today),
);
const seenFor = remembered((log: AppState['round']['log'], today: string) => seenOn(log, today));

export const today = (): string => localTime(new Date()).date;

/** Every round there is: those of the plan, or the shared one. */
export function roundsOf({ plan, round }: AppState): readonly FieldRound[] {
  return round.shared ? [round.shared] : planRounds(plan, round.hash);
}

/** The round that is walked, in the direction it is walked; null when there is none. */
export function roundOf(state: AppState): FieldRound | null {
  const rounds = roundsOf(state);
  const found = rounds[Math.min(state.round.walker, rounds.length - 1)] ?? null;
  return found && state.round.reversed ? turned(found) : found;
}

/** The box gone to: the chosen one when it is on any round. */
export function targetOf(state: AppState): Stop | null {
  const { selection } = state;
  if (selection?.of !== 'box') return null;
  const stops = roundOf(state)?.stops ?? [];
  return (
    stops.find((stop) => stop.number === selection.number) ??
    roundsOf(state)
      .flatMap((round) => round.stops)
      .find((stop) => stop.number === selection.number) ??
    null
  );
}

export function seenToday({ round }: AppState): ReadonlySet<string> {
  return seenFor(round.log, today());
}

/** What is known of every box of the walked round. */
export function nowOf(state: AppState): ReadonlyMap<string, StopNow> {
  const round = roundOf(state);
  return round ? nowFor(round, state.round.log, today()) : new Map();
}

export function nextOf(state: AppState, after: string | null): Stop | null {
  const round = roundOf(state);
  return round ? nextStop(round.stops, seenToday(state), new Set(state.round.skipped), after) : null;
}

/** From the walker to a stop; null without position or place. */
export function wayTo(state: AppState, stop: Stop): WayThere | null {
  const { where } = state.round;
  const round = roundOf(state);
  if (where.at !== 'fix' || !round) return null;
  const frame = frameFor(round);
  const place = placeOf(frame, stop);
  return frame && place ? wayThere(frame.toPlane(where.fix.position), where.fix.accuracy, place, round.blur) : null;
}

/** Numbers of the boxes inside the walker's error circle, nearest first. */
export function withinOf(state: AppState): readonly number[] {
  const { where } = state.round;
  const round = roundOf(state);
  const frame = round && frameFor(round);
  if (where.at !== 'fix' || !round || !frame || round.blur > 0) return [];
  const boxes = round.stops.map((stop) => ({ number: stop.number, at: placeOf(frame, stop) }));
  return boxesWithin(frame.toPlane(where.fix.position), where.fix.accuracy, boxes);
}
