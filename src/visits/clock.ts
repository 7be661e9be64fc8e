/** The nest clock: from what was seen, the earliest and latest day of first egg, last egg, hatching and fledging. */

import type { BirdGuide } from '../birds/guide.ts';
import { mostEggs } from './check-visits.ts';
import { dateOf, dayOf, type Span } from './days.ts';
import type { Visit } from './visit.ts';

/** What a visit tells the clock. */
export type Clue = Pick<Visit, 'date' | 'state' | 'eggs' | 'young' | 'age'>;

export interface NestClock {
  /** Null when nothing bounds it on both sides. */
  readonly firstEgg: Span | null;
  readonly lastEgg: Span | null;
  /** Day the first young hatch; nestling day 0. */
  readonly hatch: Span | null;
  readonly fledge: Span | null;
  /** Eggs of the full clutch, least and most. */
  readonly clutch: readonly [number, number];
  /** Why there are no dates, when the clues do not fit one nest of this bird. */
  readonly conflict: string | null;
}

type Range = [low: number, high: number];

interface State {
  first: Range;
  last: Range;
  hatch: Range;
  fledge: Range;
  clutch: Range;
}

/** Days between eggs, incubation and nestling days of a bird, widened by `slack` days each way. */
interface Figures {
  readonly lay: Range;
  readonly sit: Range;
  readonly grow: Range;
  /** Sitting may start with the first egg. */
  readonly early: boolean;
}

function figuresOf(bird: BirdGuide, slack: number): Figures {
  const { layEvery, incubation, nestling, sitsEarly } = bird.clock;
  const wide = ([low, high]: readonly [number, number]): Range => [Math.max(0, low - slack), high + slack];
  return {
    lay: layEvery ? [...layEvery.value] : [1, 1],
    sit: wide(incubation.value),
    grow: wide(nestling.value),
    early: sitsEarly ?? false,
  };
}

/** More eggs than any box holds (Wood Duck dump nests reach 40), and older than any young in one: slips of the finger, cut down to this. */
const mostEver = 60;

/** Counts noted when all was over say nothing of that day. */
const live = (clue: Clue) => clue.state === 'eggs' || clue.state === 'young' || clue.state === 'building';
const eggsIn = (clue: Clue) => (live(clue) ? Math.min(mostEver, Math.floor(clue.eggs?.count ?? 0)) : 0);
const hasYoung = (clue: Clue) => clue.state === 'young' || (live(clue) && ((clue.young ?? 0) > 0 || clue.age !== null));
const hasEggsOnly = (clue: Clue) => eggsIn(clue) > 0 && !hasYoung(clue);

/** Raises the low and lowers the high end. */
function narrow(range: Range, low: number, high: number): void {
  range[0] = Math.max(range[0], low);
  range[1] = Math.min(range[1], high);
}

/** The day the full clutch was first counted: the same count twice, far enough apart, or young after it. Null while laying may go on. */
function completeSince(clues: readonly Clue[], gap: number): { day: number; eggs: number } | null {
  const counted = clues.filter(hasEggsOnly);
  const most = Math.max(0, ...counted.map(eggsIn));
  const full = counted.filter((clue) => eggsIn(clue) === most).map((clue) => dayOf(clue.date));
  if (full.length === 0) return null;
  const done = full[full.length - 1]! - full[0]! > gap;
  return done ? { day: full[0]!, eggs: most } : null;
}

function clutchOf(bird: BirdGuide, clues: readonly Clue[], full: { eggs: number } | null): Range {
  if (full) return [full.eggs, full.eggs];
  const { value, range } = bird.eggs.count;
  const seen = Math.max(
    0,
    ...clues.map(eggsIn),
    ...clues.map((clue) => Math.min(mostEver, Math.floor(clue.young ?? 0))),
  );
  const least = Math.min(value[0], range?.[0] ?? value[0]);
  return [Math.max(seen, seen > 0 ? Math.min(least, seen) : least, 1), Math.max(seen, mostEggs(bird))];
}

/** What each look says by itself. */
function readClues(state: State, clues: readonly Clue[], lay: Range): void {
  const most = Math.max(0, ...clues.map(eggsIn));
  const begun = clues.findIndex((clue) => eggsIn(clue) > 0 || hasYoung(clue) || clue.state === 'eggs');
  clues.forEach((clue, index) => {
    const day = dayOf(clue.date);
    const eggs = eggsIn(clue);
    const none = clue.state === 'empty' || clue.state === 'building';
    if (none && (index < begun || begun === -1)) narrow(state.first, day, Infinity);
    if (clue.state === 'eggs' && !hasYoung(clue)) {
      narrow(state.first, -Infinity, day);
      narrow(state.hatch, day, Infinity);
    }
    if (hasEggsOnly(clue)) {
      narrow(state.first, -Infinity, day - (eggs - 1) * lay[0]);
      narrow(state.hatch, day, Infinity);
      const growing = clues.slice(index + 1).some((later) => eggsIn(later) > eggs);
      if (growing && eggs < most) narrow(state.first, day - eggs * lay[1] + 1, Infinity);
    }
    if (hasYoung(clue)) {
      narrow(state.hatch, -Infinity, day);
      narrow(state.fledge, day, Infinity);
      if (clue.age) narrow(state.hatch, day - Math.min(mostEver, clue.age[1]), day - Math.max(0, clue.age[0]));
    }
    if (clue.state === 'fledged') narrow(state.fledge, -Infinity, day);
  });
}

/** `later` = `earlier` + [low, high] days, both ways. */
function link(earlier: Range, later: Range, low: number, high: number): void {
  narrow(later, earlier[0] + low, earlier[1] + high);
  narrow(earlier, later[0] - high, later[1] - low);
}

function settle(state: State, { lay, sit, grow, early }: Figures): void {
  for (let round = 0; round < 6; round++) {
    const [least, most] = state.clutch;
    link(state.first, state.last, (least - 1) * lay[0], (most - 1) * lay[1]);
    if (early) {
      link(state.first, state.hatch, sit[0], (most - 1) * lay[1] + sit[1]);
      narrow(state.hatch, -Infinity, state.last[1] + sit[1]);
    } else {
      link(state.last, state.hatch, sit[0], sit[1]);
    }
    link(state.hatch, state.fledge, grow[0], grow[1]);
  }
}

function solve(bird: BirdGuide, clues: readonly Clue[], slack: number): State | null {
  const figures = figuresOf(bird, slack);
  const full = completeSince(clues, figures.lay[1]);
  const open = (): Range => [-Infinity, Infinity];
  const state: State = {
    first: open(),
    last: open(),
    hatch: open(),
    fledge: open(),
    clutch: clutchOf(bird, clues, full),
  };
  readClues(state, clues, figures.lay);
  if (full) narrow(state.last, -Infinity, full.day);
  settle(state, figures);
  const fits = [state.first, state.last, state.hatch, state.fledge].every(([low, high]) => low <= high);
  return fits ? state : null;
}

function spanOf([low, high]: Range): Span | null {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return null;
  return { earliest: dateOf(low), latest: dateOf(high) };
}

/**
 * Dates of one nesting attempt from its visits, oldest first (no visits of earlier attempts; dates must be readable). Rules: one egg a
 * day unless the guide says otherwise, sitting starts with the last egg unless the guide says it may start earlier, hatch = last egg + incubation, fledge =
 * hatch + nestling days (`common practice`). When the clues do not fit, days are allowed 3 more each way before a conflict is reported.
 */
export function nestClock(bird: BirdGuide, clues: readonly Clue[]): NestClock {
  const state = solve(bird, clues, 0) ?? solve(bird, clues, 3);
  if (!state) {
    return {
      firstEgg: null,
      lastEgg: null,
      hatch: null,
      fledge: null,
      clutch: clutchOf(bird, clues, null),
      conflict: `The dates do not fit one nest of the ${bird.name}: look at the counts, the ages and the bird again, or it was a second nest.`,
    };
  }
  return {
    firstEgg: spanOf(state.first),
    lastEgg: spanOf(state.last),
    hatch: spanOf(state.hatch),
    fledge: spanOf(state.fledge),
    clutch: state.clutch,
    conflict: null,
  };
}

/** Dates when the first egg and the full clutch are known: for planning and for teaching. */
export function clockFromFirstEgg(bird: BirdGuide, firstEgg: string, clutch: number): NestClock {
  const figures = figuresOf(bird, 0);
  const day = dayOf(firstEgg);
  const open = (): Range => [-Infinity, Infinity];
  const state: State = { first: [day, day], last: open(), hatch: open(), fledge: open(), clutch: [clutch, clutch] };
  settle(state, figures);
  return {
    firstEgg: spanOf(state.first),
    lastEgg: spanOf(state.last),
    hatch: spanOf(state.hatch),
    fledge: spanOf(state.fledge),
    clutch: [clutch, clutch],
    conflict: null,
  };
}
