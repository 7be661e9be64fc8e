/** Visits on their way to the disk and back: opened with the site, kept one by one, undone, never silently lost. */
import { mergeVisits } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import type { RoundState } from '../round-state.ts';
import { privateVisitLines } from '../storage/visit-lines.ts';
import { type VisitLog, visitLog } from '../storage/visit-log.ts';
import type { Store } from '../store.ts';
import { say } from './say.ts';
import { isRenamed } from './season-follow.ts';

const logs = new WeakMap<Store, Promise<VisitLog>>();

/** The log of this window; another may be given (tests). */
export function logOf(store: Store): Promise<VisitLog> {
  const found = logs.get(store) ?? privateVisitLines().then((lines) => visitLog(lines));
  logs.set(store, found);
  return found;
}

export function useLog(store: Store, log: VisitLog): void {
  logs.set(store, Promise.resolve(log));
}

export function setRound(store: Store, change: Partial<RoundState>): void {
  store.set({ round: { ...store.state.round, ...change } });
}

/** Reads the visits of the open site; does nothing when they are there. */
export async function openVisits(store: Store): Promise<void> {
  const { siteId, round } = store.state;
  if (siteId === null || round.logOf === siteId) return;
  const shared = siteId.startsWith('round-') ? round.shared : null;
  setRound(store, { logOf: siteId, log: [], unsaved: [], logState: 'reading', skipped: [], draft: null, shared });
  try {
    const log = await logOf(store);
    const [{ visits, mended, damaged }] = [await log.open(siteId), await openOwn(store, log)];
    if (store.state.siteId !== siteId) return;
    // A visit noted while this was read stands in the state already.
    setRound(store, { log: mergeVisits(visits, store.state.round.log), logState: 'kept' });
    const { words } = store.state;
    if (mended > 0) say(store, 'tell', words.round.mended(mended));
    if (damaged > 0) say(store, 'trouble', words.round.damaged(damaged));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setRound(store, { logState: 'memory', logTrouble: why });
    say(store, 'trouble', store.state.words.round.logUnread(why));
  }
}

/** A demo that is changed becomes a site of one's own: its visits go with it. Returns how to stop. */
export function followVisits(store: Store): () => void {
  return store.subscribe((state, before) => {
    if (state.siteId === before.siteId || !isRenamed(state, before)) return;
    // At once: whoever asks next must not read an empty log under the new id while the visits are on their way.
    if (state.round.logOf === before.siteId) setRound(store, { logOf: state.siteId });
    void carryVisits(store, before.siteId!, state.siteId!);
  });
}

async function carryVisits(store: Store, from: string, to: string): Promise<void> {
  try {
    const log = await logOf(store);
    const { visits } = await log.open(from);
    await log.add(to, visits);
    const { round, siteId } = store.state;
    // They were being read, or nobody had asked for them yet but has since.
    if (siteId === to && round.logOf === to && round.logState !== 'memory')
      setRound(store, { log: mergeVisits(round.log, visits), logState: 'kept' });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const { round } = store.state;
    // On the disk they stay under the demo; here they are told as not saved, and can be tried again.
    if (round.logOf === to && round.log.length > 0)
      setRound(store, { unsaved: round.log, logState: 'memory', logTrouble: why });
  }
}

/** Who walks with this device. */
async function openOwn(store: Store, log: VisitLog): Promise<void> {
  const device = (await log.own('device')) ?? newDevice();
  await log.setOwn('device', device);
  const observer = (await log.own('observer')) ?? '';
  const experience = (await log.own('experience')) === 'experienced' ? 'experienced' : 'new';
  setRound(store, { device, observer: store.state.round.observer || observer, experience });
}

const newDevice = () => crypto.randomUUID().slice(0, 8);

/** Keeps visits for good. When the disk refuses they stay in the window, are told as not saved, and can be downloaded. Returns whether they are kept. */
export async function keepVisits(store: Store, visits: readonly Visit[]): Promise<boolean> {
  const site = store.state.round.logOf;
  if (site === null || visits.length === 0) return false;
  setRound(store, { log: mergeVisits(store.state.round.log, visits) });
  return writeVisits(store, site, [...store.state.round.unsaved, ...visits]);
}

/** Tries again to write what is not on the disk. */
export async function retryVisits(store: Store): Promise<boolean> {
  const { logOf: site, unsaved } = store.state.round;
  return site !== null && writeVisits(store, site, unsaved);
}

async function writeVisits(store: Store, site: string, visits: readonly Visit[]): Promise<boolean> {
  try {
    await (await logOf(store)).add(site, visits);
    const left = store.state.round.unsaved.filter((one) => !visits.includes(one));
    if (store.state.round.logOf === site)
      setRound(store, { unsaved: left, logState: left.length > 0 ? 'memory' : 'kept', logTrouble: null });
    return true;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const unsaved = [...new Set([...store.state.round.unsaved, ...visits])];
    if (store.state.round.logOf === site) setRound(store, { unsaved, logState: 'memory', logTrouble: why });
    return false;
  }
}

/** Takes a visit back that was just kept. */
export async function undoVisit(store: Store, visit: Visit): Promise<void> {
  const { round } = store.state;
  const site = round.logOf;
  if (site === null) return;
  setRound(store, {
    log: round.log.filter((one) => one !== visit && one.id !== visit.id),
    unsaved: round.unsaved.filter((one) => one.id !== visit.id),
  });
  try {
    await (await logOf(store)).undo(site, visit);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    setRound(store, { log: mergeVisits(store.state.round.log, [visit]) });
    say(store, 'trouble', store.state.words.round.notUndone(why));
  }
}

/** Remembers who walks with this device. */
export async function setObserver(store: Store, observer: string): Promise<void> {
  setRound(store, { observer });
  await (await logOf(store)).setOwn('observer', observer).catch(() => undefined);
}

export async function setExperience(store: Store, experience: RoundState['experience']): Promise<void> {
  setRound(store, { experience });
  await (await logOf(store)).setOwn('experience', experience).catch(() => undefined);
}
