/** The nest-and-egg key: likely birds with reasons, or "unsure – photograph and ask". It never forces a species. */

import type { BirdGuide } from '../birds/guide.ts';
import { birdById, isBird } from '../birds/index.ts';
import { type Evidence, shutOut, type Word, wordsFor } from './key-clues.ts';
import { type KeyRow, keyRows } from './key-table.ts';

export interface Candidate {
  /** Bird id, or `mouse`. */
  readonly id: string;
  readonly name: string;
  readonly points: number;
  readonly reasons: readonly string[];
  readonly against: readonly string[];
  /** What tells it from its doubles. */
  readonly tell: string;
  readonly sources: readonly string[];
}

export interface KeyAnswer {
  readonly verdict: 'likely' | 'unsure';
  /** Ids of the likely birds: one, or several that nest and eggs cannot tell apart; empty when unsure. */
  readonly likely: readonly string[];
  readonly sentence: string;
  /** Best first, those with nothing for them left out. */
  readonly ranked: readonly Candidate[];
  /** Names of birds the hole keeps out. */
  readonly keptOut: readonly string[];
}

interface Scored {
  readonly row: KeyRow;
  readonly bird: BirdGuide | null;
  readonly words: readonly Word[];
  readonly points: number;
  readonly nest: number;
  readonly egg: number;
}

/** A lead smaller than this is no lead, and a part this far behind the best of its kind disagrees (ours). */
const lead = 1;
const behind = 1.5;

const sum = (words: readonly Word[]) => words.reduce((total, word) => total + word.points, 0);

function scoreRow(row: KeyRow, evidence: Evidence): Scored {
  const bird = isBird(row.id) ? birdById(row.id) : null;
  const words = wordsFor(row, bird, evidence);
  const of = (part: Word['part']) => sum(words.filter((word) => word.part === part));
  return { row, bird, words, points: sum(words), nest: of('nest'), egg: of('egg') };
}

const nameOf = ({ bird }: Scored) => bird?.name ?? 'Mouse (not a bird)';

function candidateOf(scored: Scored): Candidate {
  return {
    id: scored.row.id,
    name: nameOf(scored),
    points: scored.points,
    reasons: scored.words.filter((word) => word.points > 0).map((word) => word.sentence),
    against: scored.words.filter((word) => word.points < 0).map((word) => word.sentence),
    tell: scored.row.tell,
    sources: scored.row.source,
  };
}

/** Same bird as far as nest and eggs can tell. */
const alike = (a: Scored, b: Scored) =>
  a.row.id === b.row.id || (a.row.group !== undefined && a.row.group === b.row.group);

/** Why the best answer is not good enough, or null. */
function doubt(all: readonly Scored[], evidence: Evidence): string | null {
  const [top] = all;
  if (!top || top.points <= 0) return 'nothing known fits';
  const nestSeen = evidence.material.length > 0 || evidence.cup !== null;
  const eggSeen = evidence.eggColor !== null || evidence.eggPattern !== null;
  const enough = top.bird ? nestSeen && eggSeen : evidence.material.length > 0 && evidence.cup !== null;
  if (!enough) return eggSeen ? 'the nest was not looked at' : 'one kind of clue is not enough';
  if (top.words.some((word) => word.hard)) return 'the clues disagree';
  const best = (part: 'nest' | 'egg') => Math.max(...all.map((one) => one[part]));
  if (best('nest') - top.nest >= behind || (eggSeen && best('egg') - top.egg >= behind)) {
    return 'nest and eggs point to different birds';
  }
  const rival = all.find((one) => !alike(one, top));
  if (rival && top.points - rival.points < lead) return `${nameOf(top)} and ${nameOf(rival)} are too close to tell`;
  return null;
}

function sentenceOf(all: readonly Scored[], why: string | null, likely: readonly Scored[]): string {
  if (why === null) {
    const names = likely.map(nameOf).join(' or ');
    return `Likely ${names}: ${likely[0]!.words
      .filter((word) => word.points > 0)
      .map((word) => word.sentence)
      .join('; ')}.`;
  }
  const first = all[0] && all[0].points > 0 ? ` The nearest is ${nameOf(all[0])}.` : '';
  return `Unsure, ${why}: photograph it and ask.${first}`;
}

/** Asks the key. Birds of other regions never come into question; a bird the hole shuts out is named in `keptOut`. */
export function identifyNest(evidence: Evidence): KeyAnswer {
  const near = keyRows
    .map((row) => scoreRow(row, evidence))
    .filter(({ bird }) => bird === null || bird.regions.includes(evidence.region));
  const keptOut = near.filter(({ bird }) => shutOut(bird, evidence));
  const all = near.filter((one) => !keptOut.includes(one)).sort((a, b) => b.points - a.points);
  const why = doubt(all, evidence);
  const likely = why === null ? all.filter((one) => alike(one, all[0]!) && all[0]!.points - one.points < lead) : [];
  return {
    verdict: why === null ? 'likely' : 'unsure',
    likely: likely.map(({ row }) => row.id),
    sentence: sentenceOf(all, why, likely),
    ranked: all.filter(({ points }) => points > 0).map(candidateOf),
    keptOut: keptOut.map(nameOf),
  };
}

/** Whether the key, asked with this evidence, finds exactly this bird likely: the first half of the look that removal needs. */
export function keyAgrees(birdId: string, evidence: Evidence): boolean {
  const answer = identifyNest(evidence);
  return answer.verdict === 'likely' && answer.likely.length === 1 && answer.likely[0] === birdId;
}
