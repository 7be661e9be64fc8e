/** Many criteria as one number. */

import type { BirdGuide, Figure } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';
import type { Criterion, Measured, PostContext } from './criterion.ts';
import { ours, reader } from './figures.ts';

/** One criterion's say: its weight, and its score 0–1 or null where it could not be judged. */
export interface Judged {
  readonly weight: number;
  readonly score: number | null;
  /** Share of what was looked at that is drawn, 0–1; all of it where absent. */
  readonly known?: number;
}

export interface Combined {
  /** 0–100; 0 where nothing could be judged. */
  readonly score: number;
  /** Share of the weight that could be judged, 0–1; a criterion judged on ground half drawn counts half. */
  readonly judged: number;
}

/** The figure of the one number, set in a site file as `score.floor`. */
export const scoreFigures = {
  floor: ours(
    0,
    'score',
    [0, 0.3],
    'Least a criterion counts for. 0: a hopeless criterion makes the whole 0, as the method was printed.',
  ),
} as const satisfies Record<string, Figure>;
export const scoreOn = reader('score', scoreFigures);

/**
 * Weighted geometric mean, ×100: one hopeless criterion cannot be bought off, and a criterion that scores 0 makes the whole 0. What could
 * not be judged drops out and lowers `judged`. A `floor` above 0 softens that: no criterion then counts for less. Source: Derringer & Suich, J. Quality Technology 12 (1980) 214–219.
 */
export function combine(rows: readonly Judged[], floor = 0): Combined {
  let logs = 0;
  let judged = 0;
  let known = 0;
  let all = 0;
  let hopeless = false;
  for (const { weight, score, known: share = 1 } of rows) {
    all += weight;
    if (score === null || weight === 0) continue;
    judged += weight;
    known += weight * share;
    const counted = Math.max(floor, score);
    if (counted <= 0) hopeless = true;
    else logs += weight * Math.log(Math.min(1, counted));
  }
  if (all === 0) return { score: 0, judged: 0 };
  return { score: hopeless || judged === 0 ? 0 : 100 * Math.exp(logs / judged), judged: known / all };
}

/** The weight in force: the site's own, else the default, times how much this bird cares. Never below 0. */
export function weightOf(criterion: Criterion, site: SiteSettings, bird: BirdGuide): number {
  const set = site.weights[criterion.id];
  const base = Number.isFinite(set) ? set! : criterion.weight.value;
  return Math.max(0, base * (bird.weights?.[criterion.id] ?? 1));
}

/** A criterion measured and weighed at one post. Weight 0 where the bird does not mind. */
export interface Verdict extends Judged {
  readonly criterion: Criterion;
  readonly measured: Measured;
}

/** A criterion measured; not judged where the bird does not mind. */
export function measureIn(criterion: Criterion, context: PostContext): Measured {
  const neutral = criterion.neutral?.(context) ?? null;
  return neutral === null ? criterion.measure(context) : { raw: null, reason: neutral };
}

/** One criterion's verdict; `measured` is given where it was measured before (trial draws change figures, not the land). */
export function judge(criterion: Criterion, context: PostContext, before?: Measured): Verdict {
  const neutral = criterion.neutral?.(context) ?? null;
  if (neutral !== null)
    return { criterion, weight: 0, score: null, measured: { raw: null, reason: neutral }, known: undefined };
  const measured = before ?? criterion.measure(context);
  const weight = weightOf(criterion, context.site, context.bird);
  if (measured.raw === null) return { criterion, weight, score: null, measured, known: undefined };
  // A curve a person bent out of order must not leave 0–1.
  const score = Math.min(1, Math.max(0, criterion.score(measured, context)));
  return { criterion, weight, score, measured, known: measured.known };
}

/** Why the bird's hard rules refuse the post; empty when none does. */
export function refusals(verdicts: readonly Pick<Verdict, 'criterion' | 'measured'>[], context: PostContext): string[] {
  const reasons: string[] = [];
  for (const { criterion, measured } of verdicts) {
    const reason = criterion.hard?.(measured, context) ?? null;
    if (reason !== null) reasons.push(reason);
  }
  return reasons;
}
