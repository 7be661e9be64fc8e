/** Sites, posts and contexts for the tests of the criteria: drawn in metres, measured by the real ground. */
import { birdById } from '../../../src/birds/index.ts';
import { makeContext } from '../../../src/criteria/context.ts';
import type { Criterion, PostContext } from '../../../src/criteria/criterion.ts';
import { judge } from '../../../src/criteria/score.ts';
import { makeSpot } from '../../../src/criteria/spot.ts';
import { makeSuns, type Suns } from '../../../src/criteria/suns.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import type { Ground } from '../../../src/ground/types.ts';
import type { Candidate } from '../../../src/plan-types.ts';
import type { LonLat, SiteSettings } from '../../../src/site/types.ts';
import { planeSite, type Shape } from '../ground/plane-site.ts';

export interface Made {
  readonly ground: Ground;
  readonly suns: Suns;
}

/** 40° north, where the handbook's worked values are. */
export const ohio: LonLat = [-83, 40];

export function make(shapes: readonly Shape[], settings: Partial<SiteSettings> = {}, centre: LonLat = ohio): Made {
  const site = planeSite(shapes, centre);
  const ground = prepareGround({ ...site, settings: { ...site.settings, units: 'metric', ...settings } });
  return { ground, suns: makeSuns(ground) };
}

export function post(x = 0, y = 0, over: Partial<Candidate> = {}): Candidate {
  const empty = { bird: null, facing: null, holeHeight: null, number: null, pair: null, name: null };
  return { id: 'post', at: { x, y }, state: 'candidate', ...empty, ...over };
}

export function contextOf({ ground, suns }: Made, bird: string, candidate: Candidate = post()): PostContext {
  return makeContext(makeSpot(ground, candidate.at), candidate, birdById(bird), suns);
}

/** Score and sentence of one criterion at a post. */
export function judged(criterion: Criterion, made: Made, bird: string, candidate: Candidate = post()) {
  const context = contextOf(made, bird, candidate);
  const { measured, score, weight } = judge(criterion, context);
  const hard = criterion.hard?.(measured, context) ?? null;
  return {
    raw: measured.raw,
    score,
    weight,
    hard,
    sentence: criterion.explain(measured, context),
    at: measured.raw === null ? null : measured.at,
  };
}
