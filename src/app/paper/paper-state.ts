/** What the Paper place is at: what was chosen to be printed, and the sheets last drawn. Part of the window's one state. */
import type { Plan } from '../../plan-types.ts';
import type { SheetName } from '../../print/input.ts';
import type { Orientation, Paper } from '../../print/paper.ts';
import type { Variant } from '../../print/style.ts';

/** What a person may choose; null = what suits the plan. */
export interface PaperChoice {
  readonly sheets: readonly SheetName[] | null;
  readonly paper: Paper | null;
  readonly orientation: Orientation;
  /** Denominator of the detail maps; null = chosen so that no two numbers touch. */
  readonly scale: number | null;
  readonly variant: Variant;
  readonly cardsPerPage: 2 | 4;
  /** One walker's round; null = all boxes. */
  readonly walker: number | null;
}

/** A drawn sheet as it comes from the engine. */
export interface DrawnSheet {
  readonly id: string;
  readonly name: SheetName;
  /** What it is, without the site's name: "boxes 1–7". */
  readonly what: string;
  /** Paper, mm. */
  readonly width: number;
  readonly height: number;
  readonly numbers: readonly number[];
  readonly scale: number | null;
  readonly svg: string;
  /** A light SVG for a picture of thumb size. */
  readonly thumb: string;
}

/** The sheets last drawn, and what they were made from; `besides` are visits and credits, compared as they are. */
export interface DrawnPaper {
  readonly of: Plan;
  readonly choice: PaperChoice;
  readonly besides: readonly unknown[];
  readonly sheets: readonly DrawnSheet[];
}

/** What happens to the sheets. */
export interface PaperState {
  readonly choice: PaperChoice;
  readonly drawn: DrawnPaper | null;
  readonly at: 'rest' | 'drawing' | 'writing';
  readonly trouble: string | null;
  /** Which sheet is shown large, from 0. */
  readonly shown: number;
}

export const firstPaper: PaperState = {
  choice: {
    sheets: null,
    paper: null,
    orientation: 'landscape',
    scale: null,
    variant: 'standard',
    cardsPerPage: 4,
    walker: null,
  },
  drawn: null,
  at: 'rest',
  trouble: null,
  shown: 0,
};
