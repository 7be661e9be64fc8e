/** The one store of the window: holds the state, tells who listens. What a person does is a function in `actions/`. */
import { createContext } from '@lit/context';
import type { EngineClient } from './engine/client.ts';
import type { SiteKeeper } from './keeping-state.ts';
import { type AppState, firstState } from './state.ts';
import type { DurableShelf } from './storage/durable-shelf.ts';

export type Listener = (state: AppState, before: AppState) => void;

export class Store {
  #state: AppState;
  readonly #listeners = new Set<Listener>();
  readonly engine: EngineClient;
  /** Where sites are kept: in memory until it is known what the browser allows. */
  shelf: DurableShelf;
  /** Saves the open site; null where nobody asked for that (tests). */
  keeper: SiteKeeper | null = null;

  constructor(engine: EngineClient, shelf: DurableShelf, first: Partial<AppState> = {}) {
    this.engine = engine;
    this.shelf = shelf;
    this.#state = { ...firstState, ...first };
  }

  get state(): AppState {
    return this.#state;
  }

  /** Changes some members and tells every listener once; nothing happens when nothing differs. */
  set(change: Partial<AppState>): void {
    const before = this.#state;
    const after = { ...before, ...change };
    if ((Object.keys(change) as (keyof AppState)[]).every((key) => before[key] === after[key])) return;
    this.#state = after;
    for (const listener of [...this.#listeners]) listener(after, before);
  }

  /** Calls `listener` after every change until the returned function is called. */
  subscribe(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}

/** How elements find the store: given by `mp-app`. */
export const storeContext = createContext<Store>('meadowpost-store');
