/** How sure a plan is: its choice made again under other weights and knees. */
import { criteria } from '../criteria/index.ts';
import { type MeasuredPost, measurePost, trialScore, trialUnder, type Wobble } from '../criteria/trial.ts';
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
function rescorer({ ground, candidates, birds, suns }: Stage) {
  const drawn = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  const measured = new Map<string, MeasuredPost>();
  let draw: Wobble | null = null;
  let trials = new Map<string, ReturnType<typeof trialUnder>>();
  return (wobble: Wobble, post: string, bird: string): number | null => {
    const candidate = drawn.get(post);
    const guide = birds.guides.get(bird);
    if (!candidate || !guide) return null;
    if (draw !== wobble) [draw, trials] = [wobble, new Map()];
    const key = `${bird} ${post}`;
    const kept = measured.get(key) ?? measurePost(ground, candidate, guide, suns);
    measured.set(key, kept);
    const trial = trials.get(bird) ?? trialUnder(guide, ground.site.settings, wobble);
    trials.set(bird, trial);
    return trialScore(kept, trial);
  };
}
