/** Saving to a file of the person's own: back to the one it came from, or to another. Nothing where the browser cannot. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { canWriteFiles, lookForOwnFile, saveToFile } from '../../actions/own-file.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-own-file')
export class OwnFileButtons extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: contents;
      }
      button {
        padding: 0 10px;
        overflow-wrap: anywhere;
        line-height: 1.15;
      }
      .wash {
        flex: 1 1 100%;
      }
    `,
  ];

  protected override watches() {
    return ['words', 'keeping', 'siteId', 'site'] as const;
  }

  protected override firstUpdated(): void {
    void lookForOwnFile(this.store);
  }

  protected override changed(now: AppState, before: AppState): void {
    if (now.siteId !== before.siteId) void lookForOwnFile(this.store);
  }

  protected override render() {
    if (!canWriteFiles()) return null;
    const { words, keeping, siteId, site } = this.state;
    const { own } = words.library;
    const file = keeping.ownFile?.site === siteId ? keeping.ownFile : null;
    const none = site === null;
    const save = (how: { another?: boolean; over?: boolean }) => () => saveToFile(this.store, how);
    if (!file) return html`<button data-do="write" ?disabled=${none} @click=${save({})}>${own.saveTo}</button>`;
    return html`${
      file.changed
        ? html`<p class="wash" role="alert">${own.changed(file.name)}</p>
              <button data-do="write-over" @click=${save({ over: true })}>${own.writeOver(file.name)}</button>`
        : html`<button data-do="write" @click=${save({})}>${own.save(file.name)}</button>`
    }
      <button data-do="write-another" @click=${save({ another: true })}>${own.another}</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-own-file': OwnFileButtons;
  }
}
