/** The window: store, map, notebook, slips and messages, the theme's ink, and the address. */
import { ContextProvider } from '@lit/context';
import { html, LitElement } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { openSite } from '../../actions/open.ts';
import { lastOpen, startKeeping } from '../../actions/shelf-start.ts';
import { startEngine } from '../../engine/start.ts';
import { readHash, writeHash } from '../../hash.ts';
import type { MapView } from '../../map/map-view.ts';
import '../../map/box-keys.ts';
import '../../map/map-view.ts';
import type { AppState } from '../../state.ts';
import { memoryShelf } from '../../storage/memory-shelf.ts';
import { Store, storeContext } from '../../store.ts';
import { shared } from '../../styles/shared.ts';
import { cssOf } from '../../theme.ts';
import '../messages/messages.ts';
import '../notebook/notebook.ts';
import '../slips/slips.ts';
import { appStyle } from './app-style.ts';
import { runKey } from './keys.ts';

/** The site opened when the address names none. */
const firstDemo = 'park';

@customElement('mp-app')
export class App extends LitElement {
  static override styles = [shared, appStyle];

  /** Keeps sites in the browser; without it (tests) nothing outlives the window. */
  @property({ type: Boolean }) keeps = false;
  /** May be set before the element is connected (tests); otherwise a store of its own is made. */
  store = new Store(startEngine(), memoryShelf());
  @query('mp-map') private map!: MapView;
  @state() private view: MapView | null = null;
  #provider: ContextProvider<typeof storeContext> | null = null;
  #stop: (() => void) | null = null;
  readonly #onHash = () => this.#readAddress();
  readonly #onResize = () => this.#pad();
  readonly #onKey = (event: KeyboardEvent) => {
    if (runKey(this.store, event)) event.preventDefault();
  };

  override connectedCallback(): void {
    this.#provider ??= new ContextProvider(this, { context: storeContext, initialValue: this.store });
    super.connectedCallback();
    this.#stop = this.store.subscribe((state, before) => this.#follow(state, before));
    this.#ink(this.store.state);
    addEventListener('hashchange', this.#onHash);
    addEventListener('resize', this.#onResize);
    // On the window: when the focused thing goes away the focus falls to the page, outside this element.
    window.addEventListener('keydown', this.#onKey);
    void this.#start();
  }

  async #start(): Promise<void> {
    if (this.keeps && !this.store.keeper) await startKeeping(this.store);
    if (!this.isConnected) return;
    const { siteId } = this.store.state;
    const last = siteId || readHash(location.hash).site ? null : await lastOpen(this.store);
    this.#readAddress(last ?? firstDemo);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    removeEventListener('hashchange', this.#onHash);
    removeEventListener('resize', this.#onResize);
    window.removeEventListener('keydown', this.#onKey);
  }

  protected override render() {
    const { shell } = this.store.state.words;
    return html`<button class="skip" @click=${() => this.#focusNotebook()}>${shell.skipToNotebook}</button>
      <main>
        <mp-map @mp-map-ready=${this.#ready}></mp-map>
        <mp-box-keys .view=${this.view}></mp-box-keys>
        <mp-slips .view=${this.view}></mp-slips>
      </main>
      <mp-notebook role="complementary" aria-label=${shell.notebook} @mp-tabs=${this.#onResize}></mp-notebook>
      <mp-messages></mp-messages>`;
  }

  readonly #ready = (): void => {
    this.setAttribute('data-map', 'ready');
    this.view = this.map;
    this.renderRoot.querySelector('mp-box-keys')?.requestUpdate();
  };

  #focusNotebook(): void {
    this.renderRoot.querySelector('mp-notebook')?.focusTabs();
  }

  protected override firstUpdated(): void {
    this.#pad();
  }

  #follow(state: AppState, before: AppState): void {
    if (state.theme !== before.theme) this.#ink(state);
    if (showsPictures(state) !== showsPictures(before)) this.#pad();
    this.setAttribute('data-place', state.place);
    const { page, draft, arrived } = state.round;
    this.toggleAttribute('data-walking', state.place === 'round' && page === 'walk' && !draft && !arrived);
    if (state.site !== before.site && state.site)
      document.title = `${state.site.settings.name} · ${state.words.shell.product}`;
    const address = writeHash({ site: state.siteId, place: state.place, selection: state.selection });
    if (state.siteId && address !== location.hash) history.replaceState(null, '', address);
  }

  #ink(state: AppState): void {
    for (const [name, value] of Object.entries(cssOf(state.theme))) this.style.setProperty(name, value);
    this.setAttribute('data-theme', state.theme);
    this.style.setProperty('color-scheme', state.theme === 'dark' ? 'dark' : 'light');
  }

  /** `first` is opened when the address names no site and none is open. */
  #readAddress(first = firstDemo): void {
    const { site, place, selection, round } = readHash(location.hash);
    const { state } = this.store;
    const shared = round ?? (site?.startsWith('round-') && site !== state.siteId ? site : null);
    if (shared) return void this.#openRound(shared, round !== undefined);
    this.store.set({ place: place ?? state.place, selection: selection ?? (place ? null : state.selection) });
    const wanted = site ?? (state.siteId ? null : first);
    if (wanted && wanted !== state.siteId) void openSite(this.store, wanted);
  }

  /** A round without its site, by its code or by the name it has on this device. */
  async #openRound(round: string, isCode: boolean): Promise<void> {
    const { openKeptRound, openRoundCode } = await import('../../actions/round-open.ts');
    if (isCode ? openRoundCode(this.store, round) : await openKeptRound(this.store, round)) return;
    history.replaceState(null, '', '#');
    this.#readAddress();
  }

  /** The map keeps what it shows clear of the notebook and of the panel of pictures. */
  #pad(): void {
    const wide = innerWidth >= 720;
    const notebook = this.renderRoot.querySelector('mp-notebook');
    const tabs = notebook?.tabsHeight ?? 0;
    if (!wide && tabs) this.style.setProperty('--tabs', `${tabs}px`);
    const panel = wide && showsPictures(this.store.state);
    this.toggleAttribute('data-panel', panel);
    this.map.padding = wide
      ? { left: (notebook?.offsetWidth ?? 400) + 16, top: 48, right: panel ? 356 : 0, bottom: 48 }
      : { left: 0, top: (tabs || 56) + 64, right: 0, bottom: Math.round(innerHeight * 0.46) + 56 };
  }
}

/** Whether the panel of pictures stands on the map. */
const showsPictures = ({ ground, pictures }: AppState) => ground === 'photo' && pictures.open;

declare global {
  interface HTMLElementTagNameMap {
    'mp-app': App;
  }
}
