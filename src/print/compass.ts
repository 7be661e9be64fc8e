/** Bearings as a person with a compass reads them. */
import type { PlannedBox } from '../plan-types.ts';
import type { Needle } from './north.ts';
import { degreeWords, windOf } from './units.ts';

/** True degrees as compass degrees; unchanged when the needle is not known. */
export function compassOf(degrees: number, needle: Needle | null): number {
  return (((degrees - (needle?.degrees ?? 0)) % 360) + 360) % 360;
}

/** Where the hole faces: wind word by true north, degrees by compass when the needle is known. */
export function facingWords({ card }: PlannedBox, needle: Needle | null): string {
  const { used } = card.facing;
  return `${windOf(used)} ${degreeWords(compassOf(used, needle))}`;
}

/** What degrees on a sheet are. */
export function degreesAre(needle: Needle | null): string {
  return needle
    ? `Degrees are compass degrees (${needle.model}, ${needle.date}); letters are true directions.`
    : 'Degrees are from true north: set your compass’s declination.';
}
