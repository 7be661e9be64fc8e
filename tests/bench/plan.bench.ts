/** What a plan of the park demo costs from "choose": scores, first plan, proof, sureness; numbering it by hand, and choosing again after one post moved. Wall and processor ms of one run. */
import { readFileSync } from 'node:fs';
import loadHighs from 'highs';
import { prepare } from '../../src/app/engine/prepared.ts';
import { solverLoader } from '../../src/placement/solver.ts';
import { sameForChoice } from '../../src/plan/same-choice.ts';
import { stageOf } from '../../src/plan/stage.ts';
import { makeSure, planAgain, planOn } from '../../src/plan.ts';
import { readSite } from '../../src/site/read.ts';
import type { Site } from '../../src/site/types.ts';
import { figure, printTable } from './clock.ts';

const rows: string[][] = [['what', 'wall ms', 'processor ms']];
async function timed<T>(what: string, work: () => T | Promise<T>): Promise<T> {
  const [since, before] = [performance.now(), process.cpuUsage()];
  const made = await work();
  const { user, system } = process.cpuUsage(before);
  rows.push([what, figure(performance.now() - since), figure((user + system) / 1000)]);
  return made;
}

/** The site with its first post about 10 cm further east. */
function nudged(site: Site): Site {
  const place = site.features.findIndex(({ kind, geometry }) => kind === 'post' && geometry?.type === 'Point');
  const features = site.features.map((feature, k) => {
    if (k !== place || feature.geometry?.type !== 'Point') return feature;
    const [lon, lat] = feature.geometry.coordinates as [number, number];
    return { ...feature, geometry: { type: 'Point' as const, coordinates: [lon + 1e-6, lat] } };
  });
  return { ...site, features };
}

const { site } = await timed('read the file', () => readSite(readFileSync('demo-sites/park.geojson', 'utf8'), 'park'));
if (!site) throw new Error('the park demo cannot be read');
await timed('prepare the land', () => prepare(site));
const since = performance.now();
const stage = await timed('score every candidate', () => stageOf(site, undefined, prepare(site)));
const first = await timed('first plan: choice, walk, cards', () => planOn(stage, { proof: 'none', sketch: true }));
const onScreen = performance.now() - since;
const loadSolver = solverLoader(() => loadHighs());
const proven = await timed('proof, walk proven too', () =>
  planOn(stage, { proof: 'quick', seconds: 20, loadSolver }, first),
);
const sure = await timed('sureness, 200 draws', () => makeSure(stage, proven, 200));
const walk = sure.boxes.map(({ post }) => post);
const byHand = { ...site, settings: { ...site.settings, order: [...walk.slice(1), walk[0]!] } };
const renumbered = await timed('numbered by hand: the stage', () => stageOf(byHand, undefined, prepare(byHand)));
if (!sameForChoice(stage, renumbered)) throw new Error('the choice ought to hold under other numbers');
await timed('numbered by hand: walk and numbers', () =>
  planAgain(renumbered, { ...proven, plan: sure }, { proof: 'quick', loadSolver }),
);
const again = nudged(site);
const warm = performance.now();
const next = await timed('one post moved: score again', () => stageOf(again, undefined, prepare(again)));
await timed('one post moved: first plan', () => planOn(next, { proof: 'none', sketch: true }));
const onScreenAgain = performance.now() - warm;
printTable(rows);
const short = 100 * (1 - first.plan.proof.value / proven.plan.proof.value);
console.log(
  `\n${stage.candidates.length} candidates, ${stage.birds.guides.size} birds, ${proven.plan.boxes.length} boxes`,
);
console.log(
  `on screen after ${figure(onScreen)} ms (at most 1,000 wanted), ${short.toFixed(2)} % below the proven plan`,
);
console.log(`after a post moved: on screen after ${figure(onScreenAgain)} ms`);
console.log(proven.plan.proof.sentence);
