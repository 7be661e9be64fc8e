/** How sure a plan is: its choice made again under other weights and knees. */
import type { BirdGuide } from '../birds/guide.ts';
import { criteria } from '../criteria/index.ts';
import { type MeasuredPost, measurePost, type Trial, trialScore, trialUnder, type Wobble } from '../criteria/trial.ts';
import type { Choice, ChooseInput } from '../placement/choose.ts';
import { type Sureness, surenessOf } from '../placement/sureness.ts';
import type { Stage } from './stage.ts';

export function sureOf(
  stage: Stage,
  choose: ChooseInput,
  choice: Choice,
  draws: number,
  shouldStop?: () => boolean,
): Sureness {
  const { settings } = stage.ground.site;
  const rescore = rescorer(stage);
  const ids = criteria.map((criterion) => criterion.id);
  return surenessOf({ choose, choice, criteria: ids, rescore, seed: settings.seed, draws, shouldStop });
}

/** The land is measured once a post and bird; a draw is made into curves once a bird. */
function rescorer(stage: Stage) {
  const { settings } = stage.ground.site;
  const drawn = new Map(stage.candidates.map((candidate) => [candidate.id, candidate]));
  const birds = new Map<string, OneBird>();
  return (wobble: Wobble, post: string, bird: string): number | null => {
    let one = birds.get(bird);
    if (!one) {
      const guide = stage.birds.guides.get(bird);
      if (!guide) return null;
      one = { guide, measured: new Map(), draw: wobble, trial: trialUnder(guide, settings, wobble) };
      birds.set(bird, one);
    }
    if (one.draw !== wobble) [one.draw, one.trial] = [wobble, trialUnder(one.guide, settings, wobble)];
    let measured = one.measured.get(post);
    if (!measured) {
      const candidate = drawn.get(post);
      if (!candidate) return null;
      measured = measurePost(stage.ground, candidate, one.guide, stage.suns);
      one.measured.set(post, measured);
    }
    return trialScore(measured, one.trial);
  };
}

/** A bird under the draw at hand, and its posts. */
interface OneBird {
  readonly guide: BirdGuide;
  readonly measured: Map<string, MeasuredPost>;
  draw: Wobble;
  trial: Trial;
}
