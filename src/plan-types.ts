/** What a plan is: the chosen boxes, why the others were left out, the round, and how good it is known to be. */

import type { PostCard } from './criteria/card-types.ts';
import type { Point } from './geometry/point.ts';
import type { Issue, LonLat } from './site/types.ts';

// Born in the criteria, which may not look up at the plan.
export type { AfternoonSun, Candidate, Facing, PostCard } from './criteria/card-types.ts';

/** A box in the plan. Numbers follow the walk, from 1. */
export interface PlannedBox {
  readonly number: number;
  readonly post: string;
  readonly at: Point;
  readonly position: LonLat;
  readonly bird: string;
  readonly state: 'new' | 'standing';
  /** True for a new box the person locked: every plan keeps it where it is. */
  readonly locked?: boolean;
  /** Number of the other box of the pair, if it is one. */
  readonly pairedWith: number | null;
  readonly holeHeight: number;
  /** Share of seeded draws in which the post stays chosen, 0–1; null when not drawn. */
  readonly sureness: number | null;
  readonly card: PostCard;
}

export type LeftOutCode =
  | 'too-close'
  | 'low-score'
  | 'refused'
  | 'forbidden'
  | 'outscored'
  | 'retired'
  | 'unreachable'
  | 'too-far-to-walk';

export interface LeftOut {
  readonly post: string;
  readonly at: Point;
  readonly code: LeftOutCode;
  /** 0–100, or null when it could not be scored. */
  readonly score: number | null;
  readonly sentence: string;
  /** Number of the box that stands in the way, if one does. */
  readonly becauseOf: number | null;
}

/** One leg of the walk; `line` starts and ends at the stops it joins. */
export interface Leg {
  readonly from: number | 'start';
  readonly to: number | 'end';
  readonly metres: number;
  readonly minutes: number;
  /** Degrees clockwise from true north, straight from stop to stop. */
  readonly bearing: number;
  readonly line: readonly Point[];
}

/** A round for one walker: box numbers in order. */
export interface Round {
  readonly walker: number;
  readonly start: Point | null;
  readonly boxes: readonly number[];
  readonly legs: readonly Leg[];
  readonly metres: number;
  readonly minutes: number;
  /** (length − proven lower bound) / lower bound, or null when not proven. */
  readonly gap: number | null;
}

/** How good the choice is known to be. */
export interface Proof {
  readonly state: 'best-possible' | 'within' | 'not-proven';
  /** Summed score (0–100 a site) reached, and the proven most. */
  readonly value: number;
  readonly bound: number | null;
  /** (bound − value) / bound, or null. */
  readonly gap: number | null;
  /** Proven most sites that fit, when fewer fit than were wanted. */
  readonly mostSites: number | null;
  readonly sentence: string;
  readonly seconds: number;
}

export interface Plan {
  readonly siteName: string;
  readonly date: string;
  readonly boxes: readonly PlannedBox[];
  /** Sites, a pair counting once. */
  readonly sites: number;
  readonly leftOut: readonly LeftOut[];
  readonly rounds: readonly Round[];
  readonly proof: Proof;
  /** What the draws of weights and knees showed; null when none were made. `changed` = posts changed when that weight alone is moved. */
  readonly sureness: {
    readonly draws: number;
    readonly matters: readonly { readonly criterion: string; readonly changed: number }[];
  } | null;
  /** Things the person should know: fewer boxes than wanted, no woods drawn, boxes nobody can reach. */
  readonly issues: readonly Issue[];
  /** Mean unmapped share around the chosen boxes. */
  readonly unmapped: number;
}
