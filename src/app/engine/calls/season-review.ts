/** Looks back on the visits of a trail: what each box did, what told, where boxes would stand better. */
import { reviewTrail, type TrailReview } from '../../../plan/review-trail.ts';
import type { Plan } from '../../../plan-types.ts';
import type { Site } from '../../../site/types.ts';
import type { Visit } from '../../../visits/visit.ts';
import { prepare } from '../prepared.ts';

export interface SeasonQuestion {
  readonly site: Site;
  readonly plan: Plan;
  readonly visits: readonly Visit[];
  readonly today: string;
}

export function seasonReview({ site, plan, visits, today }: SeasonQuestion): TrailReview {
  const { ground, suns } = prepare(site);
  return reviewTrail({ ground, suns, plan, visits, today, seed: site.settings.seed });
}
