/** What sheets are made from, and what a person may choose about them. */
import type { Frame } from '../ground/types.ts';
import type { Plan } from '../plan-types.ts';
import type { Site } from '../site/types.ts';
import type { Layers } from './land.ts';
import type { Needle } from './north.ts';
import type { Orientation, Paper } from './paper.ts';
import type { Variant } from './style.ts';
import type { KeyWords } from './words.ts';

/** The kinds of sheet that can be asked for, in the order they are printed. `check` brings its back page. */
export const sheetNames = ['index', 'details', 'check', 'cards', 'labels', 'materials', 'landowner'] as const;
export type SheetName = (typeof sheetNames)[number];

export interface SheetOptions {
  readonly paper: Paper;
  readonly orientation: Orientation;
  /** Denominator for the detail sheets; null = chosen so that no two numbers touch. */
  readonly scale: number | null;
  readonly variant: Variant;
  readonly sheets: readonly SheetName[];
  /** Box cards on one page, 4 unless said (large print: always 1). */
  readonly cardsPerPage?: 2 | 4;
}

/** Stamped on every sheet. Passed in: no clock takes part, and the same input gives the same paper. */
export interface Stamp {
  /** ISO day the plan was made. */
  readonly date: string;
  /** As the shelf counts; '' when nobody counted, then the fingerprint alone says which drawing it was. */
  readonly revision: string;
  /** Fingerprint of the site and plan; its first 8 letters are printed. */
  readonly hash: string;
  /** Where the needle points at the site; null prints true north alone. */
  readonly declination: Needle | null;
  /** Credit of a picture the drawing was made from; printed on maps. */
  readonly credit?: string | null;
  /** Address of the app for the QR code ("https://…/"); without it the code holds the round alone. */
  readonly address?: string | null;
}

/** When a box is to be looked at next, and when it was last. ISO days; `why` is a few words. */
export interface DueVisit {
  readonly box: number;
  readonly due: string | null;
  readonly why?: string | null;
  readonly last?: string | null;
}

export interface SheetInput {
  readonly site: Site;
  readonly plan: Plan;
  readonly frame: Frame;
  /** `subjects` of layers/all.ts. */
  readonly layers: Layers;
  readonly options: SheetOptions;
  readonly stamp: Stamp;
  readonly visits?: readonly DueVisit[];
  /** Words for legend rows by their key (`words.kinds` of the app); English ones of print's own where missing. */
  readonly words?: KeyWords;
}
