/** What a longer walk buys: the score that can be had within each of several walks. */
import { stageOf } from '../../../plan/stage.ts';
import { walkCurve as curveOn } from '../../../plan.ts';
import type { Site } from '../../../site/types.ts';
import { posts } from '../../words/en/posts.ts';
import type { WalkPoint } from '../calls.ts';
import { prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';

export async function walkCurve({ site }: { site: Site }, tools: CallTools): Promise<WalkPoint[]> {
  const stage = stageOf(site, (part, done) => tools.progress(done / 4, posts.planParts[part]), prepare(site));
  tools.progress(null, posts.walkCurve.making);
  const points = await curveOn(stage, () => tools.signal.aborted);
  return points.map(({ metres, score, sites }) => ({ metres, score, sites }));
}
