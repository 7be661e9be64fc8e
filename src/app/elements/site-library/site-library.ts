/** The sites of this browser: open, new, from a file, and for each what can be done with it. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { demos } from '../../actions/demos.ts';
import { openSite } from '../../actions/open.ts';
import { canOpenFiles, chooseSiteFile } from '../../actions/own-file.ts';
import { openFile } from '../../actions/shelf-file.ts';
import { makeSite, putBack } from '../../actions/shelf-library.ts';
import { showPage } from '../../actions/shelf-page.ts';
import type { AppState } from '../../state.ts';
import type { ShelfEntry } from '../../storage/site-shelf.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';
import { when } from '../saved-word/when.ts';
import { libraryStyle } from './library-style.ts';
import './kept-note.ts';
import './site-acts.ts';

@customElement('mp-site-library')
export class SiteLibrary extends StoreElement {
  static override styles = [shared, libraryStyle];

  @state() private sites: readonly ShelfEntry[] | null = null;
  @state() private bin: readonly ShelfEntry[] = [];
  @state() private trouble = '';
  /** Id of the site whose acts are shown. */
  @state() private opened: string | null = null;

  protected override watches() {
    return ['keeping', 'siteId', 'words', 'saved'] as const;
  }

  protected override changed(now: AppState, before: AppState): void {
    if (now.keeping.turn !== before.keeping.turn || now.siteId !== before.siteId) void this.#read();
  }

  protected override firstUpdated(): void {
    void this.#read();
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus();
  }

  protected override render() {
    const { library } = this.words;
    const { findings } = this.state.keeping;
    return html`<mp-page>
      <h1 tabindex="-1">${library.title}</h1>
      ${
        findings.length > 0
          ? html`<p class="wash">
              ${library.recovery.waiting(findings.length)}
              <button class="text" @click=${() => showPage(this.store, 'recovery')}>${library.recovery.look}</button>
            </p>`
          : null
      }
      ${this.trouble ? html`<p class="wash" role="alert">${this.trouble}</p>` : null}
      ${this.sites?.length === 0 ? html`<p>${library.none}</p>` : null}
      <ul>
        ${repeat(
          this.sites ?? [],
          (entry) => entry.id,
          (entry) => this.#row(entry),
        )}
      </ul>
      ${this.#demos()} ${this.#bin()}
      <mp-kept-note></mp-kept-note>
      <input type="file" accept=".geojson,.json,application/geo+json" hidden @change=${this.#chosen} />
      <button slot="foot" class="filled" @click=${() => makeSite(this.store)}>${library.newSite}</button>
      <button slot="foot" @click=${this.#choose}>${library.openFile}</button>
      <button slot="foot" @click=${() => showPage(this.store, 'closed')}>${library.back}</button>
    </mp-page>`;
  }

  #row(entry: ShelfEntry) {
    const { library } = this.words;
    const here = entry.id === this.state.siteId;
    const more = entry.id === this.opened;
    const changed = library.changed(when(entry.saved, Date.now(), this.words));
    return html`<li>
      <div class="row">
        <button class="name" aria-current=${here ? 'true' : 'false'} @click=${() => this.#open(entry.id)}>
          <span class="title">${entry.name}</span>
          <span class="small">${here ? `${library.openNow} · ` : ''}${changed}</span>
        </button>
        <button
          aria-expanded=${more}
          aria-label=${more ? library.lessOf(entry.name) : library.moreOf(entry.name)}
          @click=${() => {
            this.opened = more ? null : entry.id;
          }}
        >
          ${more ? library.less : library.more}
        </button>
      </div>
      ${more ? html`<mp-site-acts .entry=${entry}></mp-site-acts>` : null}
    </li>`;
  }

  #demos() {
    const { library } = this.words;
    return html`<section>
      <h2>${library.demos}</h2>
      <p class="small">${library.demoHint}</p>
      <ul>
        ${demos.map(
          (demo) => html`<li>
            <button class="name" data-demo=${demo.id} @click=${() => this.#open(demo.id)}>
              <span class="title">${demo.name}</span>
              <span class="small">${demo.shows}</span>
            </button>
          </li>`,
        )}
      </ul>
    </section>`;
  }

  #bin() {
    const { library } = this.words;
    if (this.bin.length === 0) return null;
    return html`<section>
      <h2>${library.bin(this.bin.length)}</h2>
      <ul>
        ${this.bin.map(
          (entry) => html`<li class="row">
            <span>${entry.name}</span>
            <button @click=${() => putBack(this.store, entry)}>${library.restore}</button>
          </li>`,
        )}
      </ul>
    </section>`;
  }

  async #open(id: string): Promise<void> {
    await this.store.keeper?.flush();
    if (id !== this.state.siteId) await openSite(this.store, id);
    if (this.state.siteId === id) showPage(this.store, 'closed');
  }

  async #read(): Promise<void> {
    try {
      [this.sites, this.bin] = await Promise.all([this.store.shelf.list(), this.store.shelf.bin()]);
      this.trouble = '';
    } catch (error) {
      this.trouble = this.words.library.recovery.failed(error instanceof Error ? error.message : String(error));
    }
  }

  readonly #choose = async (): Promise<void> => {
    if (!canOpenFiles()) return this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
    const before = this.state.siteId;
    await chooseSiteFile(this.store);
    if (this.state.siteId !== before) showPage(this.store, 'closed');
  };

  readonly #chosen = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const before = this.state.siteId;
    await openFile(this.store, file);
    if (this.state.siteId !== before) showPage(this.store, 'closed');
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-site-library': SiteLibrary;
  }
}
