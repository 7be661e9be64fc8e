/** A row of words to tap: one or several of a list, with a drawing where there is one. */
import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';

/** Fires `mp-choose` with the word. */
@customElement('mp-clue-choices')
export class ClueChoices extends LitElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      :host {
        display: block;
        margin-top: 14px;
      }
      h2 {
        margin-bottom: 6px;
        font-size: 1rem;
      }
    `,
  ];

  @property() label = '';
  @property({ attribute: false }) options: readonly string[] = [];
  @property({ attribute: false }) chosen: readonly string[] = [];
  @property({ attribute: false }) words: Readonly<Record<string, string>> = {};
  @property({ attribute: false }) drawings: Readonly<Record<string, TemplateResult | undefined>> = {};

  protected override render() {
    return html`<h2 id="label">${this.label}</h2>
      <div class="choices" role="group" aria-labelledby="label">
        ${this.options.map(
          (option) =>
            html`<button
              data-word=${option}
              aria-pressed=${this.chosen.includes(option)}
              @click=${() => this.dispatchEvent(new CustomEvent('mp-choose', { detail: option }))}
            >
              ${this.drawings[option] ?? null}${this.words[option] ?? option}
            </button>`,
        )}
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-clue-choices': ClueChoices;
  }
}
