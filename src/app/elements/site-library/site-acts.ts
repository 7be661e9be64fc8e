/** What can be done with one site of the list. */
import { html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { downloadSite, downloadText } from '../../actions/shelf-file.ts';
import { duplicateSite, goBackTo, removeSite, renameSite } from '../../actions/shelf-library.ts';
import type { AppState } from '../../state.ts';
import type { Revision } from '../../storage/revision.ts';
import type { ShelfEntry } from '../../storage/site-shelf.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { stamp } from '../saved-word/when.ts';
import '../own-file/own-file.ts';
import { libraryStyle } from './library-style.ts';

@customElement('mp-site-acts')
export class SiteActs extends StoreElement {
  static override styles = [shared, libraryStyle];

  @property({ attribute: false }) entry: ShelfEntry | null = null;
  @state() private renaming = false;
  @state() private revisions: readonly Omit<Revision, 'body'>[] | null = null;

  protected override watches() {
    return ['siteId', 'words', 'keeping'] as const;
  }

  protected override changed(now: AppState, before: AppState): void {
    if (this.revisions && now.keeping.turn !== before.keeping.turn) void this.#readRevisions();
  }

  protected override render() {
    const { entry } = this;
    if (!entry) return null;
    const { library } = this.words;
    const here = entry.id === this.state.siteId;
    return html`<div class="acts">
        <button
          aria-expanded=${this.renaming}
          @click=${() => {
            this.renaming = !this.renaming;
          }}
        >
          ${library.rename}
        </button>
        <button @click=${() => duplicateSite(this.store, entry)}>${library.duplicate}</button>
        <button @click=${() => this.#download(entry)}>${library.download}</button>
        ${here ? html`<mp-own-file></mp-own-file>` : null}
        <button aria-expanded=${this.revisions !== null} @click=${this.#toggleRevisions}>${library.revisions}</button>
        <button @click=${() => removeSite(this.store, entry)}>${library.remove}</button>
      </div>
      ${this.renaming ? this.#rename(entry) : null} ${this.revisions ? this.#revisions(entry, here) : null}`;
  }

  #rename(entry: ShelfEntry) {
    const { library } = this.words;
    const done = async (event: Event) => {
      event.preventDefault();
      const input = this.renderRoot.querySelector<HTMLInputElement>('input');
      this.renaming = false;
      await renameSite(this.store, entry, input?.value ?? '');
    };
    return html`<form class="acts" @submit=${done}>
      <label>${library.renameLabel}<input type="text" maxlength="120" .value=${entry.name} /></label>
      <button type="submit">${library.renameDo}</button>
      <button
        type="button"
        @click=${() => {
          this.renaming = false;
        }}
      >
        ${library.cancel}
      </button>
    </form>`;
  }

  #revisions(entry: ShelfEntry, here: boolean) {
    const { library } = this.words;
    const all = this.revisions ?? [];
    return html`<h3>${library.revisionsOf(entry.name)}</h3>
      ${all.length === 0 ? html`<p>${library.noRevisions}</p>` : null}
      <ul>
        ${all.map(
          (revision, i) => html`<li class="row">
            <span>
              ${revision.sentence || library.noSentence}
              <span class="small">${library.revision(revision.rev, stamp(revision.saved))}</span>
            </span>
            ${this.#revisionAct(entry, revision, i === 0, here)}
          </li>`,
        )}
      </ul>`;
  }

  #revisionAct(entry: ShelfEntry, { rev, saved }: Omit<Revision, 'body'>, newest: boolean, here: boolean) {
    const { library } = this.words;
    if (newest) return html`<span class="small">${library.revisionNow}</span>`;
    if (here) return html`<button @click=${() => goBackTo(this.store, rev)}>${library.takeRevision}</button>`;
    const give = async () => {
      const text = await this.store.shelf.openRevision(entry.id, rev);
      if (text !== null) await downloadText(`${entry.name} ${stamp(saved).replace(':', '')}`, text);
    };
    return html`<button @click=${give}>${library.download}</button>`;
  }

  async #download(entry: ShelfEntry): Promise<void> {
    if (entry.id === this.state.siteId) return downloadSite(this.store);
    const text = await this.store.shelf.copyText(entry.id, 'database');
    if (text !== null) await downloadText(entry.name, text);
  }

  readonly #toggleRevisions = (): void => {
    if (this.revisions) this.revisions = null;
    else void this.#readRevisions();
  };

  async #readRevisions(): Promise<void> {
    if (this.entry) this.revisions = await this.store.shelf.revisions(this.entry.id).catch(() => []);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-site-acts': SiteActs;
  }
}
