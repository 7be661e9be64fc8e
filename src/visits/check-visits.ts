/** Trouble in visits: clear words and a fix, nothing thrown away. `feature` of an issue is the visit's id. */

import type { BirdGuide } from '../birds/guide.ts';
import type { Issue, Severity } from '../site/types.ts';
import { dayOrNull } from './days.ts';
import type { Visit } from './visit.ts';

/** A box as the checks need it: `since` is the first day it stood, YYYY-MM-DD, or null when not known. */
export interface KnownBox {
  readonly post: string;
  readonly number: number | null;
  readonly since: string | null;
}

export interface CheckContext {
  readonly boxes: readonly KnownBox[];
  readonly birds: readonly BirdGuide[];
  /** Today's local date, from the caller. */
  readonly today: string;
  /** Minutes ahead of UTC of the site, or null when not known. */
  readonly zone: number | null;
}

type Check = (visit: Visit, context: CheckContext) => Issue | null;

function issue(visit: Visit, id: string, severity: Severity, sentence: string, fix: string): Issue {
  return { id, severity, feature: visit.id, place: null, sentence, fix };
}

const where = (visit: Visit) => `Visit of ${visit.date} to box ${visit.box ?? visit.post}`;

const date: Check = (visit) =>
  dayOrNull(visit.date) === null
    ? issue(
        visit,
        'visit-date-unreadable',
        'error',
        `A visit to box ${visit.box ?? visit.post} has the date “${visit.date}”.`,
        'Write the date as YYYY-MM-DD, such as 2026-05-18.',
      )
    : null;

const time: Check = (visit) =>
  visit.time !== null && !/^([01]\d|2[0-3]):[0-5]\d$/.test(visit.time)
    ? issue(
        visit,
        'visit-time-unreadable',
        'warning',
        `${where(visit)} has the time “${visit.time}”.`,
        'Write the time as HH:MM, such as 14:05, or leave it out.',
      )
    : null;

const box: Check = (visit, { boxes }) =>
  boxes.some((known) => known.post === visit.post)
    ? null
    : issue(
        visit,
        'visit-box-unknown',
        'error',
        `${where(visit)}: this site has no post “${visit.post}”.`,
        'Choose the box again, or open the site this visit belongs to. The visit is kept.',
      );

const number: Check = (visit, { boxes }) => {
  const known = boxes.find((one) => one.post === visit.post);
  if (!known || known.number === null || visit.box === null || known.number === visit.box) return null;
  return issue(
    visit,
    'visit-number-differs',
    'warning',
    `${where(visit)}: the post carries number ${known.number} now.`,
    'If boxes were numbered anew nothing needs doing; else choose the box again.',
  );
};

const before: Check = (visit, { boxes }) => {
  const since = boxes.find((known) => known.post === visit.post)?.since ?? null;
  if (since === null || dayOrNull(visit.date) === null || visit.date >= since) return null;
  return issue(
    visit,
    'visit-before-box',
    'warning',
    `${where(visit)} is before the box was put up (${since}).`,
    'Correct the date of the visit, or the day the box was put up.',
  );
};

const future: Check = (visit, { today }) =>
  dayOrNull(visit.date) !== null && visit.date > today
    ? issue(
        visit,
        'visit-in-future',
        'warning',
        `${where(visit)} lies after today (${today}).`,
        'Check the clock of the device and correct the date.',
      )
    : null;

/** Minutes between the local date, time and zone and the instant the record was made; null when that cannot be told. */
function clockGap(visit: Visit): number | null {
  const day = dayOrNull(visit.date);
  const made = Date.parse(visit.madeAt);
  if (day === null || visit.time === null || visit.zone === null || Number.isNaN(made)) return null;
  const minutes = Number(visit.time.slice(0, 2)) * 60 + Number(visit.time.slice(3, 5));
  return made / 60_000 - (day * 1440 + minutes - visit.zone);
}

const zone: Check = (visit, context) => {
  if (context.zone !== null && visit.zone !== null && Math.abs(visit.zone - context.zone) > 60) {
    return issue(
      visit,
      'visit-other-zone',
      'warning',
      `${where(visit)} was noted ${Math.abs(visit.zone - context.zone)} minutes off this site's time zone.`,
      'Check the time zone of the device; the day may be one off.',
    );
  }
  const gap = clockGap(visit);
  // Entered later from paper is fine; made before it happened is not. Ten minutes: a slow clock, ours.
  if (gap === null || gap > -10) return null;
  return issue(
    visit,
    'visit-clock-wrong',
    'warning',
    `${where(visit)} at ${visit.time} was recorded ${Math.round(-gap)} minutes before it happened.`,
    'Check the clock and time zone of the device.',
  );
};

const bird: Check = (visit, { birds }) =>
  visit.bird === null || birds.some((guide) => guide.id === visit.bird)
    ? null
    : issue(
        visit,
        'visit-bird-unknown',
        'warning',
        `${where(visit)} names a bird without a guide: “${visit.bird}”.`,
        'Choose the bird again; until then it counts as not known.',
      );

const counts: Check = (visit) => {
  const numbers = [visit.eggs?.count ?? 0, visit.young ?? 0, visit.dead, ...(visit.age ?? [])];
  if (numbers.every((value) => Number.isFinite(value) && value >= 0)) return null;
  return issue(
    visit,
    'visit-count-impossible',
    'error',
    `${where(visit)} has a count or age below zero or not a number.`,
    'Correct the count.',
  );
};

const age: Check = (visit) =>
  visit.age !== null && visit.age[0] > visit.age[1]
    ? issue(
        visit,
        'visit-age-reversed',
        'warning',
        `${where(visit)}: the young are ${visit.age[0]} days at least and ${visit.age[1]} at most.`,
        'Swap the two ages.',
      )
    : null;

/** The most eggs a guide's figures allow for one hen. */
export function mostEggs(guide: BirdGuide): number {
  const { value, range } = guide.eggs.count;
  return Math.max(value[1], range?.[1] ?? 0);
}

const eggs: Check = (visit, { birds }) => {
  const guide = birds.find((one) => one.id === visit.bird);
  const count = visit.eggs?.count ?? 0;
  if (!guide || count <= mostEggs(guide)) return null;
  const [least, most] = guide.eggs.count.value;
  return issue(
    visit,
    'visit-too-many-eggs',
    'warning',
    `${where(visit)}: ${count} eggs is more than one ${guide.name} lays (${least}–${most}, at most ${mostEggs(guide)}).`,
    'Correct the count or the bird; if it is right, two hens may share the box: photograph it.',
  );
};

const content: Check = (visit) => {
  const says = visit.state === 'empty' && ((visit.eggs?.count ?? 0) > 0 || (visit.young ?? 0) > 0);
  return says
    ? issue(
        visit,
        'visit-state-disagrees',
        'warning',
        `${where(visit)} says the box is empty but counts eggs or young.`,
        'Correct the state or the counts.',
      )
    : null;
};

const perVisit: readonly Check[] = [date, time, box, number, before, future, zone, bird, counts, age, eggs, content];

/** Two visits of one box, or of one walker at two boxes, in the same minute; two versions of the same id are the merge's business. */
function sameMinute(visits: readonly Visit[]): Issue[] {
  const seen = new Map<string, Visit>();
  const found: Issue[] = [];
  for (const visit of visits) {
    if (visit.time === null) continue;
    for (const key of [`box ${visit.post}`, `walker ${visit.observer} ${visit.device}`]) {
      const stamp = `${visit.date} ${visit.time} ${key}`;
      const other = seen.get(stamp);
      seen.set(stamp, other ?? visit);
      if (!other || other.id === visit.id || found.some((one) => one.feature === visit.id)) continue;
      const twice = other.post === visit.post;
      found.push(
        issue(
          visit,
          'visit-same-minute',
          'warning',
          twice
            ? `${where(visit)} at ${visit.time} was noted twice in the same minute.`
            : `${where(visit)} and box ${other.box ?? other.post} were both noted at ${visit.time}.`,
          twice
            ? 'If both are the same look, correct one; both are kept.'
            : 'Correct one of the times, or leave it out.',
        ),
      );
    }
  }
  return found;
}

/** All trouble, in the order of the visits, then the pairs. The visits themselves are never changed. */
export function checkVisits(visits: readonly Visit[], context: CheckContext): readonly Issue[] {
  const each = visits.flatMap((visit) =>
    perVisit.map((check) => check(visit, context)).filter((found) => found !== null),
  );
  return [...each, ...sameMinute(visits)];
}
