/** The engine in its own thread. A new call: its types in calls.ts, its file in calls/, its line here. */
import { plan } from './calls/plan.ts';
import { skyView } from './calls/sky-view.ts';
import type { ToWorker } from './protocol.ts';
import { serve } from './serve.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const hear = serve({ plan, skyView }, (message) => scope.postMessage(message));
scope.addEventListener('message', (event: MessageEvent<ToWorker>) => hear(event.data));
