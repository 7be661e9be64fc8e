/** What is scored and what the score's card shows. The plan passes these on: see `../plan-types.ts`. */

import type { Point } from '../geometry/point.ts';
import type { PostState } from '../site/types.ts';
import type { Row } from './criterion.ts';

/** A place a box may stand: drawn, imported or suggested. */
export interface Candidate {
  /** Feature id of a drawn post; `grid-` and its degrees for a suggested one. */
  readonly id: string;
  readonly at: Point;
  readonly state: PostState;
  /** True for a planned box the person locked: it is kept like a standing one (its state is `fixed`) but does not stand yet. */
  readonly locked?: boolean;
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
