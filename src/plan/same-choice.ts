/** What of a plan a change of settings leaves as it was: its scores, its choice, or all but its walk. */
import type { Choice } from '../placement/choose.ts';
import type { SiteSettings } from '../site/types.ts';
import type { Stage } from './stage.ts';

/**
 * The first part of a plan that reads each setting: the scores (and with them the words on the cards), the choice, or at most the walk and
 * its numbers. Whatever reads a setting earlier than it says here must move it up; a new setting must be put in to compile.
 * `order` and `plans` may also keep a site on the lattice of old: that shows in the candidates, which are compared themselves.
 */
export const firstReader = {
  fileVersion: 'walk',
  name: 'walk',
  units: 'scores',
  region: 'scores',
  wanted: 'choice',
  stormFrom: 'scores',
  julyMaximum: 'scores',
  box: 'scores',
  start: 'walk',
  direction: 'walk',
  date: 'scores',
  suggestGrid: 'choice',
  reachOfPaths: 'choice',
  minimumScore: 'choice',
  walkLimit: 'choice',
  minutesPerBox: 'walk',
  walkers: 'walk',
  seed: 'choice',
  weights: 'scores',
  figures: 'scores',
  order: 'walk',
  plans: 'walk',
  extra: 'walk',
} as const satisfies Record<keyof SiteSettings, 'scores' | 'choice' | 'walk'>;

const settingsRead = Object.entries(firstReader) as [keyof SiteSettings, 'scores' | 'choice' | 'walk'][];

/** Whether every setting the scores read has the same value in both. */
export function sameForScores(a: SiteSettings, b: SiteSettings): boolean {
  return settingsRead.every(([key, reader]) => reader !== 'scores' || sameValue(a[key], b[key]));
}

/**
 * Whether a choice of one stage is the choice of the other. Never under a walk limit, which makes the choice depend on the walk. Suns are
 * shared only where land and score settings are the same (`Ready`), so they stand for both.
 */
export function sameForChoice(a: Stage, b: Stage): boolean {
  const [one, other] = [a.ground.site.settings, b.ground.site.settings];
  return (
    a.suns === b.suns &&
    one.walkLimit === null &&
    settingsRead.every(([key, reader]) => reader === 'walk' || sameValue(one[key], other[key])) &&
    sameValue([...a.birds.guides.keys()], [...b.birds.guides.keys()]) &&
    sameValue(a.birds.wanted, b.birds.wanted) &&
    sameValue(a.posts, b.posts)
  );
}

/** Whether a choice came to its end: one that was stopped, or that nothing could prove, is worth making again. */
export function isSettled({ cancelled, proof }: Choice): boolean {
  return !cancelled && proof.state !== 'not-proven';
}

/** Plain data told apart by value; members that are missing and undefined are the same. */
function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return [...Object.keys(one), ...Object.keys(other)].every((key) => sameValue(one[key], other[key]));
}
