/** The whole pipeline: Site → Plan. A good answer first, then the proof. */
import { isSettled, sameForChoice } from '../../../plan/same-choice.ts';
import { type Stage, stageOf } from '../../../plan/stage.ts';
import { type Made, makeSure, planAgain, planOn } from '../../../plan.ts';
import type { Plan } from '../../../plan-types.ts';
import type { Site } from '../../../site/types.ts';
import { posts } from '../../words/en/posts.ts';
import { loadSolver } from '../load-solver.ts';
import { prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';

/** Seconds the proof may take before it says how far it came (ours). */
const seconds = 20;

/** Draws of weights and knees (siting model §5). */
const draws = 200;

/** Share of the whole each part of the pipeline takes, as seen on the park demo: for the progress line only. */
const parts = { land: [0, 0.05], scores: [0.05, 0.5], choice: [0.5, 0.8], walk: [0.8, 0.9], cards: [0.9, 1] } as const;

/** Answers one question after another: where an edit leaves the choice as it was, the last one is only walked and numbered anew. */
export function makePlanner(): (question: { site: Site }, tools: CallTools) => Promise<Plan> {
  let last: { readonly stage: Stage; readonly made: Made } | null = null;
  return async ({ site }, tools) => {
    const shouldStop = () => tools.signal.aborted;
    const onProgress = (part: keyof typeof parts, done: number) => {
      const [from, to] = parts[part];
      tools.progress(from + (to - from) * done, posts.planParts[part]);
    };
    const how = { proof: 'quick', seconds, loadSolver, shouldStop } as const;
    const stage = stageOf(site, onProgress, prepare(site));
    const keep = (made: Made) => {
      if (!shouldStop() && isSettled(made.choice)) last = { stage, made };
    };
    let proven: Made;
    if (last && sameForChoice(last.stage, stage)) {
      proven = await planAgain(stage, last.made, { ...how, onProgress });
    } else {
      const first = await planOn(stage, { proof: 'none', sketch: true, shouldStop, onProgress });
      if (first.plan.boxes.length === 0) return first.plan;
      if (!loadSolver) return (await planOn(stage, { proof: 'none', shouldStop, onProgress }, first)).plan;
      tools.partial(first.plan);
      tools.progress(null, posts.planParts.proof);
      proven = await planOn(stage, how, first);
    }
    keep(proven);
    if (proven.plan.sureness) return proven.plan;
    tools.partial(proven.plan);
    tools.progress(null, posts.planParts.sureness);
    const plan = await makeSure(stage, proven, draws, shouldStop);
    keep({ ...proven, plan });
    return plan;
  };
}
