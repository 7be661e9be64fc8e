/** The notebook: five tabs, the site's name with its saved words and progress, and the open place. On a phone a sheet of three heights. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { html as staticHtml, unsafeStatic } from 'lit/static-html.js';
import { openSite } from '../../actions/open.ts';
import { replan } from '../../actions/plan.ts';
import { goTo } from '../../actions/select.ts';
import { placeRows } from '../../places.ts';
import { type AppState, type Place, places } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { notebookStyle } from './notebook-style.ts';
import { savedWords } from './saved-words.ts';

const heights = ['name', 'card', 'full'] as const;

@customElement('mp-notebook')
export class Notebook extends StoreElement {
  static override styles = [shared, notebookStyle];

  @state() private height: (typeof heights)[number] = 'card';

  protected override watches() {
    return ['place', 'site', 'engine', 'saved', 'words', 'plan', 'issues'] as const;
  }

  protected override changed(state: AppState, before: AppState): void {
    if (state.place !== before.place) void placeRows[state.place].load();
  }

  protected override firstUpdated(): void {
    void placeRows[this.state.place].load();
  }

  protected override render() {
    const { words } = this;
    return html`<div class="tabs" role="tablist" aria-label=${words.shell.placesLabel} @keydown=${this.#keys}>
        ${places.map((place) => this.#tab(place))}
      </div>
      <section class="page" id="page" role="tabpanel" aria-label=${words.shell.places[this.state.place]} data-height=${this.height}>
        ${this.#header()} ${this.#trouble()}
        <div class="place">${this.#place()}</div>
      </section>`;
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
      @click=${() => goTo(this.store, place)}
    >
      ${this.words.shell.places[place]}
    </button>`;
  }

  #header() {
    const { site, engine, saved } = this.state;
    const { shell } = this.words;
    return html`<header>
      <h2>${site ? site.settings.name : shell.product}</h2>
      <span class="small" role="status">${site ? savedWords(saved, this.words) : ''}</span>
      <span class="heights" role="group" aria-label=${shell.sheetHeight}>
        <button ?hidden=${this.height === 'name'} @click=${() => this.#step(-1)}>${shell.less}</button>
        <button ?hidden=${this.height === 'full'} @click=${() => this.#step(1)}>${shell.more}</button>
      </span>
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
    const tag = unsafeStatic(placeRows[this.state.place].tag);
    return staticHtml`<${tag}></${tag}>`;
  }

  #step(by: number): void {
    this.height = heights[Math.max(0, Math.min(2, heights.indexOf(this.height) + by))] ?? 'card';
  }

  #keys(event: KeyboardEvent): void {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const at = places.indexOf(this.state.place);
    const next = places[(at + by + places.length) % places.length] ?? 'land';
    goTo(this.store, next);
    this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>(`#tab-${next}`)?.focus());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-notebook': Notebook;
  }
}
