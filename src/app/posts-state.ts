/** What the Posts place is at: the post in the hand, the better place near it, the lie of the land, which page is open. */
import type { Point } from '../geometry/point.ts';
import type { LandScores } from '../placement/lie-of-the-land.ts';
import type { Nudge } from '../placement/nudge.ts';
import type { PostCard } from '../plan-types.ts';
import type { Site } from '../site/types.ts';

/** A post while it is moved: by pointer, finger or keys. Meters of the site's frame. */
export interface Hand {
  readonly post: string;
  readonly bird: string;
  readonly from: Point;
  readonly at: Point;
  /** Its score before, 0–100; null when it had none. */
  readonly before: number | null;
  /** The newest card, and the place it is for: a few milliseconds behind `at`. Null until the first for a post that is no box. */
  readonly card: PostCard | null;
  readonly cardAt: Point;
  /** Why no box may stand at `cardAt`, or null. */
  readonly forbidden: string | null;
}

/** The answer to "is there a better place near": for which post, where it stood then, on which land. */
export interface NudgeFound {
  readonly post: string;
  readonly from: Point;
  readonly of: Site;
  /** What else was asked, as text: bird, reach, and the boxes to keep clear of. */
  readonly asked: string;
  /** Null when nothing near is better. */
  readonly best: Nudge | null;
}

/** The lie of the land as far as it is worked out. */
export interface LieShown {
  readonly bird: string;
  readonly of: Site;
  readonly scores: LandScores;
}

export type PostsPage = 'list' | 'why' | 'choose' | 'compare' | 'kept' | 'numbers' | 'left';

export interface PostsState {
  readonly page: PostsPage;
  readonly hand: Hand | null;
  readonly nudge: NudgeFound | null;
  /** Bird of the lie of the land; null = the first bird wanted. */
  readonly lieBird: string | null;
  readonly lie: LieShown | null;
  /** Number of the box the chosen one is compared with. */
  readonly other: number | null;
  /** Name of the kept plan that the map shows beside the newest. */
  readonly beside: string | null;
  /** Whether the map shows where the spacing binds. */
  readonly binding: boolean;
}

export const firstPosts: PostsState = {
  page: 'list',
  hand: null,
  nudge: null,
  lieBird: null,
  lie: null,
  other: null,
  beside: null,
  binding: true,
};
