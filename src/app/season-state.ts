/** What the Season place is at: which year, whose visits, the review of them. Part of the window's one state. */
import type { TrailReview } from '../plan/review-trail.ts';
import type { Plan } from '../plan-types.ts';
import type { Visit } from '../visits/visit.ts';
import type { Taken } from './field/take-visits.ts';

export type SeasonPage = 'review' | 'box' | 'draft' | 'files';

/** Visits made up to try the review with: of one site, never among the real ones. */
export interface Invented {
  readonly siteId: string;
  readonly visits: readonly Visit[];
}

/** What a review was made from: when any of these is another object or value, it is stale. */
export interface ReviewOf {
  readonly plan: Plan;
  readonly visits: readonly Visit[];
  readonly year: number | null;
}

export interface SeasonState {
  readonly page: SeasonPage;
  /** Null = all years together. */
  readonly year: number | null;
  readonly invented: Invented | null;
  readonly trail: TrailReview | null;
  readonly trailOf: ReviewOf | null;
  readonly working: boolean;
  readonly trouble: string | null;
  /** Post of the box that is looked at. */
  readonly box: string | null;
  /** Keys of changes the person struck from the draft. */
  readonly struck: readonly string[];
  /** What the last file brought. */
  readonly taken: { readonly name: string; readonly taken: Taken } | null;
}

export const firstSeason: SeasonState = {
  page: 'review',
  year: null,
  invented: null,
  trail: null,
  trailOf: null,
  working: false,
  trouble: null,
  box: null,
  struck: [],
  taken: null,
};
