/** Everything a plan rests on that does not depend on the choice: the land measured, the birds, every candidate scored. Made once, then only read. */
import { makeSuns, type Suns } from '../criteria/suns.ts';
import { prepareGround } from '../ground/prepare.ts';
import type { Ground } from '../ground/types.ts';
import { candidatesOf } from '../placement/candidates.ts';
import type { BirdScore, ScoredPost } from '../placement/choose.ts';
import type { Candidate } from '../plan-types.ts';
import { type FindWays, keptWays } from '../route/kept-ways.ts';
import type { Site } from '../site/types.ts';
import { scoredPost } from './scored-posts.ts';
import { type WantedBirds, wantedBirds } from './wanted-birds.ts';

export interface Stage {
  readonly ground: Ground;
  readonly birds: WantedBirds;
  readonly suns: Suns;
  readonly candidates: readonly Candidate[];
  readonly posts: readonly ScoredPost[];
  readonly findWays: FindWays;
  /** Scores of places beside the candidates, by bird and place: the second boxes of pairs are asked for again by every choice. */
  readonly beside: Map<string, BirdScore | null>;
}

/**
 * What may be ready before a stage is asked for: the land, the sun of all its birds, and scores of earlier stages. Suns and scores are
 * handed on only where the land and every setting the scores read are the same.
 */
export interface Ready {
  readonly ground: Ground;
  readonly suns: Suns;
  readonly scores: Map<string, ScoredPost['scores']>;
  readonly beside: Stage['beside'];
}

/** `done` 0–1 of the part that is being worked on. */
export type Tell = (part: 'land' | 'scores' | 'choice' | 'walk' | 'cards', done: number) => void;

export function stageOf(site: Site, tell: Tell = () => undefined, ready: Ready | null = null): Stage {
  tell('land', 0);
  const ground = ready?.ground ?? prepareGround(site);
  const birds = wantedBirds(site);
  const guides = [...birds.guides.values()];
  const suns = ready?.suns ?? makeSuns(ground, guides);
  const candidates = knownBirds(candidatesOf(ground), birds);
  const posts = candidates.map((candidate, index) => {
    if (index % 64 === 0) tell('scores', index / candidates.length);
    return scoredPost(ground, candidate, guides, suns, ready?.scores);
  });
  return { ground, birds, suns, candidates, posts, findWays: keptWays(), beside: ready?.beside ?? new Map() };
}

/** A post kept for a bird nobody knows serves whichever wanted bird it suits; the issue is said elsewhere. */
function knownBirds(candidates: readonly Candidate[], { guides }: WantedBirds): readonly Candidate[] {
  return candidates.map((c) => (c.bird === null || guides.has(c.bird) ? c : { ...c, bird: null }));
}
