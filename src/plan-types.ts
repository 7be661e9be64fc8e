/** What a plan is: the chosen boxes, why the others were left out, the round, and how good it is known to be. */

import type { Row } from './criteria/criterion.ts';
import type { Point } from './geometry/point.ts';
import type { Issue, LonLat, PostState } from './site/types.ts';

/** A place a box may stand: drawn, imported or suggested. */
export interface Candidate {
  /** Feature id of a drawn post; `grid-x-y` for a suggested one. */
  readonly id: string;
  readonly at: Point;
  readonly state: PostState;
  /** What the person fixed, if anything. */
  readonly bird: string | null;
  readonly facing: number | null;
  readonly holeHeight: number | null;
  readonly number: number | null;
  /** Id of the post this one is drawn as a pair with. */
  readonly pair: string | null;
  readonly name: string | null;
}

/** Facing advice: a band with the best bearing in it. Degrees clockwise from north; a band may run over north (from > to). */
export interface Facing {
  readonly best: number;
  readonly from: number;
  readonly to: number;
  /** The bearing in use: the person's own, else `best`. */
  readonly used: number;
  readonly word: string;
  /** Compass degrees of `used`, with the model's words ("World Magnetic Model 2025, 2026-06-15"); null after the model's end. */
  readonly magnetic: { readonly degrees: number; readonly declination: number; readonly model: string } | null;
  readonly sentence: string;
}

export interface AfternoonSun {
  /** Mean hours of direct sun on the post within solar 12–17 h, 0–5. */
  readonly hours: number;
  readonly grade: 'LOW' | 'MID' | 'HIGH';
  /** Clear-sky direct beam of an afternoon, kWh/m². */
  readonly front: number;
  readonly roof: number;
  readonly hottestWall: number;
  /** Solar hours (by 10 minutes) with sun on at least half of the days: [from, to] spans. */
  readonly sunny: readonly (readonly [number, number])[];
  readonly sentence: string;
  readonly help: readonly string[];
}

/** Everything the card of a post shows. `score` is 0–100. */
export interface PostCard {
  readonly post: string;
  readonly bird: string;
  readonly score: number;
  /** Share of the weights that could be judged, 0–1. */
  readonly judged: number;
  /** Ids of the two lowest criteria, lowest first; empty when fewer were judged. */
  readonly weakest: readonly string[];
  readonly rows: readonly Row[];
  readonly facing: Facing;
  readonly sun: AfternoonSun;
  /** Why the bird's hard rules refuse this post; empty when they do not. */
  readonly refused: readonly string[];
  /** Things to look at that do not change the score (road in front, sprayed ground, wire overhead, unmapped share). */
  readonly flags: readonly string[];
  /** Share of the 40 m disc that is not drawn, 0–1. */
  readonly unmapped: number;
  /** Birds of the region by their own score here, best first, with the hole each needs. */
  readonly who: readonly {
    readonly bird: string;
    readonly name: string;
    readonly score: number;
    readonly hole: string;
  }[];
}

/** A box in the plan. Numbers follow the walk, from 1. */
export interface PlannedBox {
  readonly number: number;
  readonly post: string;
  readonly at: Point;
  readonly position: LonLat;
  readonly bird: string;
  readonly state: 'new' | 'standing';
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
  /** Things the person should know: fewer boxes than wanted, no woods drawn, boxes nobody can reach. */
  readonly issues: readonly Issue[];
  /** Mean unmapped share around the chosen boxes. */
  readonly unmapped: number;
}
