/** Putting walkers' visits together: any order, any repetition gives the same log, conflicts are shown, nothing is overwritten. */

import { byTime, timeKey, type Visit } from './visit.ts';

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

/** The greater of two texts, none being least: a join, so it does not matter in which order copies meet. */
const fuller = (a: string | null, b: string | null) => ((a ?? '') >= (b ?? '') ? a || b : b || a);

/** A copy that was shared without device or photo is the same record as the one that has them: the fuller is kept. */
function join(a: Visit, b: Visit): Visit {
  return { ...a, device: fuller(a.device, b.device) ?? '', photo: fuller(a.photo, b.photo) };
}

/** A visit as it may leave the device: without the device's id and the name of the photo, which stays behind. */
export function forSharing(visit: Visit): Visit {
  return { ...visit, device: '', photo: null };
}

/** The contents of a visit as one text, device and photo aside: what makes two records the same. Members in a fixed order, for speed. */
function contents(visit: Visit): string {
  const { eggs, extra } = visit;
  return JSON.stringify([
    visit.id,
    visit.post,
    visit.box,
    visit.date,
    visit.time,
    visit.zone,
    visit.observer,
    visit.state,
    visit.bird,
    visit.material,
    visit.cup,
    eggs && [eggs.count, eggs.color, eggs.pattern, eggs.size],
    visit.young,
    visit.age,
    visit.dead,
    visit.trouble,
    visit.action,
    visit.note,
    visit.madeAt,
    visit.replaces,
    extra ? canonical(extra) : null,
  ]);
}

/** All different records of all logs, oldest first. Idempotent, commutative and associative: it is the union of sets. */
export function mergeVisits(...logs: readonly (readonly Visit[])[]): readonly Visit[] {
  const byText = new Map<string, Visit>();
  for (const log of logs) {
    for (const visit of log) {
      const text = contents(visit);
      const known = byText.get(text);
      if (!known) byText.set(text, visit);
      else if (known !== visit) byText.set(text, join(known, visit));
    }
  }
  // Time first, then contents: one order for one set of records.
  const rows = [...byText].map(([text, visit]) => ({ key: `${timeKey(visit)} ${text}`, visit }));
  rows.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  return rows.map(({ visit }) => visit);
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

/** Ids on a circle of corrections through this visit, itself included; empty when there is none. */
function circleOf(visit: Visit, byId: ReadonlyMap<string, Visit>): readonly string[] {
  const path = [visit.id];
  let next = visit.replaces;
  while (next !== null && next !== visit.id && !path.includes(next)) {
    path.push(next);
    next = byId.get(next)?.replaces ?? null;
  }
  return next === visit.id ? path : [];
}

/** Whether a correction takes this visit's place. On a circle of corrections the one made last stays, so that nothing vanishes. */
function isReplaced(visit: Visit, by: readonly string[], byId: ReadonlyMap<string, Visit>): boolean {
  if (by.length === 0) return false;
  const circle = circleOf(visit, byId);
  if (by.some((id) => !circle.includes(id))) return true;
  return circle.some((id) => id !== visit.id && newer(byId.get(id)!, visit));
}

/** Of records with one id the one made last (equal instants: by contents); records that a later one replaces are left out. */
export function settledVisits(log: readonly Visit[]): readonly Visit[] {
  const last = groups(mergeVisits(log), (visit) => visit.id).map((same) =>
    same.reduce((best, visit) => (newer(visit, best) ? visit : best)),
  );
  const byId = new Map(last.map((visit) => [visit.id, visit]));
  const replacers = new Map<string, string[]>();
  for (const { id, replaces } of last) {
    if (replaces !== null) replacers.set(replaces, [...(replacers.get(replaces) ?? []), id]);
  }
  return last.filter((visit) => !isReplaced(visit, replacers.get(visit.id) ?? [], byId)).sort(byTime);
}

function newer(a: Visit, b: Visit): boolean {
  const [left, right] = [Date.parse(a.madeAt), Date.parse(b.madeAt)];
  if (left !== right && !Number.isNaN(left)) return Number.isNaN(right) || left > right;
  if (Number.isNaN(left) !== Number.isNaN(right)) return false;
  return contents(a) > contents(b);
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
