/** The engine in its own thread. A new call: its types in calls.ts, its file in calls/, its line here. */
import { lie } from './calls/lie.ts';
import { nudge } from './calls/nudge.ts';
import { makePlanner } from './calls/plan.ts';
import { rescore, scorePost } from './calls/score-post.ts';
import { skyView } from './calls/sky-view.ts';
import type { ToWorker } from './protocol.ts';
import { type Handlers, serve } from './serve.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
/** Fetched at the first paper asked for: the plan and the map do not wait for it. */
const sheets: Handlers['sheets'] = async (question) => (await import('./calls/sheets.ts')).sheets(question);
const pdf: Handlers['pdf'] = async (question) => (await import('./calls/pdf.ts')).pdf(question);

/** Fetched when land is brought in, or two posts are asked for. */
const suggest: Handlers['suggest'] = async (question, tools) =>
  (await import('./calls/suggest.ts')).suggest(question, tools);
const walkCurve: Handlers['walkCurve'] = async (question, tools) =>
  (await import('./calls/walk-curve.ts')).walkCurve(question, tools);
let importer: Handlers['readImport'] | null = null;
const readImport: Handlers['readImport'] = async (question, tools) => {
  importer ??= (await import('./calls/read-import.ts')).makeImporter();
  return importer(question, tools);
};

/** Fetched when a season is looked back on, or woods are taken from heights. */
const seasonReview: Handlers['seasonReview'] = async (question) =>
  (await import('./calls/season-review.ts')).seasonReview(question);
const geoPicture: Handlers['geoPicture'] = async (question) =>
  (await import('./calls/geo-picture.ts')).geoPicture(question);
let finder: Handlers['canopy'] | null = null;
const canopy: Handlers['canopy'] = async (question, tools) => {
  finder ??= (await import('./calls/canopy.ts')).makeCanopyFinder();
  return finder(question, tools);
};

const hear = serve(
  {
    plan: makePlanner(),
    skyView,
    scorePost,
    rescore,
    nudge,
    lie,
    walkCurve,
    sheets,
    pdf,
    suggest,
    readImport,
    seasonReview,
    geoPicture,
    canopy,
  },
  (message) => scope.postMessage(message),
);
scope.addEventListener('message', (event: MessageEvent<ToWorker>) => hear(event.data));
