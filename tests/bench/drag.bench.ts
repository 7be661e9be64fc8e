/**
 * How long after a pointer move the dragged post's new score is on the screen: the park demo in a real browser, worker and map included.
 * Once with the engine at rest and once while a plan is being proven. Asked for: 16 ms at 95 of 100.
 */
import { startWalk } from '../journeys/serve.ts';
import { printTable } from './clock.ts';
import { dragBox, type Measured, openPark, share, stopPlanning } from './drag-page.ts';

const walk = await startWalk();
const page = await openPark(walk);
const busy = await dragBox(page);
await stopPlanning(page);
const rest = await dragBox(page);
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
]);
process.exit(0);
