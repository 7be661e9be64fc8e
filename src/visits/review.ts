/** The season review: what each box and the trail did, what told success from failure, and what to change. */

import type { BirdGuide } from '../birds/guide.ts';
import { type Advice, adviceFor, type BoxFacts, type KnownSpot } from './advice.ts';
import { dayOrNull } from './days.ts';
import { exactInterval, type Interval, wilsonInterval } from './intervals.ts';
import { settledVisits } from './merge.ts';
import { type Cause, exposureDays, type Nest, nestsFrom } from './nests.ts';
import { seasonOf } from './season-year.ts';
import { mayfield, periodSurvival, type Survival } from './survival.ts';
import { type ToldAnswer, whichTold } from './told.ts';
import type { Visit } from './visit.ts';

/** A box as it stood, with the scores it was chosen by. */
export interface ReviewBox {
  readonly post: string;
  readonly number: number | null;
  /** The site it belongs to: both boxes of a pair share one; a lone box's own post id. */
  readonly site: string;
  /** The bird it was planned for. */
  readonly bird: string;
  /** Criterion id → 0–1, null = not judged. */
  readonly scores: Readonly<Record<string, number | null>>;
  /** Whether it has a guard; null when not noted. A visit that added one counts too. */
  readonly guarded: boolean | null;
  /** A better spot the planner knows, with the points (0–100) it gains. */
  readonly better: KnownSpot | null;
}

/** A share with its count and 95 % interval; null share when there was nothing to count. */
export interface Share {
  readonly part: number;
  readonly of: number;
  readonly share: number | null;
  readonly interval: Interval | null;
}

export interface BoxReview {
  readonly post: string;
  readonly number: number | null;
  readonly nests: readonly Nest[];
  readonly seasons: readonly number[];
  readonly sentence: string;
  readonly advice: readonly Advice[];
}

export interface BirdReview {
  readonly bird: string;
  readonly nests: number;
  readonly eggs: number;
  readonly fledged: readonly [number, number];
  /** Fledged nests of those whose end was seen; exact (Clopper–Pearson) interval. */
  readonly success: Share;
  readonly survival: Survival | null;
  /** Survival from first egg to fledging, with the days it was raised to. */
  readonly period: ({ readonly share: number; readonly days: number } & Interval) | null;
}

export interface SeasonReview {
  readonly years: readonly number[];
  /** Every attempt, pests too. */
  readonly nests: readonly Nest[];
  readonly boxes: readonly BoxReview[];
  /** Sites with a nest that held eggs (not a pest's) of sites looked at, all years together; Wilson interval. */
  readonly occupancy: Share;
  readonly byYear: readonly { readonly year: number; readonly occupancy: Share; readonly success: Share }[];
  readonly birds: readonly BirdReview[];
  readonly causes: Readonly<Partial<Record<Cause, number>>>;
  readonly told: ToldAnswer;
}

export interface ReviewInput {
  readonly boxes: readonly ReviewBox[];
  readonly visits: readonly Visit[];
  readonly birds: readonly BirdGuide[];
  readonly today: string;
  readonly seed: number;
  /** South of the equator seasons run July to June. */
  readonly south?: boolean;
}

function shareOf(part: number, of: number, interval: typeof wilsonInterval): Share {
  return of === 0
    ? { part, of, share: null, interval: null }
    : { part, of, share: part / of, interval: interval(part, of) };
}

const countBy = <K extends string>(keys: readonly K[]): Partial<Record<K, number>> => {
  const counts: Partial<Record<K, number>> = {};
  for (const key of keys) counts[key] = (counts[key] ?? 0) + 1;
  return counts;
};

/** Nests that held eggs and are not a pest's. */
function wantedNests(nests: readonly Nest[], birds: readonly BirdGuide[]): Nest[] {
  const pests = new Set(birds.filter((bird) => bird.pest).map((bird) => bird.id));
  return nests.filter((nest) => nest.outcome !== 'no-eggs' && !(nest.bird !== null && pests.has(nest.bird)));
}

function occupancyOf(
  boxes: readonly ReviewBox[],
  visits: readonly Visit[],
  nests: readonly Nest[],
  years: readonly number[],
  yearOf: (visit: Visit) => number,
): Share {
  const siteOf = new Map(boxes.map((box) => [box.post, box.site]));
  const keys = (rows: readonly { post: string; year: number }[]) =>
    new Set(
      rows
        .filter(({ post, year }) => siteOf.has(post) && years.includes(year))
        .map(({ post, year }) => `${siteOf.get(post)} ${year}`),
    );
  const looked = keys(visits.map((visit) => ({ post: visit.post, year: yearOf(visit) })));
  const used = keys(nests);
  return shareOf([...used].filter((key) => looked.has(key)).length, looked.size, wilsonInterval);
}

function successOf(nests: readonly Nest[]): Share {
  const fledged = nests.filter((nest) => nest.outcome === 'fledged').length;
  const failed = nests.filter((nest) => nest.outcome === 'failed').length;
  return shareOf(fledged, fledged + failed, exactInterval);
}

/** Days from first egg to fledging: middle of the guide's figures. */
function periodOf(guide: BirdGuide): number {
  const middle = ([low, high]: readonly [number, number]) => (low + high) / 2;
  const lay = guide.clock.layEvery ? middle(guide.clock.layEvery.value) : 1;
  return Math.round(
    (middle(guide.eggs.count.value) - 1) * lay +
      middle(guide.clock.incubation.value) +
      middle(guide.clock.nestling.value),
  );
}

function birdReview(bird: string, nests: readonly Nest[], guide: BirdGuide | null): BirdReview {
  const exposed = nests.flatMap((nest) => {
    const days = exposureDays(nest);
    return days === null ? [] : [{ days, lost: nest.outcome === 'failed' }];
  });
  const survival = mayfield(exposed);
  const days = guide ? periodOf(guide) : null;
  return {
    bird,
    nests: nests.length,
    eggs: nests.reduce((sum, nest) => sum + (nest.eggs ?? 0), 0),
    fledged: [
      nests.reduce((sum, nest) => sum + (nest.fledged?.[0] ?? 0), 0),
      nests.reduce((sum, nest) => sum + (nest.fledged?.[1] ?? 0), 0),
    ],
    success: successOf(nests),
    survival,
    period: survival && days !== null ? { ...periodSurvival(survival, days), days } : null,
  };
}

function factsOf(
  box: ReviewBox,
  input: ReviewInput,
  nests: readonly Nest[],
  seasons: readonly number[],
  rivalShare: number,
): BoxFacts {
  const wanted = wantedNests(nests, input.birds);
  const guide = input.birds.find((bird) => bird.id === box.bird) ?? null;
  const failed = wanted.filter((nest) => nest.outcome === 'failed');
  return {
    name: `Box ${box.number ?? box.post}`,
    seasons: seasons.length,
    usedSeasons: new Set(wanted.map((nest) => nest.year)).size,
    fledged: wanted.filter((nest) => nest.outcome === 'fledged').length,
    failed: failed.length,
    causes: countBy(failed.map((nest) => nest.cause ?? 'not-seen')),
    pestNests: nests.filter((nest) => input.birds.some((bird) => bird.id === nest.bird && bird.pest)).length,
    rivalNests: wanted.filter((nest) => isRival(nest, box, input.birds)).length,
    rivalShare,
    paired: input.boxes.filter((other) => other.site === box.site).length > 1,
    pairs: guide?.spacing.pairs ?? false,
    guarded:
      input.visits.some((visit) => visit.post === box.post && visit.action.includes('guard-added')) || box.guarded,
    entrance: box.scores.entrance ?? null,
    better: box.better,
  };
}

/** Another bird that shares pairs, in a box planned for this one: two bluebirds are not rivals of this kind, a swallow is. */
function isRival(nest: Nest, box: ReviewBox, birds: readonly BirdGuide[]): boolean {
  const guide = birds.find((bird) => bird.id === nest.bird);
  return (
    guide !== undefined && guide.id !== box.bird && guide.spacing.pairs && guide.spacing.other[box.bird] === undefined
  );
}

function boxSentence(facts: BoxFacts, nests: readonly Nest[]): string {
  const young = nests.reduce((sum, nest) => sum + (nest.fledged?.[1] ?? 0), 0);
  const lost = Object.entries(facts.causes).map(([cause, count]) => `${count} ${cause.replace('-', ' ')}`);
  const why = lost.length > 0 ? ` (${lost.join(', ')})` : '';
  const many = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;
  return `${facts.name}: ${many(facts.seasons, 'season')} looked at, ${many(nests.length, 'nest')}, ${facts.fledged} fledged (up to ${young} young), ${facts.failed} failed${why}.`;
}

/** The review of all visits given. Pass the visits of the years wanted; nothing here reads a clock or another room's plan. */
export function reviewSeason(input: ReviewInput): SeasonReview {
  const visits = settledVisits(input.visits).filter((visit) => dayOrNull(visit.date) !== null);
  const south = input.south ?? false;
  const yearOf = (visit: Visit) => seasonOf(visit.date, south);
  const years = [...new Set(visits.map(yearOf))].sort((a, b) => a - b);
  const nests = nestsFrom(visits, input.birds, input.today, south);
  const known = new Map(input.boxes.map((box) => [box.post, box]));
  const wanted = wantedNests(nests, input.birds).filter((nest) => known.has(nest.post));
  const rivals = wanted.filter((nest) => isRival(nest, known.get(nest.post)!, input.birds)).length;
  const rivalShare = wanted.length > 0 ? rivals / wanted.length : 0;
  const looked = new Map<string, Set<number>>();
  for (const visit of visits) looked.set(visit.post, (looked.get(visit.post) ?? new Set()).add(yearOf(visit)));
  const boxes = input.boxes.map((box): BoxReview => {
    const own = nests.filter((nest) => nest.post === box.post);
    const seasons = [...(looked.get(box.post) ?? [])].sort((a, b) => a - b);
    const facts = factsOf(box, input, own, seasons, rivalShare);
    return {
      post: box.post,
      number: box.number,
      nests: own,
      seasons,
      sentence: boxSentence(facts, own),
      advice: adviceFor(facts),
    };
  });
  const names = [...new Set(wanted.map((nest) => nest.bird ?? 'unknown'))].sort();
  return {
    years,
    nests,
    boxes,
    occupancy: occupancyOf(input.boxes, visits, wanted, years, yearOf),
    byYear: years.map((year) => ({
      year,
      occupancy: occupancyOf(input.boxes, visits, wanted, [year], yearOf),
      success: successOf(wanted.filter((nest) => nest.year === year)),
    })),
    birds: names.map((bird) =>
      birdReview(
        bird,
        wanted.filter((nest) => (nest.bird ?? 'unknown') === bird),
        input.birds.find((one) => one.id === bird) ?? null,
      ),
    ),
    causes: countBy(wanted.filter((nest) => nest.outcome === 'failed').map((nest) => nest.cause ?? 'not-seen')),
    told: whichTold(
      input.boxes.map((box) => {
        const own = wanted.filter((nest) => nest.post === box.post);
        const count = (outcome: Nest['outcome']) => own.filter((nest) => nest.outcome === outcome).length;
        return { scores: box.scores, fledged: count('fledged'), failed: count('failed') };
      }),
      input.seed,
    ),
  };
}
