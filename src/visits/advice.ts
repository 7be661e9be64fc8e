/** What to do with a box next year, each with its evidence. Thresholds are ours; reasons name their source. */

import type { Cause } from './nests.ts';

export type AdviceKind = 'keep' | 'move' | 'pair' | 'guard' | 're-face' | 'retire';

/** A spot the planner knows: the points (0–100) it gains, and its afternoon hours of sun against those here when it was chosen for shade. */
export interface KnownSpot {
  readonly label: string;
  readonly gain: number;
  readonly sun?: { readonly there: number; readonly here: number } | null;
}

export interface Advice {
  readonly kind: AdviceKind;
  readonly sentence: string;
  readonly sources: readonly string[];
  /** Where to, for a move when a better spot is known. */
  readonly to: KnownSpot | null;
  /** What the spot of a move is to be chosen for: the score, or shade in the afternoon. */
  readonly wants: 'score' | 'shade';
}

/** What a box went through, counted by `review.ts`. */
export interface BoxFacts {
  readonly name: string;
  /** Seasons in which it was looked at. */
  readonly seasons: number;
  readonly usedSeasons: number;
  readonly fledged: number;
  readonly failed: number;
  readonly causes: Readonly<Partial<Record<Cause, number>>>;
  /** Nests of House Sparrows or Starlings where they are pests. */
  readonly pestNests: number;
  /** Nests of another bird that shares pairs (a swallow in a bluebird's box). */
  readonly rivalNests: number;
  /** Share of the trail's nests that such rivals hold, 0–1. */
  readonly rivalShare: number;
  readonly paired: boolean;
  readonly pairs: boolean;
  readonly guarded: boolean | null;
  /** Score of the entrance criterion 0–1, or null. */
  readonly entrance: number | null;
  readonly better: KnownSpot | null;
}

type Rule = (facts: BoxFacts) => Advice | null;

const seasons = (count: number) => `${count} ${count === 1 ? 'season' : 'seasons'}`;
const nests = (count: number) => `${count} ${count === 1 ? 'nest' : 'nests'}`;
const advise = (
  kind: AdviceKind,
  sentence: string,
  sources: readonly string[],
  to: Advice['to'] = null,
  wants: Advice['wants'] = 'score',
): Advice => ({ kind, sentence, sources, to, wants });
const hours = (value: number) => value.toFixed(1);
/** A spot must gain this many points to be worth the digging. */
const worthMoving = 5;

const unused: Rule = ({ name, seasons: watched, usedSeasons, better }) => {
  if (usedSeasons > 0 || watched < 2) return null;
  if (better && better.gain >= worthMoving) {
    return advise(
      'move',
      `${name} stood unused for ${seasons(watched)}; ${better.label} scores ${Math.round(better.gain)} points more.`,
      ['ours'],
      better,
    );
  }
  if (watched < 3) return null;
  return advise(
    'retire',
    `${name} stood unused for ${seasons(watched)} and no clearly better spot is near: take it down, or offer it to another bird.`,
    ['ours'],
  );
};

const pests: Rule = ({ name, pestNests, better }) =>
  pestNests < 2
    ? null
    : advise(
        'move',
        `House Sparrows or Starlings built in ${name} ${pestNests} times: farther from buildings and feeders there are fewer, though sparrows may still come.`,
        ['GWD', 'TSP', 'Warne'],
        better,
      );

const losing: Rule = ({ name, fledged, failed, better }) =>
  failed < 2 || failed <= fledged || !better || better.gain < worthMoving
    ? null
    : advise(
        'move',
        `${name} lost ${nests(failed)} and fledged ${fledged}; ${better.label} scores ${Math.round(better.gain)} points more.`,
        ['ours'],
        better,
      );

/** Shade is what helps, so the spot offered is the shadiest near, not the one with the best score. A box that does well is cooled where it stands. */
const heat: Rule = ({ name, causes, fledged, better }) => {
  const lost = causes.heat ?? 0;
  if (lost === 0) return null;
  const shady = better?.sun ? better : null;
  const worth = lost * 2 > fledged;
  const far = shady
    ? `In the shade: ${shady.label} gets ${hours(shady.sun!.there)} hours of afternoon sun instead of ${hours(shady.sun!.here)}.`
    : 'No clearly shadier spot is known near it.';
  const where = worth ? far : 'It does well where it is.';
  const cool = 'A pale, vented box with a deep roof cools; turning it hardly does (5–10 °C against 0.6 °C).';
  return advise(
    shady && worth ? 'move' : 'keep',
    `${name} lost ${nests(lost)} to heat and fledged ${fledged}. ${where} ${cool}`,
    ['Ellis 2016', 'Ellis & Rhind 2022', 'Butler 2009', 'ours'],
    shady && worth ? shady : null,
    worth ? 'shade' : 'score',
  );
};

const guard: Rule = ({ name, causes, guarded }) =>
  (causes.predator ?? 0) === 0 || guarded === true
    ? null
    : advise(
        'guard',
        `${name} lost ${nests(causes.predator!)} to a predator${guarded === null ? ' (whether it has a guard is not noted)' : ' and has no guard'}: nests with a guard did 6.7 % better; none is proof against every animal.`,
        ['Bailey & Bonter 2017', 'Marcus 2023'],
      );

const pair: Rule = ({ name, pairs, paired, rivalNests, rivalShare }) =>
  !pairs || paired || rivalNests === 0 || rivalShare < 0.5
    ? null
    : advise(
        'pair',
        `Swallows held ${nests(rivalNests)} in ${name} and ${Math.round(rivalShare * 100)} % of the trail's nests: a second box 15–25 ft away may hold both birds. Sources disagree on how well it works.`,
        ['Sial', 'TWRA', 'Berner', "O'Halloran 1997"],
      );

const reface: Rule = ({ name, causes, entrance }) =>
  (causes.weather ?? 0) === 0 || entrance === null || entrance >= 0.5
    ? null
    : advise(
        're-face',
        `${name} lost ${nests(causes.weather!)} to wet or cold and its facing scores ${Math.round(entrance * 100)} of 100: turn it away from the storm side.`,
        ['SWOR', 'TWRA', 'RSPB'],
      );

const keep: Rule = ({ name, fledged, failed, seasons: watched, usedSeasons }) => {
  if (watched === 0) return advise('keep', `${name} was not looked at: nothing can be said.`, ['ours']);
  const thin = watched === 1 ? ' One season is thin evidence.' : '';
  return advise(
    'keep',
    `${name}: used in ${usedSeasons} of ${seasons(watched)}, ${fledged} fledged, ${failed} failed. Nothing speaks for a change.${thin}`,
    ['ours'],
  );
};

const rules: readonly Rule[] = [unused, pests, heat, losing, guard, pair, reface];

/** All advice that applies, the most weighty first; `keep` when nothing else does. Never empty. */
export function adviceFor(facts: BoxFacts): readonly Advice[] {
  const found = rules.map((rule) => rule(facts)).filter((advice) => advice !== null);
  const one = found.filter((advice, i) => found.findIndex((other) => other.kind === advice.kind) === i);
  // A box that goes is not told to stay as well.
  const goes = one.some(({ kind }) => kind === 'move' || kind === 'retire');
  const said = goes ? one.filter(({ kind }) => kind !== 'keep') : one;
  return said.length > 0 ? said : [keep(facts)!];
}
