/**
 * Trial scores: the same measured posts under other weights and knees, for the sureness of a plan (siting model §5: weights ± 25 %, knees
 * ± 20 %). The land is measured once; a trial only reads curves again.
 */
import type { BirdGuide, Curve, Figure } from '../birds/guide.ts';
import type { Ground } from '../ground/types.ts';
import type { SiteSettings } from '../site/types.ts';
import type { Candidate } from './card-types.ts';
import { makeContext } from './context.ts';
import type { PostContext } from './criterion.ts';
import { stretch } from './curve-shape.ts';
import { settingsFor } from './figures.ts';
import { criteria } from './index.ts';
import { scoreOf, verdictsIn } from './quick-score.ts';
import { judge, type Verdict } from './score.ts';
import { makeSpot } from './spot.ts';
import type { Suns } from './suns.ts';

/** A post measured for one bird, to be scored again and again. */
export interface MeasuredPost {
  readonly context: PostContext;
  readonly verdicts: readonly Verdict[];
}

/** Measures a post for a bird once. */
export function measurePost(ground: Ground, candidate: Candidate, bird: BirdGuide, suns: Suns): MeasuredPost {
  const context = makeContext(makeSpot(ground, candidate.at), candidate, bird, suns);
  return { context, verdicts: verdictsIn(context) };
}

/** A bird and a site's settings as one draw has them. */
export interface Trial {
  readonly bird: BirdGuide;
  readonly site: SiteSettings;
}

/** How far a draw may go from the figure. Ours (siting model §5). */
const weightSwing = 0.25;
const kneeSwing = 0.2;

/** Figures beside the guide's curves that are knees: read when scoring, not when measuring. */
const knees = ['predator-path.leap', 'afternoon-sun.lowUnder'] as const;

/** A factor between 1 − swing and 1 + swing from a random number 0–1. */
const factor = (random: () => number, swing: number) => 1 + swing * (2 * random() - 1);

function stretched<F extends Figure<Curve> | null>(figure: F, by: number): F {
  return figure === null ? figure : { ...figure, value: stretch(figure.value, by) };
}

/** Every curve of a guide with its knees moved, each by its own factor. Hard limits stay: they are rules, not readings. */
function wobbledBird(bird: BirdGuide, random: () => number): BirdGuide {
  const knee = () => factor(random, kneeSwing);
  const { habitat } = bird;
  return {
    ...bird,
    habitat: {
      ...habitat,
      lowCoverShare: stretched(habitat.lowCoverShare, knee()),
      sight: stretched(habitat.sight, knee()),
      woodsEdge: stretched(habitat.woodsEdge, knee()),
      brush: stretched(habitat.brush, knee()),
      building: stretched(habitat.building, knee()),
      feeder: stretched(habitat.feeder, knee()),
      water: stretched(habitat.water, knee()),
    },
  };
}

/** One draw from a seeded `random` (0–1): other weights, other knees, the same land. The same number of random numbers every time. */
export function drawTrial(bird: BirdGuide, site: SiteSettings, random: () => number): Trial {
  const weights: Record<string, number> = { ...site.weights };
  for (const { id, weight } of criteria) weights[id] = (weights[id] ?? weight.value) * factor(random, weightSwing);
  const figures: Record<string, number> = { ...site.figures };
  for (const key of knees) {
    const [id, name] = key.split('.') as [string, string];
    const now = settingsFor(criteria.find((one) => one.id === id)!, site)[name]!;
    figures[key] = now * factor(random, kneeSwing);
  }
  return { bird: wobbledBird(bird, random), site: { ...site, weights, figures } };
}

/** A measured post's score 0–100 under a trial. */
export function trialScore({ context, verdicts }: MeasuredPost, { bird, site }: Trial): number {
  const other: PostContext = { ...context, bird, site };
  const again = verdicts.map(({ criterion, measured }) => judge(criterion, other, measured));
  return scoreOf(again, other).score;
}
