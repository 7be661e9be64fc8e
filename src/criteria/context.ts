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

/** Everything a criterion may look at for one post and one bird, the facing settled when it is asked for. */
export function makeContext(spot: Spot, candidate: Candidate, guide: BirdGuide, suns: Suns): PostContext {
  const site = spot.ground.site.settings;
  const bird = birdFor(guide, site);
  const sun = suns.of(bird);
  const eye = eyeOf(candidate, bird);
  return {
    spot,
    bird,
    site,
    sun,
    eye,
    // The wish costs as much as all the rest: worked out when a criterion asks, and kept on the spot.
    get wish() {
      return facingWish(spot, sun, eye, suns.facing);
    },
    get facing() {
      return candidate.facing ?? this.wish.best;
    },
  };
}
