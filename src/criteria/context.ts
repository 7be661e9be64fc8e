import type { BirdGuide } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { birdFor } from './bird-for.ts';
import type { Candidate } from './card-types.ts';
import type { PostContext } from './criterion.ts';
import { type FacingGrounds, type FacingWish, facingWish } from './facing-wish.ts';
import type { Spot } from './spot.ts';
import type { Suns } from './suns.ts';

/** Metres from ground to hole: the post's own, else the middle of what the guide says. */
export function eyeOf(candidate: Candidate, bird: BirdGuide): number {
  const [low, high] = bird.box.mount.value;
  return candidate.holeHeight ?? (low + high) / 2;
}

/** A class, for its two members that are worked out when asked: thousands of contexts are made while a site is scored. */
class SettledContext implements PostContext {
  readonly spot: Spot;
  readonly bird: BirdGuide;
  readonly site: SiteSettings;
  readonly sun: SunTable;
  readonly eye: number;
  private readonly fixed: number | null;
  private asked: FacingWish | null = null;
  private readonly grounds: FacingGrounds;

  constructor(spot: Spot, candidate: Candidate, guide: BirdGuide, suns: Suns) {
    this.spot = spot;
    this.site = spot.ground.site.settings;
    this.bird = birdFor(guide, this.site);
    this.sun = suns.of(this.bird);
    this.eye = eyeOf(candidate, this.bird);
    this.fixed = candidate.facing;
    this.grounds = suns.facing;
  }

  /** The wish costs as much as all the rest: worked out when a criterion asks, and kept on the spot. */
  get wish(): FacingWish {
    this.asked ??= facingWish(this.spot, this.sun, this.eye, this.grounds);
    return this.asked;
  }

  get facing(): number {
    return this.fixed ?? this.wish.best;
  }
}

/** Everything a criterion may look at for one post and one bird, the facing settled when it is asked for. */
export function makeContext(spot: Spot, candidate: Candidate, guide: BirdGuide, suns: Suns): PostContext {
  return new SettledContext(spot, candidate, guide, suns);
}
