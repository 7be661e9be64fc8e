/**
 * Keeps the open site: every change is on the shelf within a second, what was under way when the window closes is found again,
 * and one window writes a site at a time. It says "saved" only after the shelf said so.
 */
import { type History, present } from '../../edits/history.ts';
import type { Site } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';
import type { KeeperHooks, KeepingState, SiteKeeper } from '../keeping-state.ts';
import type { AppState, Saved } from '../state.ts';
import { StorageFull } from '../storage/durable-shelf.ts';
import { ChangedElsewhere } from '../storage/vault.ts';
import { type WriterLock, withoutLocks, writerLock } from '../storage/writer-lock.ts';
import type { Store } from '../store.ts';
import { say, unsay } from './say.ts';
import { keepHistory } from './shelf-history.ts';
import { becomes, freshId, named } from './shelf-name.ts';

/** Milliseconds: a change is saved when nothing followed it for `quiet`, at the latest `longest` after the first (a second is promised). */
const quiet = 300;
const longest = 800;
/** A save that takes longer is said to be none, until it is done after all. */
const patience = 5000;
/** When a failed save is tried again unasked. */
const again = 10_000;

/** A state of a site that is not on the shelf yet. */
interface Pending {
  readonly id: string;
  readonly site: Site;
  readonly history: History | null;
}

export class Keeper implements SiteKeeper {
  /** The newest unsaved state of each site; more than one only while an older one fails. */
  readonly #pending = new Map<string, Pending>();
  readonly #store: Store;
  #lock: WriterLock = withoutLocks;
  #id: string | null = null;
  /** Name of the demo the open site was a copy of, and the copy's. */
  #copied: { readonly from: string; readonly to: string } | null = null;
  #demo = false;
  #since = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #run: Promise<void> | null = null;
  #moving = false;
  /** The right to write a site that is about to be opened. */
  #claimed: { readonly id: string; readonly lock: WriterLock } | null = null;
  /** Id of the message that says a save failed. */
  #trouble: number | null = null;

  constructor(
    store: Store,
    readonly hooks: KeeperHooks,
  ) {
    this.#store = store;
    store.subscribe((state, before) => this.#follow(state, before));
    document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && this.hurry());
    addEventListener('pagehide', () => this.hurry());
    addEventListener('beforeunload', (event) => {
      this.hurry();
      if (this.#pending.size > 0 && store.state.saved.at === 'failed') event.preventDefault();
    });
  }

  /** Whether something is not on the shelf yet. */
  get unsaved(): boolean {
    return this.#pending.size > 0;
  }

  async claim(id: string): Promise<boolean> {
    await this.flush();
    if (id === this.#id) return this.#lock.held;
    this.drop();
    const lock = await this.#lockOf(id);
    this.#claimed = { id, lock };
    return lock.held;
  }

  drop(): void {
    this.#claimed?.lock.release();
    this.#claimed = null;
  }

  async takeOver(): Promise<boolean> {
    return this.#lock.takeOver();
  }

  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#run ??= this.#saveAll().finally(() => {
      this.#run = null;
    });
    return this.#run;
  }

  /** The window may be gone the next moment: sends everything on its way before it returns. */
  hurry(): void {
    this.#leaveDemo();
    for (const { id, site, history } of this.#pending.values())
      this.#store.shelf.rescue(id, site.settings.name, writeSite(site), sentenceOf(history));
    void this.flush();
  }

  #follow(state: AppState, before: AppState): void {
    if (this.#moving || (state.site === before.site && state.siteId === before.siteId)) return;
    const opened = state.saved !== before.saved && (state.saved.at === 'saved' || state.saved.at === 'demo');
    if (state.siteId !== before.siteId) this.#turnTo(state.siteId, state.saved.at === 'demo');
    if (!opened && state.site && state.siteId) this.#changed(state.siteId, state.site, state.history);
  }

  #turnTo(id: string | null, demo: boolean): void {
    this.#demo = demo;
    this.#copied = null;
    const old = this.#lock;
    void this.flush().then(() => old.release());
    this.#id = demo ? null : id;
    this.#lock = withoutLocks;
    if (demo || id === null) {
      this.drop();
      this.#keeping({ mode: 'write', exported: null });
    } else void this.#adopt(id);
  }

  /** Holds the lock claimed for this site, or one asked for now. */
  async #adopt(id: string): Promise<void> {
    const claimed = this.#claimed?.id === id ? this.#claimed.lock : null;
    if (claimed) this.#claimed = null;
    else this.drop();
    const lock = claimed ?? (await this.#lockOf(id));
    if (this.#id !== id) return lock.release();
    this.#lock = lock;
    if (!lock.held && this.#store.state.keeping.mode === 'write') this.#keeping({ mode: 'other-window' });
  }

  #lockOf(id: string): Promise<WriterLock> {
    return writerLock(id, {
      onLost: (asked) => this.#lost(id, asked),
      onGained: () => undefined,
      onSaved: () => {
        if (this.#store.state.siteId === id) this.hooks.reread(id);
      },
    });
  }

  #changed(id: string, site: Site, history: History | null): void {
    const own = history && present(history) === site ? history : null;
    if (!this.#pending.has(id)) this.#since = Date.now();
    this.#pending.set(id, { id, site, history: own });
    if (this.#store.state.saved.at !== 'failed') this.#say({ at: 'saving' });
    clearTimeout(this.#timer);
    const wait = Math.max(0, Math.min(quiet, this.#since + longest - Date.now()));
    this.#timer = setTimeout(() => void this.flush(), wait);
  }

  async #saveAll(): Promise<void> {
    for (;;) {
      this.#leaveDemo();
      const [next] = this.#pending.values();
      if (!next) return;
      const done = await this.#save(next);
      if (done === 'failed') {
        this.#timer = setTimeout(() => void this.flush(), again);
        return;
      }
      if (this.#pending.get(next.id) === next) this.#pending.delete(next.id);
      this.#since = Date.now();
      if (done !== 'moved') this.#tellSaved(next, done.time);
    }
  }

  async #save({ id, site, history }: Pending): Promise<{ time: number } | 'failed' | 'moved'> {
    const { shelf, state } = this.#store;
    const slow = setTimeout(() => this.#say({ at: 'failed', why: state.words.library.saved.slow }), patience);
    try {
      const entry = await shelf.save(id, site.settings.name, writeSite(site), sentenceOf(history));
      if (id === this.#id) this.#lock.tellSaved();
      if (history) await keepHistory(shelf, id, history).catch(() => undefined);
      return { time: entry.saved };
    } catch (error) {
      if (error instanceof ChangedElsewhere) return this.#branch(id, site);
      this.#failed(id, site, error);
      return 'failed';
    } finally {
      clearTimeout(slow);
    }
  }

  #tellSaved({ id, site }: Pending, time: number): void {
    const { state, shelf } = this.#store;
    const { where, turn } = state.keeping;
    if (state.siteId === id && state.site === site)
      this.#say(where === 'window' ? { at: 'never' } : { at: 'saved', time });
    if (this.#trouble !== null) unsay(this.#store, this.#trouble);
    this.#trouble = null;
    this.#keeping({ turn: turn + 1 });
    void shelf.copied().then(() => this.#keeping({ secondCopy: shelf.mirrorTrouble }));
    if (where === 'lasting') void this.#askToStay();
  }

  #failed(id: string, site: Site, error: unknown): void {
    const { words, siteId } = this.#store.state;
    const why =
      error instanceof StorageFull ? words.library.saved.full : error instanceof Error ? error.message : String(error);
    if (siteId === id) this.#say({ at: 'failed', why });
    this.#trouble ??= say(this.#store, 'trouble', words.library.failed(site.settings.name, why));
  }

  /** Another window saved this site since it was opened here: what was done here goes on as a site of its own. */
  #branch(id: string, site: Site): 'moved' {
    const { words, siteId } = this.#store.state;
    const from = site.settings.name;
    const to = words.library.branchName(from);
    const other = freshId(to);
    if (siteId === id) this.#move(other, from, to);
    else this.#pending.set(other, { id: other, site: named(site, to), history: null });
    this.#pending.delete(id);
    say(this.#store, 'trouble', words.library.branched(to));
    return 'moved';
  }

  /** The first change of a demo makes a copy on the shelf; a name that a drag brought back is given again. */
  #leaveDemo(): void {
    const { site, siteId, words } = this.#store.state;
    if (!site || !siteId || !this.#pending.has(siteId)) return;
    if (this.#demo) {
      const from = site.settings.name;
      this.#copied = { from, to: words.library.yours(from) };
      this.#demo = false;
      this.#pending.delete(siteId);
      this.#move(freshId(from), from, this.#copied.to);
    } else if (this.#copied && site.settings.name === this.#copied.from)
      this.#move(siteId, this.#copied.from, this.#copied.to);
  }

  #move(id: string, from: string, to: string): void {
    this.#moving = true;
    becomes(this.#store, id, from, to);
    this.#moving = false;
    const { site, history } = this.#store.state;
    if (site) this.#pending.set(id, { id, site, history });
    this.#keeping({ mode: 'write', ...(id === this.#id ? {} : { exported: null }) });
    if (id === this.#id) return;
    this.#lock.release();
    this.#id = id;
    this.#lock = withoutLocks;
    void this.#adopt(id);
  }

  async #lost(id: string, asked: boolean): Promise<void> {
    if (this.#id !== id) return;
    this.#keeping({ mode: 'other-window' });
    await this.flush();
    if (asked) say(this.#store, 'tell', this.#store.state.words.library.handedOver);
    else if (this.#store.state.siteId === id) this.hooks.reread(id);
  }

  async #askToStay(): Promise<void> {
    if (this.#store.state.keeping.promised !== null) return;
    this.#keeping({ promised: false });
    const promised = (await navigator.storage?.persist?.().catch(() => false)) ?? false;
    this.#keeping({ promised });
  }

  #say(saved: Saved): void {
    this.#store.set({ saved });
  }

  #keeping(change: Partial<KeepingState>): void {
    this.#store.set({ keeping: { ...this.#store.state.keeping, ...change } });
  }
}

function sentenceOf(history: History | null): string {
  return history?.steps[history.at]?.sentence ?? '';
}
