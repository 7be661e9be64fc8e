/** "What is inside?": the states as large choices with their drawings, and "unsure". */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { VisitState } from '../../../visits/visit.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { stateDrawings } from '../place-round/drawings.ts';

const few: readonly VisitState[] = ['empty', 'building', 'eggs', 'young', 'fledged'];
const all: readonly VisitState[] = [...few, 'failed', 'other-user'];

/** Fires `mp-state` with the state, or `unsure`. */
@customElement('mp-visit-choices')
export class VisitChoices extends StoreElement {
  static override styles = [
    shared,
    css`
      .grid {
        display: grid;
        grid-template-columns: repeat(3, 1fr);
        gap: 8px;
      }
      button {
        display: flex;
        align-items: center;
        justify-content: center;
        gap: 7px;
        min-height: 60px;
        padding: 0 4px;
        line-height: 1.05;
      }
      svg {
        flex: none;
      }
      button[aria-pressed="true"] {
        background: var(--sky-wash);
        border-color: var(--sky);
        box-shadow: inset 0 0 0 2px var(--sky);
      }
      @media (max-width: 719px) {
        button {
          font-size: 1.06rem;
        }
      }
      @media (max-width: 340px) {
        .grid {
          grid-template-columns: repeat(2, 1fr);
        }
      }
    `,
  ];

  /** The state already chosen; null = none yet. */
  @property({ attribute: false }) chosen: VisitState | null = null;
  /** Whether "failed" and "other user" are shown too. */
  @property({ type: Boolean }) whole = false;

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { visit } = this.words.round;
    return html`<div class="grid" role="group" aria-label=${visit.what}>
      ${(this.whole ? all : few).map((state) => this.#choice(state, visit.states[state]))}
      ${this.#choice('unsure', visit.unsure)}
    </div>`;
  }

  #choice(state: VisitState | 'unsure', word: string) {
    return html`<button
      data-state=${state}
      aria-pressed=${this.chosen === null || state === 'unsure' ? 'false' : String(this.chosen === state)}
      @click=${() => this.dispatchEvent(new CustomEvent('mp-state', { detail: state }))}
    >
      ${stateDrawings[state]}<span>${word}</span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-visit-choices': VisitChoices;
  }
}
