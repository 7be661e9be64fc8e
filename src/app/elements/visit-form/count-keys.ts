/** A count on large keys: two rows of five digits, so that any brood is one or two taps. */
import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { pressed } from '../../field/keypad.ts';
import { shared } from '../../styles/shared.ts';

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'];

/** Fires `mp-count` with the count or null. */
@customElement('mp-count-keys')
export class CountKeys extends LitElement {
  static override styles = [
    shared,
    css`
      .head {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        min-height: 48px;
      }
      output {
        font: 700 2.1rem / 1 var(--serif);
        color: var(--sky);
        margin-left: auto;
      }
      output.none {
        font: 400 1rem / 1 var(--sans);
        color: var(--quiet);
      }
      @media (max-width: 719px) {
        .head button {
          min-height: 56px;
        }
      }
      .keys {
        display: grid;
        grid-template-columns: repeat(5, 1fr);
        gap: 8px;
      }
      .keys button {
        min-height: 60px;
        padding: 0;
        font: 700 1.5rem / 1 var(--serif);
      }
      .keys button[aria-pressed="true"] {
        background: var(--sky-wash);
        border-color: var(--sky);
      }
    `,
  ];

  @property() label = '';
  @property() clear = '';
  @property() none = '';
  @property({ attribute: false }) count: number | null = null;

  protected override render() {
    return html`<div class="head">
        <h2 id="label">${this.label}</h2>
        <output class=${this.count === null ? 'none' : ''} aria-live="polite">${this.count ?? this.none}</output>
        ${this.count === null ? null : html`<button class="text" @click=${() => this.#press('clear')}>${this.clear}</button>`}
      </div>
      <div class="keys" role="group" aria-labelledby="label">
        ${digits.map(
          (digit) =>
            html`<button aria-pressed=${String(this.count) === digit} @click=${() => this.#press(digit)}>${digit}</button>`,
        )}
      </div>`;
  }

  #press(key: string): void {
    this.dispatchEvent(new CustomEvent('mp-count', { detail: pressed(this.count, key) }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-count-keys': CountKeys;
  }
}
