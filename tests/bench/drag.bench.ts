/**
 * How long after a pointer move the dragged post's new score is on the screen: the park demo in a real browser, worker and map included.
 * Once with the engine at rest and once while a plan is being proven. Asked for: 16 ms at 95 of 100.
 * Then how long the lie of the land takes: 200 ms to the first picture, 2 s to cells of 10 m are asked for.
 */
import build from '../journeys/build.ts';
import { startWalk } from '../journeys/serve.ts';
import { figure, printTable } from './clock.ts';
import {
  dragBox,
  type LieTime,
  lieTimes,
  type Measured,
  openBare,
  openPark,
  share,
  stopPlanning,
} from './drag-page.ts';

await build();
const walk = await startWalk();
const page = await openPark(walk);
const busy = await dragBox(page);
await stopPlanning(page);
const rest = await dragBox(page);
await stopPlanning(page);
await page.close();

const bare = await openBare(walk);
await stopPlanning(bare);
// What the plan had painted last still holds the page.
await bare.waitForTimeout(1500);
const lies: [string, LieTime][] = [
  ['first bird, nothing chosen before', await lieTimes(bare, 'eastern-bluebird')],
  ['another bird', await lieTimes(bare, 'house-wren')],
];
await walk.close();

const row = (name: string, of: (m: Measured) => number[]) => [
  name,
  ...[rest, busy].flatMap((m) => [share(of(m), 0.5), share(of(m), 0.95)]),
];
printTable([
  ['ms from the pointer move to its score', 'at rest: half', '95 of 100', 'proving a plan: half', '95 of 100'],
  row('from when the page hears the move', (m) => m.heard),
  row('from when the browser had it', (m) => m.sent),
  row('in the worker and on the way', (m) => m.asked),
  ['moves heard', String(rest.heard.length), '', String(busy.heard.length), ''],
  ['pictures of the map meanwhile', String(rest.painted), '', String(busy.painted), ''],
]);
printTable([
  ['lie of the land, ms', 'first scores', 'painted', 'cells of 10 m', 'painted'],
  ...lies.map(([name, { first, firstPainted, whole, wholePainted }]) => [
    name,
    ...[first, firstPainted, whole, wholePainted].map(figure),
  ]),
]);
process.exit(0);
