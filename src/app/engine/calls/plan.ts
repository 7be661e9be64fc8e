/** The whole pipeline: Site → Plan. A good answer first, then the proof. */
import { stageOf } from '../../../plan/stage.ts';
import { makeSure, planOn } from '../../../plan.ts';
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

export async function plan({ site }: { site: Site }, tools: CallTools): Promise<Plan> {
  const shouldStop = () => tools.signal.aborted;
  const onProgress = (part: keyof typeof parts, done: number) => {
    const [from, to] = parts[part];
    tools.progress(from + (to - from) * done, posts.planParts[part]);
  };
  const stage = stageOf(site, onProgress, prepare(site));
  const first = await planOn(stage, { proof: 'none', sketch: true, shouldStop, onProgress });
  if (first.plan.boxes.length === 0) return first.plan;
  if (!loadSolver) return (await planOn(stage, { proof: 'none', shouldStop, onProgress }, first)).plan;
  tools.partial(first.plan);
  tools.progress(null, posts.planParts.proof);
  const proven = await planOn(stage, { proof: 'quick', seconds, loadSolver, shouldStop }, first);
  tools.partial(proven.plan);
  tools.progress(null, posts.planParts.sureness);
  return makeSure(stage, proven, draws, shouldStop);
}
