/** A history as text that survives a reload, and back. Features that steps have in common are written once. */

import { defaultSettings } from '../site/defaults.ts';
import { isObject } from '../site/json.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import type { History, Step } from './history.ts';

/** A step as its difference from the one before: `removed` features from `from` on make room for `added` (places in the list of features). */
interface WrittenStep {
  readonly sentence: string;
  readonly from: number;
  readonly removed: number;
  readonly added: readonly number[];
  /** The rest of the site; left out when it is that of the step before. */
  readonly rest?: Omit<Site, 'features'>;
}

interface WrittenHistory {
  readonly version: 1;
  readonly at: number;
  readonly most: number;
  readonly features: readonly SiteFeature[];
  readonly steps: readonly WrittenStep[];
}

/** Text of a history. */
export function historyText(history: History): string {
  const features: SiteFeature[] = [];
  const numbers = new Map<SiteFeature, number>();
  const numberOf = (feature: SiteFeature) => {
    const known = numbers.get(feature);
    if (known !== undefined) return known;
    numbers.set(feature, features.push(feature) - 1);
    return features.length - 1;
  };
  let before: readonly SiteFeature[] = [];
  let restBefore = '';
  const steps = history.steps.map(({ site, sentence }): WrittenStep => {
    const { features: now, ...rest } = site;
    const { from, removed, added } = difference(before, now);
    const restText = JSON.stringify(rest);
    const step = { sentence, from, removed, added: added.map(numberOf), ...(restText === restBefore ? {} : { rest }) };
    before = now;
    restBefore = restText;
    return step;
  });
  const written: WrittenHistory = { version: 1, at: history.at, most: history.most, features, steps };
  return JSON.stringify(written);
}

/** The one stretch in which two lists differ. */
function difference(before: readonly SiteFeature[], now: readonly SiteFeature[]) {
  let from = 0;
  while (from < before.length && from < now.length && before[from] === now[from]) from++;
  let end = 0;
  const room = Math.min(before.length, now.length) - from;
  while (end < room && before[before.length - 1 - end] === now[now.length - 1 - end]) end++;
  return { from, removed: before.length - end - from, added: now.slice(from, now.length - end) };
}

/** The history of such a text; null when it is damaged or of another version (then there is nothing to undo, and nothing is lost). */
export function readHistory(text: string): History | null {
  try {
    const value: unknown = JSON.parse(text);
    return isWritten(value) ? rebuilt(value) : null;
  } catch {
    return null;
  }
}

function isWritten(value: unknown): value is WrittenHistory {
  if (!isObject(value) || value.version !== 1) return false;
  const { at, most, features, steps } = value;
  const counts = Number.isInteger(at) && Number.isInteger(most) && Number(most) >= 1;
  return counts && Array.isArray(features) && features.every(isFeature) && Array.isArray(steps) && steps.every(isStep);
}

function isFeature(value: unknown): boolean {
  const placed = isObject(value) && (value.geometry === null || isObject(value.geometry));
  return placed && typeof value.id === 'string' && typeof value.kind === 'string' && isObject(value.properties);
}

function isStep(value: unknown): boolean {
  if (!isObject(value) || typeof value.sentence !== 'string') return false;
  const { from, removed, added, rest } = value;
  return (
    Number.isInteger(from) &&
    Number.isInteger(removed) &&
    Array.isArray(added) &&
    (rest === undefined || isObject(rest))
  );
}

function rebuilt({ at, most, features, steps: written }: WrittenHistory): History | null {
  const steps: Step[] = [];
  let now: readonly SiteFeature[] = [];
  let rest: Omit<Site, 'features'> | undefined;
  for (const step of written) {
    const added = step.added.map((n) => features[n]);
    if (step.from > now.length || added.some((feature) => feature === undefined)) return null;
    now = now.toSpliced(step.from, step.removed, ...(added as SiteFeature[]));
    rest = step.rest ?? rest;
    if (!rest || !isObject(rest.settings)) return null;
    // A history written by an older program lacks the newest settings.
    const settings = { ...defaultSettings, ...rest.settings };
    steps.push({ site: { ...rest, settings, features: now }, sentence: step.sentence });
  }
  return at >= 0 && at < steps.length ? { steps, at, most } : null;
}
