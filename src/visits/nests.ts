/** Visits of a box → its nesting attempts, each with dates as earliest–latest, outcome and cause. */

import type { BirdGuide } from '../birds/guide.ts';
import { type NestClock, nestClock } from './clock.ts';
import { dayOf, dayOrNull, daysBetween } from './days.ts';
import { settledVisits } from './merge.ts';
import { seasonOf } from './season-year.ts';
import { byTime, type Trouble, type Visit } from './visit.ts';

/** `unfinished`: eggs or young at the last visit; `unknown`: nobody saw the end; `no-eggs`: a nest that never held eggs (a wren's dummy, say). */
export type Outcome = 'fledged' | 'failed' | 'unfinished' | 'unknown' | 'no-eggs';

export type Cause = 'predator' | 'competitor' | 'weather' | 'heat' | 'parasites' | 'abandoned' | 'people' | 'not-seen';

export interface Nest {
  readonly post: string;
  readonly box: number | null;
  /** The season; south of the equator the year it begins in. */
  readonly year: number;
  /** 1 for the box's first attempt of the season. */
  readonly attempt: number;
  readonly bird: string | null;
  /** Null when the bird has no guide. */
  readonly clock: NestClock | null;
  /** Most eggs and live young counted; null when never counted. */
  readonly eggs: number | null;
  readonly young: number | null;
  /** Young that left: least and most; null unless fledged. At most those last counted, less the dead found later. */
  readonly fledged: readonly [number, number] | null;
  readonly outcome: Outcome;
  readonly cause: Cause | null;
  /** First and last day it was seen with eggs or young, and the day its end was first seen; null when never. */
  readonly found: string | null;
  readonly lastActive: string | null;
  readonly ended: string | null;
  readonly visits: readonly string[];
}

/** Days without a visit after which a new look is a new story (ours). */
const forgotten = 60;

const holds = (visit: Visit) =>
  visit.state === 'eggs' ||
  visit.state === 'young' ||
  (visit.state === 'building' && ((visit.eggs?.count ?? 0) > 0 || (visit.young ?? 0) > 0));
const building = (visit: Visit) => visit.state === 'building' && !holds(visit);

/** An attempt under way: the look before it (for "no eggs yet"), and its visits. */
interface Story {
  readonly before: Visit | null;
  readonly visits: Visit[];
}

const lastOf = (story: Story) => story.visits[story.visits.length - 1]!;
const hasHeld = (story: Story) => story.visits.some(holds);
const isOver = (story: Story) => {
  const last = lastOf(story);
  return !holds(last) && !building(last);
};

/** Whether this look belongs to a new attempt: another bird, eggs after young, nothing for long. */
function startsAnew(story: Story, visit: Visit): boolean {
  const last = lastOf(story);
  if (isOver(story) || daysBetween(last.date, visit.date) > forgotten) return true;
  const before = story.visits.findLast((one) => one.bird !== null)?.bird ?? null;
  const begins = holds(visit) || building(visit);
  if (begins && hasHeld(story) && before !== null && visit.bird !== null && visit.bird !== before) return true;
  const grown = story.visits.some((one) => one.state === 'young' || (one.young ?? 0) > 0);
  return grown && visit.state === 'eggs' && (visit.young ?? 0) === 0;
}

function storiesOf(visits: readonly Visit[]): Story[] {
  const stories: Story[] = [];
  let before: Visit | null = null;
  for (const visit of visits) {
    const story: Story | undefined = stories[stories.length - 1];
    const begins = holds(visit) || building(visit);
    if (story && !isOver(story) && !startsAnew(story, visit)) {
      // A look without eggs after eggs ends it; before any eggs it only says that there were none yet.
      if (begins || hasHeld(story)) story.visits.push(visit);
      else if (visit.state === 'failed' || visit.state === 'other-user') story.visits.push(visit);
    } else if (begins) stories.push({ before, visits: [visit] });
    before = visit;
  }
  return stories;
}

const causes: readonly (readonly [Trouble, Cause])[] = [
  ['predator-sign', 'predator'],
  ['snake', 'predator'],
  ['competitor', 'competitor'],
  ['people', 'people'],
  ['heat', 'heat'],
  ['water', 'weather'],
  ['cold', 'weather'],
  ['parasites', 'parasites'],
  ['ants', 'parasites'],
  ['wasps', 'competitor'],
  ['mice', 'competitor'],
  ['abandoned', 'abandoned'],
];

function causeOf(story: Story, end: Visit | null): Cause {
  if (end?.state === 'other-user') return 'competitor';
  const seen = end?.trouble.length ? end.trouble : lastOf(story).trouble;
  return causes.find(([trouble]) => seen.includes(trouble))?.[1] ?? 'not-seen';
}

/** The look that showed the end, if there was one. */
function endOf(story: Story): Visit | null {
  const last = story.visits.findLastIndex(holds);
  return last === -1 ? null : (story.visits[last + 1] ?? null);
}

function outcomeOf(
  story: Story,
  end: Visit | null,
  clock: NestClock | null,
  next: Visit | null,
  today: string,
): Outcome {
  if (!hasHeld(story)) return 'no-eggs';
  if (end?.state === 'fledged') return 'fledged';
  if (end?.state === 'failed' || end?.state === 'other-user') return 'failed';
  const seen = end ?? next;
  const last = story.visits.findLast(holds)!;
  if (!seen) return daysBetween(last.date, today) > forgotten ? 'unknown' : 'unfinished';
  // Empty with nothing said: too early to have fledged is a failure, else nobody knows.
  return clock?.fledge && seen.date < clock.fledge.earliest ? 'failed' : 'unknown';
}

const counts = (numbers: readonly (number | null | undefined)[]) =>
  numbers.filter((one) => one !== null && one !== undefined);

function fledgedOf(story: Story, end: Visit): readonly [number, number] {
  const seen = story.visits.findLast((visit) => visit.young !== null && visit.young > 0);
  const most = Math.max(0, (end.young ?? seen?.young ?? 0) - (end.young === null ? end.dead : 0));
  return seen || end.young !== null
    ? [Math.min(1, most), most]
    : [1, Math.max(1, ...counts(story.visits.map((visit) => visit.eggs?.count)))];
}

/** What every nest of a log is read with. */
interface Reading {
  readonly birds: readonly BirdGuide[];
  readonly today: string;
  readonly south: boolean;
}

function nestOf(story: Story, next: Story | null, { birds, today, south }: Reading): Omit<Nest, 'attempt'> {
  const { visits, before } = story;
  const held = visits.filter(holds);
  const end = endOf(story);
  const bird =
    held.findLast((visit) => visit.bird !== null)?.bird ??
    visits.findLast((visit) => visit.bird !== null)?.bird ??
    null;
  const guide = birds.find((one) => one.id === bird) ?? null;
  const clues = before && !holds(before) ? [before, ...visits] : visits;
  const clock = guide && held.length > 0 ? nestClock(guide, clues) : null;
  const outcome = outcomeOf(story, end, clock, next?.visits[0] ?? null, today);
  const young = counts(visits.map((visit) => visit.young));
  const eggs = counts(visits.map((visit) => visit.eggs?.count));
  return {
    post: visits[0]!.post,
    box: visits.findLast((visit) => visit.box !== null)?.box ?? null,
    year: seasonOf(visits[0]!.date, south),
    bird,
    clock,
    eggs: eggs.length > 0 ? Math.max(...eggs) : null,
    young: young.length > 0 ? Math.max(...young) : null,
    fledged: outcome === 'fledged' && end ? fledgedOf(story, end) : null,
    outcome,
    cause: outcome === 'failed' ? causeOf(story, end) : null,
    found: held[0]?.date ?? null,
    lastActive: held[held.length - 1]?.date ?? null,
    ended: end?.date ?? (held.length > 0 ? (next?.visits[0]?.date ?? null) : null),
    visits: visits.map((visit) => visit.id),
  };
}

function nestsOfBox(visits: readonly Visit[], reading: Reading): Nest[] {
  const stories = storiesOf(visits);
  const perYear = new Map<number, number>();
  return stories.map((story, index) => {
    const nest = nestOf(story, stories[index + 1] ?? null, reading);
    const attempt = (perYear.get(nest.year) ?? 0) + 1;
    perYear.set(nest.year, attempt);
    return { ...nest, attempt };
  });
}

/** Every nesting attempt in a log, by post, then in time. Visits with an unreadable date are left out (check-visits names them). `south`: of the equator. */
export function nestsFrom(
  log: readonly Visit[],
  birds: readonly BirdGuide[],
  today: string,
  south = false,
): readonly Nest[] {
  const byPost = new Map<string, Visit[]>();
  for (const visit of settledVisits(log).filter((one) => dayOrNull(one.date) !== null)) {
    const list = byPost.get(visit.post);
    if (list) list.push(visit);
    else byPost.set(visit.post, [visit]);
  }
  return [...byPost]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, visits]) => nestsOfBox([...visits].sort(byTime), { birds, today, south }));
}

/** The attempt that is active now, if the last one is: for the due list and the opening advice. */
export function activeNest(nests: readonly Nest[], post: string): Nest | null {
  const last = nests.findLast((nest) => nest.post === post) ?? null;
  return last?.outcome === 'unfinished' ? last : null;
}

/**
 * Days a nest was under observation and could be lost: from the day it was found to the day it fledged; a loss counts to the middle between the last look
 * alive and the first look after (Mayfield 1961); an unknown fate ends on the last look alive (Manolis 2000). Null when it never held eggs.
 */
export function exposureDays(nest: Nest): number | null {
  if (nest.found === null || nest.lastActive === null) return null;
  const [found, alive] = [dayOf(nest.found), dayOf(nest.lastActive)];
  if (nest.outcome === 'unfinished' || nest.outcome === 'unknown' || nest.ended === null) return alive - found;
  const ended = dayOf(nest.ended);
  if (nest.outcome === 'failed') return (alive + ended) / 2 - found;
  const fledge = nest.clock?.fledge;
  const left = fledge ? (dayOf(fledge.earliest) + dayOf(fledge.latest)) / 2 : (alive + ended) / 2;
  return Math.min(Math.max(left, alive), ended) - found;
}
