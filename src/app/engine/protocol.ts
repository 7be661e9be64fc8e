/** What page and worker say to each other. */
import type { Site } from '../../site/types.ts';
import type { Calls } from './calls.ts';
import type { SiteChange } from './site-change.ts';

export type CallName = keyof Calls;

/** A site crosses to the worker once, as what it changes of the one before where there is one; calls then name it by its token (their member `site` is put back on the other side). */
export type ToWorker =
  | { readonly say: 'site'; readonly token: number; readonly site: Site }
  | { readonly say: 'site'; readonly token: number; readonly from: number; readonly change: SiteChange }
  | { readonly say: 'forget'; readonly token: number }
  | {
      readonly say: 'call';
      readonly id: number;
      readonly name: CallName;
      readonly input: unknown;
      readonly token: number | null;
    }
  | { readonly say: 'cancel'; readonly id: number };

export type FromWorker =
  | { readonly say: 'progress'; readonly id: number; readonly done: number | null; readonly sentence: string }
  | { readonly say: 'partial'; readonly id: number; readonly output: unknown }
  | { readonly say: 'done'; readonly id: number; readonly output: unknown }
  | { readonly say: 'failed'; readonly id: number; readonly sentence: string };

/** What a call may use while it works in the worker. */
export interface CallTools {
  /** `done` 0–1, null when the end is not known. */
  progress(done: number | null, sentence: string): void;
  /** A first, coarser or smaller answer before the last one. */
  partial(output: unknown): void;
  /** Aborted when the page no longer wants the answer; only seen after an `await`. */
  readonly signal: AbortSignal;
}
