/** A post's card: everything there is to say about it for one bird. */
import type { BirdGuide } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { Candidate, PostCard } from './card-types.ts';
import { makeContext } from './context.ts';
import type { PostContext, Row } from './criterion.ts';
import { facingCard } from './facing-card.ts';
import { flagFigures, flagsOf } from './flags.ts';
import { scoreOf, verdictsIn } from './quick-score.ts';
import { refusals, type Verdict } from './score.ts';
import { makeSpot } from './spot.ts';
import { sunCard } from './sun-card.ts';
import type { Suns } from './suns.ts';
import { whoWouldLive } from './who.ts';

/** A verdict as a row of the card. A bird that does not mind says so and has no weight. */
function rowOf({ criterion, measured, weight, score }: Verdict, context: PostContext): Row {
  const neutral = criterion.neutral?.(context) ?? null;
  return {
    id: criterion.id,
    title: criterion.title,
    unit: criterion.unit,
    weight,
    raw: measured.raw,
    score,
    sentence: neutral === null ? criterion.explain(measured, context) : neutral,
    sources: criterion.sources(context),
    at: measured.raw === null ? null : (measured.at ?? null),
    curve: neutral === null ? (criterion.curve?.(context) ?? null) : null,
  };
}

/** Ids of the two lowest rows that count, lowest first; of equals the heavier, then the earlier. Empty when fewer were judged. */
function weakestOf(rows: readonly Row[]): string[] {
  const counted = rows.filter((row) => row.score !== null && row.weight > 0);
  if (counted.length < 2) return [];
  return [...counted]
    .sort((a, b) => a.score! - b.score! || b.weight - a.weight)
    .slice(0, 2)
    .map((row) => row.id);
}

/**
 * The card of a post for a bird. `suns` come from `makeSuns`, once a site. `who: false` leaves out the other birds, which cost as much as
 * the rest many times over: for a post under the hand.
 */
export function scorePost(
  ground: Ground,
  candidate: Candidate,
  bird: BirdGuide,
  suns: Suns,
  { who }: { readonly who: boolean } = { who: true },
): PostCard {
  const spot = makeSpot(ground, candidate.at);
  const context = makeContext(spot, candidate, bird, suns);
  const verdicts = verdictsIn(context);
  const rows = verdicts.map((verdict) => rowOf(verdict, context));
  return {
    post: candidate.id,
    bird: bird.id,
    ...scoreOf(verdicts, context),
    weakest: weakestOf(rows),
    rows,
    facing: facingCard(context, suns.needle),
    sun: sunCard(context),
    refused: refusals(verdicts, context),
    flags: flagsOf(context),
    unmapped: spot.shares(flagFigures.radius.value).unmapped,
    who: who ? whoWouldLive(spot, candidate, suns) : [],
  };
}

/** A card made without the other birds, with them. */
export function withWho(card: PostCard, ground: Ground, candidate: Candidate, suns: Suns): PostCard {
  return card.who.length > 0 ? card : { ...card, who: whoWouldLive(makeSpot(ground, candidate.at), candidate, suns) };
}
