/** Opens a round that came from elsewhere: a scanned code, a shared file, or one of these opened before. */
import { decodeRound } from '../../print/round-code.ts';
import { newSite } from '../../site/new-site.ts';
import type { Units } from '../../site/types.ts';
import { type FieldRound, roundOfCode } from '../field/field-round.ts';
import { localTime } from '../field/local-time.ts';
import { readRoundFile, writeRoundFile } from '../field/round-file.ts';
import { siteOfRound } from '../field/round-site.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { logOf, openVisits } from './visit-log.ts';

/** What a round tells of its site. */
export interface RoundTold {
  readonly region: string;
  readonly units: Units;
}

/** Ids of rounds without their site begin so: such a round is found again under this id. */
export const roundIdPrefix = 'round-';

/** Opens the round of a scanned code in place of the plan's. Says why when it cannot. */
export function openRoundCode(store: Store, code: string): boolean {
  const answer = decodeRound(code);
  const { words } = store.state;
  if (answer.stops === null) {
    say(store, 'trouble', answer.reason);
    return false;
  }
  const round = roundOfCode(answer, words.round.sharedName(answer.hash), newSite('').settings.minutesPerBox);
  openRound(store, round, { region: '', units: store.state.units });
  return true;
}

/** Shows the round, and remembers it on this device so that it opens again without the code. */
export function openRound(store: Store, round: FieldRound, told: RoundTold): void {
  const id = `${roundIdPrefix}${round.hash ?? 'unknown'}`;
  show(store, id, round, told);
  const text = writeRoundFile({ round, ...told, visits: [] }, 'exact');
  void logOf(store)
    .then((log) => log.setOwn(`round:${id}`, text))
    .catch(() => undefined);
}

/** Opens such a round again; false when it is not on this device. */
export async function openKeptRound(store: Store, id: string): Promise<boolean> {
  const text = await logOf(store)
    .then((log) => log.own(`round:${id}`))
    .catch(() => null);
  const read = text === null ? null : readRoundFile(text);
  if (!read?.file) return false;
  const { round, region, units } = read.file;
  show(store, id, round, { region, units });
  return true;
}

function show(store: Store, siteId: string, shared: FieldRound, told: RoundTold): void {
  const site = siteOfRound(shared, { ...told, date: localTime(new Date()).date });
  store.set({
    siteId,
    site,
    issues: [],
    history: null,
    past: [],
    future: [],
    plan: null,
    planOf: null,
    units: told.units,
    saved: { at: 'demo' },
    place: 'round',
    selection: null,
    round: { ...store.state.round, shared, page: 'walk', walker: 0, reversed: false, hash: shared.hash, draft: null },
  });
  void openVisits(store);
}
