/** Which line each walker's round is drawn with: one table for the map, the list and the sheets. */
import file from './walkers.json';

/** `width` px; `dash` in widths of the line, with round ends; null = unbroken. */
interface LinePattern {
  readonly id: 'solid' | 'dashed' | 'dotted' | 'dash-dot' | 'long-dash' | 'dash-dot-dot';
  readonly width: number;
  readonly dash: readonly number[] | null;
}

export type WalkerInk = 'ink' | 'sky' | 'rust' | 'moss';

interface WalkersFile {
  readonly patterns: readonly LinePattern[];
  readonly inks: readonly WalkerInk[];
  /** mm per px of the map, and the inks on white paper. */
  readonly print: { readonly scale: number; readonly inks: Readonly<Record<WalkerInk, string>> };
}

const { patterns, inks, print } = file as WalkersFile;

export const walkerPatterns = patterns;
export const walkerPrint = print;

/** Share of a hollow line's width that is left open. */
export const hollowCore = 0.45;

export interface WalkerLook {
  readonly pattern: LinePattern;
  /** An open core in the line: the seventh to twelfth walker. */
  readonly hollow: boolean;
  readonly ink: WalkerInk;
}

/** How a walker's round is drawn, walkers from 1. No two of twelve look alike in black and white; the ink is one more help. */
export function walkerLook(walker: number): WalkerLook {
  const index = Math.max(0, Math.floor(walker) - 1);
  const turn = Math.floor(index / patterns.length);
  return {
    pattern: patterns[index % patterns.length]!,
    hollow: turn % 2 === 1,
    ink: inks[(index + turn) % inks.length]!,
  };
}
