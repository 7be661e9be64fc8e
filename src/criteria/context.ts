import type { BirdGuide } from '../birds/guide.ts';
import { birdFor } from './bird-for.ts';
import type { Candidate } from './card-types.ts';
import type { PostContext } from './criterion.ts';
import { facingWish } from './facing-wish.ts';
import type { Spot } from './spot.ts';
import type { Suns } from './suns.ts';

/** Metres from ground to hole: the post's own, else the middle of what the guide says. */
export function eyeOf(candidate: Candidate, bird: BirdGuide): number {
  const [low, high] = bird.box.mount.value;
  return candidate.holeHeight ?? (low + high) / 2;
}

/** Everything a criterion may look at for one post and one bird, with the facing settled. */
export function makeContext(spot: Spot, candidate: Candidate, guide: BirdGuide, suns: Suns): PostContext {
  const site = spot.ground.site.settings;
  const bird = birdFor(guide, site);
  const sun = suns.of(bird);
  const eye = eyeOf(candidate, bird);
  const wish = facingWish(spot, sun, eye, suns.facing);
  return { spot, bird, site, sun, eye, wish, facing: candidate.facing ?? wish.best };
}
