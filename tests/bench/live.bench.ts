/** What follows the hand: one card under the pointer, a nudge, the lie of the land; on the park demo, in processor time. */
import { readFileSync } from 'node:fs';
import { lie } from '../../src/app/engine/calls/lie.ts';
import { nudge } from '../../src/app/engine/calls/nudge.ts';
import { rescore, scorePost } from '../../src/app/engine/calls/score-post.ts';
import { prepare } from '../../src/app/engine/prepared.ts';
import { seededRandom } from '../../src/geometry/random.ts';
import { readSite } from '../../src/site/read.ts';
import { cost, figure, printTable } from './clock.ts';

const { site } = readSite(readFileSync('demo-sites/park.geojson', 'utf8'), 'park.geojson');
if (!site) throw new Error('the park demo cannot be read');
const bird = 'eastern-bluebird';
const random = seededRandom(1);
const place = () => ({ x: (random() - 0.5) * 900, y: (random() - 0.5) * 600 });

const ready = cost(() => void prepare(site));
const cards = Array.from({ length: 300 }, () =>
  cost(() => void scorePost({ site, post: 'bench', bird, ...place(), who: false })),
).sort((a, b) => a - b);
const at = (share: number) => figure(cards[Math.floor(share * (cards.length - 1))] ?? 0);
const posts = Array.from({ length: 40 }, (_, i) => ({ post: `bench-${i}`, bird, ...place() }));
const stop = new AbortController();
const { signal } = stop;
let before = process.cpuUsage();
const since = () => {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};
/** Milliseconds of processor time of work that rests in between. */
const spent = async (work: () => Promise<unknown>) => {
  before = process.cpuUsage();
  await work();
  return since();
};
const forty = await spent(() => rescore({ site, posts }, { signal }));
const near = await spent(() =>
  nudge({ site, post: 'bench', bird, x: 0, y: 0, reach: 20, others: [], partner: null }, { signal }),
);

const passes: [string, string][] = [];
before = process.cpuUsage();
const scores = await lie(
  { site, bird },
  {
    signal,
    partial: (part) => passes.push([`lie, cells of ${(part as { coarse: number }).coarse}`, figure(since())]),
  },
);
passes.push([
  `lie, finished: ${scores?.columns} × ${scores?.rows} cells of ${figure(scores?.cell ?? 0)} m`,
  figure(since()),
]);

printTable([
  ['what', 'ms of processor time'],
  ['prepare the park', figure(ready)],
  ['a card under the hand, median', at(0.5)],
  ['a card under the hand, 95 of 100', at(0.95)],
  ['forty cards after an edit', figure(forty)],
  ['a nudge within 20 m', figure(near)],
  ...passes,
]);
process.exit(0);
