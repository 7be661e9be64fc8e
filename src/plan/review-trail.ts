/** The season review of a planned trail: visits and plan in, what each box did, what told, and where boxes would stand better. */
import { birdGuides } from '../birds/index.ts';
import type { Suns } from '../criteria/suns.ts';
import { lengthText } from '../criteria/units.ts';
import type { Ground } from '../ground/types.ts';
import type { Plan, PlannedBox } from '../plan-types.ts';
import { postBird, postNumber } from '../site/properties.ts';
import type { SiteFeature } from '../site/types.ts';
import type { Outcome } from '../visits/nests.ts';
import { type BoxReview, type ReviewBox, reviewSeason, type SeasonReview } from '../visits/review.ts';
import { isSouth } from '../visits/season-year.ts';
import type { Visit } from '../visits/visit.ts';
import { type BetterSpot, betterSpot, pairSpot } from './better-spots.ts';
import { coolerSpot } from './cooler-spots.ts';

export interface TrailInput {
  readonly ground: Ground;
  readonly suns: Suns;
  readonly plan: Plan;
  readonly visits: readonly Visit[];
  /** YYYY-MM-DD. */
  readonly today: string;
  readonly seed: number;
}

export interface TrailReview {
  readonly review: SeasonReview;
  /** By post: where a box told to move would stand better. */
  readonly moves: Readonly<Record<string, BetterSpot>>;
  /** By post: where the second box of a new pair would stand. */
  readonly pairs: Readonly<Record<string, BetterSpot>>;
}

/** Boxes of the plan, and posts with visits that are not in it any more (those without scores). */
export function reviewBoxes(ground: Ground, plan: Plan, visits: readonly Visit[]): ReviewBox[] {
  const numbers = new Map(plan.boxes.map((box) => [box.number, box]));
  const planned = new Set(plan.boxes.map((box) => box.post));
  const features = new Map(ground.site.features.map((feature) => [feature.id, feature]));
  const main = plan.boxes[0]?.bird ?? ground.site.settings.wanted[0]?.bird ?? '';
  const seen = new Map<string, Visit>();
  for (const visit of visits) if (!planned.has(visit.post)) seen.set(visit.post, visit);
  return [
    ...plan.boxes.map((box) => boxOf(box, numbers, features.get(box.post))),
    ...[...seen.values()].map((visit) => formerBox(visit, features.get(visit.post), main)),
  ];
}

function boxOf(box: PlannedBox, numbers: ReadonlyMap<number, PlannedBox>, feature: SiteFeature | undefined): ReviewBox {
  const partner = box.pairedWith === null ? null : (numbers.get(box.pairedWith) ?? null);
  return {
    post: box.post,
    number: box.number,
    site: partner ? [box.post, partner.post].sort()[0]! : box.post,
    bird: box.bird,
    scores: Object.fromEntries(box.card.rows.map((row) => [row.id, row.weight > 0 ? row.score : null])),
    guarded: guardOf(feature),
    better: null,
  };
}

/** A guard noted on the post itself: `guard` true, or false for none. */
function guardOf(feature: SiteFeature | undefined): boolean | null {
  const guard = feature?.properties.guard;
  return typeof guard === 'boolean' ? guard : null;
}

function formerBox(visit: Visit, feature: SiteFeature | undefined, bird: string): ReviewBox {
  return {
    post: visit.post,
    number: visit.box ?? (feature ? postNumber(feature) : null),
    site: visit.post,
    bird: (feature ? postBird(feature) : null) ?? bird,
    scores: {},
    guarded: guardOf(feature),
    better: null,
  };
}

/** Whether any rule of the advice would look at a better spot for this box: others are not worth the reckoning. */
function wantsSpot({ nests, seasons, advice }: BoxReview): boolean {
  const count = (outcome: Outcome) => nests.filter((nest) => nest.outcome === outcome).length;
  const unused = seasons.length >= 2 && nests.every((nest) => nest.outcome === 'no-eggs');
  const losing = count('failed') >= 2 && count('failed') > count('fledged');
  return unused || losing || advice.some((one) => one.kind === 'move' || one.wants === 'shade');
}

/** Reviews twice: first to see which boxes did badly, then with the better spots found for those. */
export function reviewTrail({ ground, suns, plan, visits, today, seed }: TrailInput): TrailReview {
  const boxes = reviewBoxes(ground, plan, visits);
  const ask = { visits, birds: birdGuides, today, seed, south: isSouth(ground.frame.centre) };
  const first = reviewSeason({ ...ask, boxes });
  const { units } = ground.site.settings;
  const finder = { ground, suns, plan, say: (metres: number) => lengthText(metres, units) };
  const byPost = new Map(plan.boxes.map((box) => [box.post, box]));
  const moves: Record<string, BetterSpot> = {};
  for (const one of first.boxes.filter(wantsSpot)) {
    const box = byPost.get(one.post);
    const taken = Object.values(moves).map((spot) => ground.frame.toPlane(spot.position));
    const find = one.advice.some(({ wants }) => wants === 'shade') ? coolerSpot : betterSpot;
    const spot = box ? find(finder, box, taken) : null;
    if (spot) moves[one.post] = spot;
  }
  const review =
    Object.keys(moves).length > 0
      ? reviewSeason({ ...ask, boxes: boxes.map((box) => ({ ...box, better: moves[box.post] ?? null })) })
      : first;
  return { review, moves, pairs: pairsOf(review, byPost, finder) };
}

function pairsOf(
  review: SeasonReview,
  byPost: ReadonlyMap<string, PlannedBox>,
  finder: Parameters<typeof pairSpot>[0],
): Record<string, BetterSpot> {
  const pairs: Record<string, BetterSpot> = {};
  for (const one of review.boxes.filter(({ advice }) => advice.some(({ kind }) => kind === 'pair'))) {
    const box = byPost.get(one.post);
    const spot = box ? pairSpot(finder, box) : null;
    if (spot) pairs[one.post] = spot;
  }
  return pairs;
}
