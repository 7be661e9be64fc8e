/** Whether two states of a site have the same plan, so that it need not be made again. */
import type { Site, SiteSettings } from '../site/types.ts';

/** Settings that decide nothing of a plan. */
const aside: ReadonlySet<string> = new Set(['plans', 'extra']);

/** True when only kept plans differ. Compares by identity: edits share what they leave alone. */
export function leavesPlan(before: Site | null, after: Site | null): boolean {
  if (before === after) return true;
  if (!before || !after || !sameList(before.features, after.features)) return false;
  const keys = Object.keys({ ...before.settings, ...after.settings }) as (keyof SiteSettings)[];
  return keys.every((key) => aside.has(key) || before.settings[key] === after.settings[key]);
}

function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a === b || (a.length === b.length && a.every((one, i) => one === b[i]));
}
