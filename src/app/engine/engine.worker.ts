/** The engine in its own thread. A new call: its types in calls.ts, its file in calls/, its line here. */
import { plan } from './calls/plan.ts';
import { skyView } from './calls/sky-view.ts';
import type { ToWorker } from './protocol.ts';
import { type Handlers, serve } from './serve.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
/** Fetched at the first paper asked for: the plan and the map do not wait for it. */
const sheets: Handlers['sheets'] = async (question) => (await import('./calls/sheets.ts')).sheets(question);
const pdf: Handlers['pdf'] = async (question) => (await import('./calls/pdf.ts')).pdf(question);

const hear = serve({ plan, skyView, sheets, pdf }, (message) => scope.postMessage(message));
scope.addEventListener('message', (event: MessageEvent<ToWorker>) => hear(event.data));
