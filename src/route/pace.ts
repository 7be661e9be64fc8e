/** How slow each kind of land is to walk. */
import type { CoverKind } from '../site/types.ts';
import { minutesPerMetreOffPath, minutesPerMetreOnPath } from './walk-time.ts';

/**
 * How many times slower than open ground a kind of land is to cross (ours: no source grades them; Aitken and Tobler know only
 * "off path", which is the 1 here). Water and buildings are never crossed at all.
 */
const slower: Readonly<Partial<Record<CoverKind, number>>> = {
  brush: 2,
  woods: 1.5,
  wetland: 2.5,
  crop: 1.5,
};

/** Minutes a metre of walking takes on land of this kind; not drawn counts as open ground. */
export function minutesPerMetre(cover: CoverKind | null): number {
  if (cover === 'paved') return minutesPerMetreOnPath;
  return minutesPerMetreOffPath * ((cover && slower[cover]) ?? 1);
}

/** Least minutes any metre takes. */
export const fastestMinutesPerMetre = minutesPerMetreOnPath;

/** Minutes lost at a fence crossed where no path goes through it: climbing over or looking for the gate (ours). */
export const minutesPerFence = 0.5;

/** The same at a hedge: finding a gap (ours). */
export const minutesPerHedge = 2;

/** Metres across a stream whose width is not drawn (ours): it is water, crossed only where a path does. */
export const streamWidth = 1;
