/** Putting walkers' visits together: any order, any repetition gives the same log, conflicts are shown, nothing is overwritten. */

import { byTime, type Visit } from './visit.ts';

/** Two records that cannot both be the whole truth. */
export interface Conflict {
  /** `same-id`: one id, two contents. `same-day`: two walkers saw the same box on one day in different states. */
  readonly kind: 'same-id' | 'same-day';
  readonly post: string;
  readonly visits: readonly Visit[];
  readonly sentence: string;
}

/** JSON with members in a fixed order: equal contents give equal text. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item)).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${members.map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`).join(',')}}`;
}

/** All different records of all logs, oldest first. Idempotent, commutative and associative: it is the union of sets. */
export function mergeVisits(...logs: readonly (readonly Visit[])[]): readonly Visit[] {
  const byText = new Map<string, Visit>();
  for (const visit of logs.flat()) {
    const text = canonical(visit);
    if (!byText.has(text)) byText.set(text, visit);
  }
  return [...byText].sort(([a, left], [b, right]) => byTime(left, right) || (a < b ? -1 : 1)).map(([, visit]) => visit);
}

function groups(visits: readonly Visit[], key: (visit: Visit) => string): Visit[][] {
  const found = new Map<string, Visit[]>();
  for (const visit of visits) {
    const group = found.get(key(visit));
    if (group) group.push(visit);
    else found.set(key(visit), [visit]);
  }
  return [...found.values()];
}

/** Of records with one id the one made last (equal instants: by contents); records that a later one replaces are left out. */
export function settledVisits(log: readonly Visit[]): readonly Visit[] {
  const merged = mergeVisits(log);
  const last = groups(merged, (visit) => visit.id).map((same) =>
    same.reduce((best, visit) => (newer(visit, best) ? visit : best)),
  );
  const replaced = new Set(last.map((visit) => visit.replaces).filter((id) => id !== null));
  return last.filter((visit) => !replaced.has(visit.id) || visit.replaces === visit.id).sort(byTime);
}

function newer(a: Visit, b: Visit): boolean {
  const [left, right] = [Date.parse(a.madeAt), Date.parse(b.madeAt)];
  if (left !== right && !Number.isNaN(left)) return Number.isNaN(right) || left > right;
  if (Number.isNaN(left) !== Number.isNaN(right)) return false;
  return canonical(a) > canonical(b);
}

const what = (visit: Visit) =>
  `${visit.observer || 'somebody'}: ${visit.state}${visit.eggs?.count ? `, ${visit.eggs.count} eggs` : ''}`;

/** What a person should look at after a merge. Both records stay in the log either way. */
export function conflictsIn(log: readonly Visit[]): readonly Conflict[] {
  const merged = mergeVisits(log);
  const sameId = groups(merged, (visit) => visit.id)
    .filter((same) => same.length > 1)
    .map((same): Conflict => {
      const [first] = same;
      return {
        kind: 'same-id',
        post: first!.post,
        visits: same,
        sentence: `The visit of ${first!.date} (box ${first!.box ?? first!.post}) came back in ${same.length} versions – ${same.map(what).join('; ')}. All are kept; the one made last is used.`,
      };
    });
  const sameDay = groups(settledVisits(merged), (visit) => `${visit.post} ${visit.date}`)
    .filter(
      (same) =>
        new Set(same.map((visit) => visit.observer)).size > 1 && new Set(same.map((visit) => visit.state)).size > 1,
    )
    .map((same): Conflict => {
      const [first] = same;
      return {
        kind: 'same-day',
        post: first!.post,
        visits: same,
        sentence: `On ${first!.date} walkers saw box ${first!.box ?? first!.post} differently – ${same.map(what).join('; ')}. Both are kept; say which is right in a correction.`,
      };
    });
  return [...sameId, ...sameDay];
}
