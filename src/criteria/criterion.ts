/** What a criterion is. One file each beside this one; `index.ts` lists them in display order. */

import type { BirdGuide, Curve, Figure } from '../birds/guide.ts';
import type { Point } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import type { SunTable } from '../sky/sun-table.ts';
import type { FacingWish } from './facing-wish.ts';
import type { Spot } from './spot.ts';

export type CriterionId =
  | 'openness'
  | 'woods-edge'
  | 'brush'
  | 'buildings-and-feeders'
  | 'perch'
  | 'water'
  | 'predator-path'
  | 'entrance'
  | 'afternoon-sun';

/** Everything a post's criterion may look at. Settled before measuring, never changed while measuring. */
export interface PostContext {
  readonly spot: Spot;
  readonly bird: BirdGuide;
  readonly site: SiteSettings;
  readonly sun: SunTable;
  /** Where the hole looks, degrees clockwise from true north: the post's own, else the best bearing. */
  readonly facing: number;
  /** Metres from ground to hole. */
  readonly eye: number;
  /** How good each bearing would be for the hole here. */
  readonly wish: FacingWish;
}

/** What decided, so that map and paper can show it. */
export type Evidence =
  | { readonly shape: 'place'; readonly at: Point; readonly feature: string; readonly distance: number }
  | { readonly shape: 'disc'; readonly radius: number }
  | { readonly shape: 'sight'; readonly reach: number }
  | { readonly shape: 'wedge'; readonly from: number; readonly to: number }
  | { readonly shape: 'sun' };

/**
 * `raw` in the criterion's unit; `parts` holds the figures the sentence needs; `known` is the share of what was looked at that is drawn,
 * 0–1, all of it where absent. Not judged carries why, and is neither 0 nor 1.
 */
export type Measured =
  | {
      readonly raw: number;
      readonly parts?: Readonly<Record<string, number>>;
      readonly at?: Evidence;
      readonly known?: number;
    }
  | { readonly raw: null; readonly reason: string };

export interface Criterion {
  readonly id: CriterionId;
  readonly title: string;
  readonly unit: string;
  /** Default weight by firmness of the evidence. */
  readonly weight: Figure;
  readonly settings: Readonly<Record<string, Figure>>;
  /** True where measuring it looks all round or at the sun: asked last where only the score is wanted. */
  readonly costly?: boolean;
  /** Why it does not count for this bird ("House Wrens do not mind"), or null: it then has no weight and is not called unjudged. */
  neutral?(context: PostContext): string | null;
  measure(context: PostContext): Measured;
  /** Raw → 0–1, continuous. */
  score(measured: Measured & { raw: number }, context: PostContext): number;
  /** One plain sentence with figure, unit and what it is compared with, in the site's units. */
  explain(measured: Measured, context: PostContext): string;
  /** Where it applies: why this post is refused outright for this bird, or null. */
  hard?(measured: Measured, context: PostContext): string | null;
  /** The curve to draw, raw → score, where the score has one figure. */
  curve?(context: PostContext): Curve;
  /** Source keys of this criterion for this bird. */
  sources(context: PostContext): readonly string[];
}

/** A criterion's verdict on one post. */
export interface Row {
  readonly id: CriterionId;
  readonly title: string;
  readonly unit: string;
  readonly weight: number;
  readonly raw: number | null;
  /** 0–1, or null when not judged. */
  readonly score: number | null;
  readonly sentence: string;
  readonly sources: readonly string[];
  readonly at: Evidence | null;
  readonly curve: Curve | null;
}
