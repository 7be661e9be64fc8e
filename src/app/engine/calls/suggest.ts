/** Which two sites suit a small place best: every bird of the region is tried, alone and two of the best together. */
import { birdGuides } from '../../../birds/index.ts';
import { stageOf } from '../../../plan/stage.ts';
import { planOn } from '../../../plan.ts';
import type { Site, Wanted } from '../../../site/types.ts';
import { land } from '../../words/en/land.ts';
import { prepare } from '../prepared.ts';
import type { CallTools } from '../protocol.ts';

/** Which birds, and the grid of places that was judged, metres. `score` is the sum over the two sites, 0–200. */
export interface Suggestion {
  readonly wanted: readonly Wanted[];
  readonly grid: number;
  readonly score: number;
}

/** Of the best birds so many are tried in twos (ours: beyond the fourth nothing changed on our demos). */
const together = 4;

export async function suggest(
  { site, grid }: { site: Site; grid: number },
  tools: CallTools,
): Promise<Suggestion | null> {
  const birds = birdGuides.filter(
    (bird) => !bird.pest && bird.regions.some((region) => region === site.settings.region),
  );
  const alone: { bird: string; score: number }[] = [];
  for (const [i, { id, name }] of birds.entries()) {
    tools.progress((0.7 * i) / birds.length, land.trying(name));
    alone.push({ bird: id, score: await total(site, grid, [{ bird: id, sites: 2 }], tools) });
    if (tools.signal.aborted) return null;
  }
  alone.sort((a, b) => b.score - a.score);
  let best: Suggestion = { wanted: [{ bird: alone[0]?.bird ?? '', sites: 2 }], grid, score: alone[0]?.score ?? 0 };
  const few = alone.filter(({ score }) => score > 0).slice(0, together);
  for (const [i, one] of few.entries())
    for (const other of few.slice(i + 1)) {
      tools.progress(0.7 + (0.3 * i) / few.length, land.tryingTwo);
      const wanted = [one, other].map(({ bird }) => ({ bird, sites: 1 }));
      const score = await total(site, grid, wanted, tools);
      if (score > best.score) best = { wanted, grid, score };
    }
  return best.score > 0 ? best : null;
}

/** Sum of the scores of the first box of each site; a site that finds no place counts 0. */
async function total(site: Site, grid: number, wanted: readonly Wanted[], tools: CallTools): Promise<number> {
  const asked = { ...site, settings: { ...site.settings, wanted, suggestGrid: grid, reachOfPaths: null } };
  const stage = stageOf(asked, undefined, prepare(asked));
  const { plan } = await planOn(stage, { proof: 'none', shouldStop: () => tools.signal.aborted });
  await new Promise((done) => setTimeout(done));
  return plan.boxes.reduce((sum, box) => sum + box.card.score, 0);
}
