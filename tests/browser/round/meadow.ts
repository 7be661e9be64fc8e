/** A shared round of three boxes, the first with a nest: enough for every page of the Round, without a plan. */
import type { FieldRound, Stop } from '../../../src/app/field/field-round.ts';
import { localTime } from '../../../src/app/field/local-time.ts';
import { siteOfRound } from '../../../src/app/field/round-site.ts';
import { firstRound } from '../../../src/app/round-state.ts';
import type { AppState } from '../../../src/app/state.ts';
import { addDays } from '../../../src/visits/days.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

export const here: readonly [number, number] = [-84, 40];
const stop = (number: number): Stop => ({
  number,
  post: `p${number}`,
  position: [here[0] + (number - 1) * 0.0011, here[1]],
  bird: 'eastern-bluebird',
  facing: 90,
  way: number === 1 ? null : { metres: 94, minutes: 1.4, bearing: 90 },
});
export const round: FieldRound = {
  site: 'Test meadow',
  hash: '0123abcd',
  walker: 1,
  stops: [1, 2, 3].map(stop),
  back: null,
  metres: 188,
  minutes: 15,
  blur: 0,
};
const { date } = localTime(new Date());
export const today = date;
/** Seen a week ago with eggs, wasps at the door. */
export const lastWeek = makeVisit({
  id: 'old',
  post: 'p1',
  box: 1,
  date: addDays(date, -7),
  time: '15:00',
  observer: 'Ann',
  state: 'eggs',
  bird: 'eastern-bluebird',
  eggs: { count: 4, color: 'blue', pattern: 'plain', size: null },
  trouble: ['wasps'],
});

export const meadow = (more: Partial<AppState> = {}): Partial<AppState> => ({
  siteId: 'round-meadow',
  site: siteOfRound(round, { region: 'eastern-north-america', units: 'us', date }),
  place: 'round',
  round: { ...firstRound, shared: round, logOf: 'round-meadow', logState: 'kept', log: [lastWeek], device: 'test' },
  ...more,
});
