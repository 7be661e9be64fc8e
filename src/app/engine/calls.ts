/** Every question the page may ask the engine: name → what goes in and what comes out. The answers are in `calls/`, one file each. */

import type { LandScores } from '../../placement/lie-of-the-land.ts';
import type { Nudge } from '../../placement/nudge.ts';
import type { TrailReview } from '../../plan/review-trail.ts';
import type { Plan, PostCard } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import type { DrawnSheet } from '../paper/paper-state.ts';
import type { BookQuestion } from './calls/book.ts';
import type { CanopyAnswer, CanopyQuestion } from './calls/canopy.ts';
import type { GeoPictureAnswer, GeoPictureQuestion } from './calls/geo-picture.ts';
import type { NudgeQuestion } from './calls/nudge.ts';
import type { ImportAnswer, ImportQuestion } from './calls/read-import.ts';
import type { PlacedPost, PostAnswer, PostQuestion } from './calls/score-post.ts';
import type { SeasonQuestion } from './calls/season-review.ts';
import type { Suggestion } from './calls/suggest.ts';
import type { SkyView } from './sky-view.ts';

/** One choice within a walk: meters of its rounds, summed score and sites. */
export interface WalkPoint {
  readonly metres: number;
  readonly score: number;
  readonly sites: number;
}

export interface Calls {
  /** Chooses, numbers and scores. */
  plan: { input: { site: Site }; output: Plan };
  /** What the box sees: horizon and the season's sun. */
  skyView: { input: { site: Site; x: number; y: number; eye: number; bird: string }; output: SkyView };
  /** The card of one post as if it stood somewhere. */
  scorePost: { input: PostQuestion; output: PostAnswer };
  /** The cards of several posts where they stand, without the other birds: after the land changed. */
  rescore: { input: { site: Site; posts: readonly PlacedPost[] }; output: PostCard[] };
  /** A better place a few steps away; null when no box may stand within reach. */
  nudge: { input: NudgeQuestion; output: Nudge | null };
  /** The score over the whole site for a bird, coarse at first; null when nothing is drawn. */
  lie: { input: { site: Site; bird: string }; output: LandScores | null };
  /** What a longer walk buys: points of rising meters and score. */
  walkCurve: { input: { site: Site }; output: WalkPoint[] };
  /** The plan's paper as pictures. */
  sheets: { input: BookQuestion; output: DrawnSheet[] };
  /** The same as one PDF file. */
  pdf: { input: BookQuestion; output: Uint8Array };
  /** Two sites of the birds that suit a place best; null when none stands anywhere. */
  suggest: { input: { site: Site; grid: number }; output: Suggestion | null };
  /** What the visits say of the trail. */
  seasonReview: { input: SeasonQuestion; output: TrailReview };
  /** A GeoTIFF picture with its corners. */
  geoPicture: { input: GeoPictureQuestion; output: GeoPictureAnswer };
  /** Woods, brush and trees from a height raster. */
  canopy: { input: CanopyQuestion; output: CanopyAnswer };
  /** A foreign file as drafts with a full account. */
  readImport: { input: ImportQuestion; output: ImportAnswer };
}
