/** Sizes of letters and lines on paper, for the three ways of printing. */

/** `ink-saver` leaves the patterns out; `large-print` sets every word at 18 points or more. */
export type Variant = 'standard' | 'ink-saver' | 'large-print';

/** Text sizes in points, lengths in mm. */
export interface Style {
  readonly variant: Variant;
  readonly patterns: boolean;
  readonly title: number;
  readonly sub: number;
  readonly head: number;
  readonly text: number;
  readonly small: number;
  /** Number in a box's disc. */
  readonly number: number;
  /** Number in a disc of the index sheet. */
  readonly indexNumber: number;
  readonly leg: number;
  /** From one line of `text` (`small`) to the next, mm. */
  readonly textLine: number;
  readonly smallLine: number;
  /** Heights and widths that letters need, mm. */
  readonly header: number;
  readonly column: number;
  readonly strip: number;
  readonly edge: number;
  readonly row: number;
}

/** Sizes follow the project's own look; 18 points is the usual least size of large print (common practice). */
export function styleOf(variant: Variant): Style {
  const large = variant === 'large-print';
  return {
    variant,
    patterns: variant !== 'ink-saver',
    ...(large
      ? { title: 26, sub: 18, head: 20, text: 18, small: 18, number: 20, indexNumber: 18, leg: 18 }
      : { title: 22, sub: 14, head: 12, text: 9.5, small: 8.5, number: 14, indexNumber: 10, leg: 9.5 }),
    ...(large
      ? { textLine: 7.6, smallLine: 7.4, header: 21, column: 48, strip: 44, edge: 8, row: 23 }
      : { textLine: 4.3, smallLine: 3.8, header: 15, column: 60, strip: 50, edge: 4.6, row: 8.4 }),
  };
}

/** One point in mm. */
export const point = 25.4 / 72;
