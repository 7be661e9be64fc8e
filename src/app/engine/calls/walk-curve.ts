/** What a longer walk buys: the score that can be had within each of several walks. */
import { stageOf } from '../../../plan/stage.ts';
import { walkCurve as curveOn } from '../../../plan.ts';
import type { Site } from '../../../site/types.ts';
import { en } from '../../words/en.ts';
import type { WalkPoint } from '../calls.ts';
import type { CallTools } from '../protocol.ts';

export async function walkCurve({ site }: { site: Site }, tools: CallTools): Promise<WalkPoint[]> {
  const stage = stageOf(site, (part, done) => tools.progress(done / 4, en.posts.planParts[part]));
  tools.progress(null, en.posts.walkCurve.making);
  const points = await curveOn(stage, () => tools.signal.aborted);
  return points.map(({ metres, score, sites }) => ({ metres, score, sites }));
}
