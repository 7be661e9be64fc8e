/** One visit to JSON and back. */

import { dayOrNull } from './days.ts';
import { makeVisit, type Visit } from './visit.ts';
import { type Choice, choices, choose, chooseAll, countOf, pairOf, textOf } from './visit-members.ts';

/** Members of a JSON object. */
export type Members = Record<string, unknown>;

/** Whether a JSON value is an object. */
export const isMembers = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const known = [
  'id',
  'post',
  'box',
  'date',
  'time',
  'zone',
  'observer',
  'state',
  'bird',
  'material',
  'cup',
  'eggs',
  'young',
  'age',
  'dead',
  'trouble',
  'action',
  'note',
  'photo',
  'device',
  'madeAt',
  'replaces',
] as const satisfies readonly (keyof Visit)[];

/** Members not taken, or undefined when there are none. */
export function rest(members: Members, taken: readonly string[]): Members | undefined {
  const others = Object.entries(members).filter(([key]) => !taken.includes(key) && key !== '__proto__');
  return others.length > 0 ? Object.fromEntries(others) : undefined;
}

function eggsOf(value: unknown): Visit['eggs'] {
  if (!isMembers(value)) return null;
  return {
    count: countOf(value.count),
    color: choose(choices.color, value.color),
    pattern: choose(choices.pattern, value.pattern),
    size: choose(choices.size, value.size),
  };
}

/** Names of members whose word this program does not know: read as "not given", kept under `extra.unread`. */
function unreadOf(members: Members): Members | undefined {
  const lost: Members = {};
  const check = (key: string, value: unknown, choice: Choice) => {
    const words = Array.isArray(value) ? value : value === null || value === undefined ? [] : [value];
    if (words.some((word) => choose(choice, word) === null)) lost[key] = value;
  };
  check('cup', members.cup, choices.cup);
  check('material', members.material, choices.material);
  check('trouble', members.trouble, choices.trouble);
  check('action', members.action, choices.action);
  return Object.keys(lost).length > 0 ? lost : undefined;
}

/** A visit from JSON; null when it lacks an id, a post, a date or a known state. Unknown members go to `extra`. */
export function visitOf(members: Members): Visit | null {
  const [id, post, date, state] = [
    textOf(members.id),
    textOf(members.post),
    textOf(members.date),
    choose(choices.state, members.state),
  ];
  if (!id || !post || date === null || !state) return null;
  const unread = unreadOf(members);
  const others = rest(members, known);
  const extra = unread ? { ...others, unread } : others;
  return makeVisit({
    id,
    post,
    date,
    state,
    box: countOf(members.box),
    time: textOf(members.time),
    zone: typeof members.zone === 'number' && Number.isFinite(members.zone) ? members.zone : null,
    observer: textOf(members.observer) ?? '',
    bird: textOf(members.bird),
    material: chooseAll(choices.material, members.material),
    cup: choose(choices.cup, members.cup),
    eggs: eggsOf(members.eggs),
    young: countOf(members.young),
    age: pairOf(members.age),
    dead: countOf(members.dead) ?? 0,
    trouble: chooseAll(choices.trouble, members.trouble),
    action: chooseAll(choices.action, members.action),
    note: textOf(members.note) ?? '',
    photo: textOf(members.photo),
    device: textOf(members.device) ?? '',
    madeAt: textOf(members.madeAt) ?? (dayOrNull(date) === null ? '' : `${date}T12:00:00Z`),
    replaces: textOf(members.replaces),
    ...(extra ? { extra } : {}),
  });
}

/** What reading fills in for a member that is not there, beside null and the empty list. */
const filled: Readonly<Record<string, unknown>> = { observer: '', note: '', device: '', dead: 0 };
const unsaid = (key: string, value: unknown) =>
  value === null || filled[key] === value || (Array.isArray(value) && value.length === 0);

/** The JSON members of a visit: `visitOf` gives the same visit back. */
export function membersOf(visit: Visit): Members {
  const { extra, ...own } = visit;
  const { unread, ...others } = (extra ?? {}) as { unread?: Members } & Members;
  const said = Object.entries(own).filter(([key, value]) => !unsaid(key, value));
  return { ...others, ...Object.fromEntries(said), ...unread };
}
