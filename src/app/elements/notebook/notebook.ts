/** The notebook: five tabs, the site's name with its saved words and progress, and the open place. On a phone a sheet of three heights. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { html as staticHtml, unsafeStatic } from 'lit/static-html.js';
import { openSite } from '../../actions/open.ts';
import { replan } from '../../actions/plan.ts';
import { goTo } from '../../actions/select.ts';
import { showPage } from '../../actions/shelf-page.ts';
import { overRows, placeRows } from '../../places.ts';
import { type AppState, type Place, places } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { notebookStyle } from './notebook-style.ts';
import '../saved-word/saved-word.ts';

const heights = ['name', 'card', 'full'] as const;

@customElement('mp-notebook')
export class Notebook extends StoreElement {
  static override styles = [shared, notebookStyle];

  @state() private height: (typeof heights)[number] = 'card';

  protected override watches() {
    return ['place', 'site', 'engine', 'saved', 'words', 'plan', 'issues', 'keeping'] as const;
  }

  protected override changed(state: AppState, before: AppState): void {
    if (state.place !== before.place) void placeRows[state.place].load();
    if (state.keeping.page !== before.keeping.page) void overRows[state.keeping.page]?.load();
  }

  protected override firstUpdated(): void {
    const tabs = this.renderRoot.querySelector('.tabs');
    if (tabs) new ResizeObserver(() => this.dispatchEvent(new Event('mp-tabs'))).observe(tabs);
    void placeRows[this.state.place].load();
    void overRows[this.state.keeping.page]?.load();
  }

  protected override render() {
    const { words } = this;
    return html`<div class="tabs" role="tablist" aria-label=${words.shell.placesLabel} @keydown=${this.#keys}>
        ${places.map((place) => this.#tab(place))}
      </div>
      <section class="page" id="page" role="tabpanel" aria-label=${words.shell.places[this.state.place]} data-height=${this.height} data-place=${this.state.place}>
        ${this.#header()} ${this.#trouble()}
        <div class="place">${this.#place()}</div>
      </section>`;
  }

  /** px; large letters put the tabs into two rows. A change of it is told by the event `mp-tabs`. */
  get tabsHeight(): number {
    return this.renderRoot.querySelector<HTMLElement>('.tabs')?.offsetHeight ?? 0;
  }

  /** Puts the focus on the open tab. */
  focusTabs(): void {
    this.renderRoot.querySelector<HTMLElement>(`#tab-${this.state.place}`)?.focus();
  }

  #tab(place: Place) {
    const open = place === this.state.place;
    return html`<button
      role="tab"
      id=${`tab-${place}`}
      aria-selected=${open}
      aria-controls="page"
      tabindex=${open ? 0 : -1}
      @click=${() => this.#go(place)}
    >
      ${this.words.shell.places[place]}
    </button>`;
  }

  #header() {
    const { site, engine, keeping } = this.state;
    const { shell, library } = this.words;
    const over = keeping.page !== 'closed';
    return html`<header>
      <h2>${site ? site.settings.name : shell.product}</h2>
      <mp-saved-word></mp-saved-word>
      <div class="ends">
        <button
          class="sites text"
          aria-expanded=${over}
          @click=${() => showPage(this.store, over ? 'closed' : 'library')}
        >
          ${library.open}
        </button>
        <span class="heights" role="group" aria-label=${shell.sheetHeight}>
          <button ?hidden=${this.height === 'name'} @click=${() => this.#step(-1)}>${shell.less}</button>
          <button class="taller" ?hidden=${this.height === 'full'} @click=${() => this.#step(1)}>${shell.more}</button>
        </span>
      </div>
      ${this.#issues()}
      ${
        engine.at === 'work'
          ? html`<span class="progress small" role="status"
              >${engine.what}<button class="text" @click=${engine.stop}>${shell.stopAndKeep}</button></span
            ><span class="bar" style=${`width:${Math.round((engine.done ?? 0.08) * 100)}%`}></span>`
          : null
      }
    </header>`;
  }

  /** Trouble found in the file: said here, explained in the Land place. */
  #issues() {
    const count = this.state.issues.filter((issue) => issue.severity !== 'note').length;
    if (count === 0) return null;
    return html`<button class="text issues" @click=${() => goTo(this.store, 'land')}>
      ${this.words.shell.issuesOf(count)}
    </button>`;
  }

  #trouble() {
    const { engine, site } = this.state;
    const { shell } = this.words;
    if (engine.at === 'trouble')
      return html`<p class="wash trouble" role="alert">
        ${shell.engineTrouble(engine.sentence)}
        <button class="text" @click=${() => replan(this.store)}>${shell.engineRetry}</button>
      </p>`;
    return site
      ? null
      : html`<p class="trouble">
          ${shell.noSite}
          <button class="text" @click=${() => openSite(this.store, 'park')}>${shell.openDemo}</button>
        </p>`;
  }

  #place() {
    const row = overRows[this.state.keeping.page] ?? placeRows[this.state.place];
    const tag = unsafeStatic(row.tag);
    return staticHtml`<${tag}></${tag}>`;
  }

  #step(by: number): void {
    this.height = heights[Math.max(0, Math.min(2, heights.indexOf(this.height) + by))] ?? 'card';
  }

  #go(place: Place): void {
    showPage(this.store, 'closed');
    goTo(this.store, place);
  }

  #keys(event: KeyboardEvent): void {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const at = places.indexOf(this.state.place);
    const next = places[(at + by + places.length) % places.length] ?? 'land';
    this.#go(next);
    this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>(`#tab-${next}`)?.focus());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-notebook': Notebook;
  }
}
