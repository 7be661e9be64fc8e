/**
 * Trial scores: the same measured posts under other weights and knees, for the sureness of a plan (siting model §5: weights ± 25 %, knees
 * ± 20 %). The land is measured once; a trial only reads curves again.
 */
import type { BirdGuide, Curve, Figure } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { SiteSettings } from '../site/types.ts';
import type { Candidate } from './card-types.ts';
import { makeContext } from './context.ts';
import type { CriterionId, PostContext } from './criterion.ts';
import { stretch } from './curve-shape.ts';
import { settingsFor } from './figures.ts';
import { criteria } from './index.ts';
import { verdictsIn } from './quick-score.ts';
import { refusals, scoreOn, type Verdict, weightOf } from './score.ts';
import { makeSpot } from './spot.ts';
import type { Suns } from './suns.ts';

/** A post measured for one bird, to be scored again and again. */
export interface MeasuredPost {
  readonly context: PostContext;
  /** The verdicts that count: those of criteria the bird minds. */
  readonly verdicts: readonly Verdict[];
  /** True where a hard rule refuses the post: hard limits stay as they are in every draw. */
  readonly refused: boolean;
}

/** Measures a post for a bird once. */
export function measurePost(ground: Ground, candidate: Candidate, bird: BirdGuide, suns: Suns): MeasuredPost {
  const settled = makeContext(makeSpot(ground, candidate.at), candidate, bird, suns);
  const { spot, bird: known, site, sun, eye, wish, facing } = settled;
  const context: PostContext = { spot, bird: known, site, sun, eye, wish, facing };
  const verdicts = verdictsIn(context);
  return {
    context,
    verdicts: verdicts.filter(({ criterion }) => (criterion.neutral?.(context) ?? null) === null),
    refused: refusals(verdicts, context).length > 0,
  };
}

/** A bird and a site's settings as one draw has them. */
export interface Trial {
  readonly bird: BirdGuide;
  readonly site: SiteSettings;
  /** Weights in force, by criterion id. */
  readonly weights: Readonly<Record<string, number>>;
}

/** Factors by criterion on its weight and on its knees (the raw figures of its curve). */
export interface Wobble {
  readonly weight: Readonly<Record<string, number>>;
  readonly knee: Readonly<Record<string, number>>;
}

/** Figures beside the guide's curves that are knees: read when scoring, not when measuring. */
const knees = ['predator-path.leap', 'afternoon-sun.lowUnder'] as const;

/** Criteria whose score no knee moves. */
const fixed: ReadonlySet<CriterionId> = new Set(['perch', 'entrance']);

function stretched<F extends Figure<Curve> | null>(figure: F, by: number): F {
  return figure === null ? figure : { ...figure, value: stretch(figure.value, by) };
}

/** Every curve of a guide with its criterion's knees moved. Hard limits stay: they are rules, not readings. */
function wobbledBird(bird: BirdGuide, knee: (id: CriterionId) => number): BirdGuide {
  const { habitat } = bird;
  return {
    ...bird,
    habitat: {
      ...habitat,
      lowCoverShare: stretched(habitat.lowCoverShare, knee('openness')),
      sight: stretched(habitat.sight, knee('openness')),
      woodsEdge: stretched(habitat.woodsEdge, knee('woods-edge')),
      brush: stretched(habitat.brush, knee('brush')),
      building: stretched(habitat.building, knee('buildings-and-feeders')),
      feeder: stretched(habitat.feeder, knee('buildings-and-feeders')),
      water: stretched(habitat.water, knee('water')),
    },
  };
}

/** The same bird and site under other weights and knees; a criterion without a factor stays as it is. */
export function trialUnder(bird: BirdGuide, site: SiteSettings, { weight, knee }: Wobble): Trial {
  const weights: Record<string, number> = { ...site.weights };
  for (const { id, weight: usual } of criteria) weights[id] = (weights[id] ?? usual.value) * (weight[id] ?? 1);
  const figures: Record<string, number> = { ...site.figures };
  for (const key of knees) {
    const [id, name] = key.split('.') as [string, string];
    const now = settingsFor(criteria.find((one) => one.id === id)!, site)[name]!;
    figures[key] = now * (knee[id] ?? 1);
  }
  const drawn = { ...site, weights, figures };
  const wobbled = wobbledBird(bird, (id) => knee[id] ?? 1);
  const inForce = criteria.map((criterion) => [criterion.id, weightOf(criterion, drawn, wobbled)] as const);
  return { bird: wobbled, site: drawn, weights: Object.fromEntries(inForce) };
}

/** A measured post's score 0–100 under a trial: the same number as `scoreOf` its verdicts judged again, for a hundred thousand trials. */
export function trialScore({ context, verdicts, refused }: MeasuredPost, { bird, site, weights }: Trial): number {
  if (refused) return 0;
  const { spot, sun, eye, wish, facing } = context;
  const other: PostContext = { spot, bird, site, sun, eye, wish, facing };
  const { floor } = scoreOn(site);
  let logs = 0;
  let judged = 0;
  for (const { criterion, measured, score: before } of verdicts) {
    const weight = weights[criterion.id]!;
    if (measured.raw === null || weight === 0) continue;
    const score = fixed.has(criterion.id) ? before! : criterion.score(measured, other);
    const counted = Math.min(1, Math.max(floor, score));
    if (!(counted > 0)) return 0;
    judged += weight;
    logs += weight * Math.log(counted);
  }
  return judged === 0 ? 0 : 100 * Math.exp(logs / judged);
}
