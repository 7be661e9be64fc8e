/** Reading single members of a visit from JSON: what does not fit is "not given". */

import { actionsTaken, cups, eggColors, eggPatterns, eggSizes, materials, troubles, visitStates } from './visit.ts';

export type Choice = readonly string[];

/** The words each member may have. */
export const choices = {
  state: visitStates,
  material: materials,
  cup: cups,
  color: eggColors,
  pattern: eggPatterns,
  size: eggSizes,
  trouble: troubles,
  action: actionsTaken,
} as const;

/** The word if it is one of the choice, else null. */
export function choose<T extends string>(choice: readonly T[], value: unknown): T | null {
  return choice.find((word) => word === value) ?? null;
}

/** The words of a list that are of the choice, each once. */
export function chooseAll<T extends string>(choice: readonly T[], value: unknown): readonly T[] {
  return Array.isArray(value) ? choice.filter((word) => value.includes(word)) : [];
}

/** A text, or null; texts longer than 10,000 characters are cut. */
export function textOf(value: unknown): string | null {
  return typeof value === 'string' ? value.slice(0, 10_000) : null;
}

/** A number that is finite, or null. Negative ones are kept for the checks to name. */
export function countOf(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** Two finite numbers, or null. */
export function pairOf(value: unknown): readonly [number, number] | null {
  if (!Array.isArray(value) || value.length !== 2) return null;
  const [low, high] = [countOf(value[0]), countOf(value[1])];
  return low === null || high === null ? null : [low, high];
}
