/** Beside the site's name: whether it is saved, and the one thing to do when it is not. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { downloadSite } from '../../actions/shelf-file.ts';
import { takeOver } from '../../actions/shelf-open.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { savedWords } from './saved-words.ts';

@customElement('mp-saved-word')
export class SavedWord extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 4px;
      }
      button.text {
        margin-left: -6px;
        padding: 0 6px;
      }
    `,
  ];

  protected override watches() {
    return ['saved', 'keeping', 'words', 'site'] as const;
  }

  protected override render() {
    const { saved, keeping, site } = this.state;
    const { library } = this.words;
    const bad = saved.at === 'failed';
    return html`<span class=${bad ? 'small weak' : 'small'} role="status"
        >${site ? savedWords(saved, keeping, this.words) : ''}</span
      >${
        site && bad
          ? html`<button class="text" @click=${() => downloadSite(this.store)}>${library.downloadNow}</button>`
          : null
      }${
        site && keeping.mode === 'other-window'
          ? html`<button class="text" @click=${() => takeOver(this.store)}>${library.takeOver}</button>`
          : null
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-saved-word': SavedWord;
  }
}
