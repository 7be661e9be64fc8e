/** May the box be opened? Young that are nearly ready jump when it is, and cannot fly yet. */

import type { BirdGuide } from '../birds/guide.ts';
import type { NestClock } from './clock.ts';
import { addDays, type Span, spanWords } from './days.ts';
import type { VisitState } from './visit.ts';

/** `new`: nestling day 12 is the last day to open. `experienced`: day 13 (WHBT). */
export type Experience = 'new' | 'experienced';

export interface OpeningAdvice {
  /** `watch`: do not open, look from a distance. */
  readonly do: 'open' | 'watch';
  readonly sentence: string;
  readonly sources: readonly string[];
}

const lastDay: Readonly<Record<Experience, number>> = { new: 12, experienced: 13 };
/** Days kept clear before the earliest fledging, for birds that fledge early (ours). */
const clear = 3;

/** Last nestling day (hatch day is 0) on which a box of this bird may be opened; never less than 0. */
export function lastOpeningDay(bird: BirdGuide, experience: Experience): number {
  return Math.max(0, Math.min(lastDay[experience], bird.clock.nestling.value[0] - clear));
}

/** Earliest and latest date of the last opening; null while hatching is not known. Open no later than the earliest. */
export function lastOpening(bird: BirdGuide, clock: NestClock, experience: Experience): Span | null {
  if (!clock.hatch) return null;
  const day = lastOpeningDay(bird, experience);
  return { earliest: addDays(clock.hatch.earliest, day), latest: addDays(clock.hatch.latest, day) };
}

const sources = ['WHBT', 'ours'];
const ageUnknown =
  'The age of this nest is not known: watch for parents from a distance first; open only if it is sure that no young are near flying.';
const gentle = 'Not at dawn or dusk, nor in cold or wet weather; stand aside and be brief.';

/** Days after a look with eggs in which young of no bird known here can be near flying (ours: the earliest leave on day 9). */
const sureAfterEggs = 9;

/** Advice for a nest whose bird or dates are not known, last seen in `state` so many days ago. Ducklings leave at once; nothing is lost by looking. */
export function openingUnknown(state: VisitState, daysAgo: number): OpeningAdvice {
  if (state !== 'young' && (state !== 'eggs' || daysAgo < sureAfterEggs)) {
    return { do: 'open', sentence: `No young near flying can be here yet: the box may be opened. ${gentle}`, sources };
  }
  return { do: 'watch', sentence: ageUnknown, sources };
}

/** Advice for opening a box with this nest on `date`; `bird` and `clock` are null only when there is no nest (else `openingUnknown`). */
export function openingAdvice(
  bird: BirdGuide | null,
  clock: NestClock | null,
  date: string,
  experience: Experience,
): OpeningAdvice {
  if (!clock || !bird) {
    return { do: 'open', sentence: `No nest with young is known here: the box may be opened. ${gentle}`, sources };
  }
  const last = lastOpening(bird, clock, experience);
  if (!last) {
    return { do: 'watch', sentence: ageUnknown, sources };
  }
  if (clock.fledge && date > clock.fledge.latest) {
    return {
      do: 'open',
      sentence: `The young should have left by ${spanWords(clock.fledge)}: the box may be opened. ${gentle}`,
      sources,
    };
  }
  const rule = `nestling day ${lastOpeningDay(bird, experience)} (hatch day is day 0; hatched ${spanWords(clock.hatch!)})`;
  if (date > last.earliest) {
    const until = clock.fledge
      ? ` until ${spanWords({ earliest: clock.fledge.latest, latest: clock.fledge.latest })}`
      : '';
    return {
      do: 'watch',
      sentence: `Do not open${until}: the last opening was ${spanWords({ earliest: last.earliest, latest: last.earliest })}, ${rule}. Older young may jump and cannot fly yet.`,
      sources,
    };
  }
  return {
    do: 'open',
    sentence: `May be opened through ${spanWords({ earliest: last.earliest, latest: last.earliest })}, ${rule}. ${gentle}`,
    sources,
  };
}
