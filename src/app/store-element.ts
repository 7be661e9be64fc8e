/** A Lit element that shows the store: it is drawn again when the store changes. It changes nothing itself: it calls `actions/`. */
import { ContextConsumer } from '@lit/context';
import { LitElement } from 'lit';
import type { AppState } from './state.ts';
import { type Store, storeContext } from './store.ts';

export class StoreElement extends LitElement {
  #stop: (() => void) | null = null;
  #consumer = new ContextConsumer(this, {
    context: storeContext,
    subscribe: false,
    callback: (store) => this.#follow(store),
  });

  /** The store; only to be read after the element is connected under `mp-app`. */
  get store(): Store {
    const store = this.#consumer.value;
    if (!store) throw new Error(`<${this.localName}> stands outside the app: no store was given.`);
    return store;
  }

  get state(): AppState {
    return this.store.state;
  }

  get words() {
    return this.state.words;
  }

  /** Members of the state the element shows; null = all. Override to be drawn less often. */
  protected watches(): readonly (keyof AppState)[] | null {
    return null;
  }

  /** Changes that need no drawing: for what is told far more often than it can be seen. */
  protected ignores(_state: AppState, _before: AppState): boolean {
    return false;
  }

  /** Called on every watched change, before the element is drawn again. */
  protected changed(_state: AppState, _before: AppState): void {}

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.#consumer.value) this.#follow(this.#consumer.value);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  /** Nothing is drawn until there is a store. */
  protected override shouldUpdate(): boolean {
    return this.#consumer.value !== undefined;
  }

  #follow(store: Store): void {
    this.#stop?.();
    this.#stop = store.subscribe((state, before) => {
      const keys = this.watches();
      if (keys?.every((key) => state[key] === before[key]) || this.ignores(state, before)) return;
      this.changed(state, before);
      this.requestUpdate();
    });
    this.requestUpdate();
  }
}
