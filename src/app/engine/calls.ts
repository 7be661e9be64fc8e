/** Every question the page may ask the engine: name → what goes in and what comes out. The answers are in `calls/`, one file each. */
import type { Plan } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';
import type { DrawnSheet } from '../paper/paper-state.ts';
import type { BookQuestion } from './calls/book.ts';
import type { SkyView } from './sky-view.ts';

export interface Calls {
  /** Chooses, numbers and scores. */
  plan: { input: { site: Site }; output: Plan };
  /** What the box sees: horizon and the season's sun. */
  skyView: { input: { site: Site; x: number; y: number; eye: number; bird: string }; output: SkyView };
  /** The plan's paper as pictures. */
  sheets: { input: BookQuestion; output: DrawnSheet[] };
  /** The same as one PDF file. */
  pdf: { input: BookQuestion; output: Uint8Array };
}
