/** The newest visits of a box, each with a way to correct it: a correction is a new visit, the old one stays in the log. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { dayWords } from '../../../visits/days.ts';
import type { Visit } from '../../../visits/visit.ts';
import { correctVisit, visitWords } from '../../actions/round.ts';
import { nowOf } from '../../actions/round-view.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';

/** Visits listed: two walkers of one day, and the week before. */
const shown = 4;

@customElement('mp-visit-history')
export class VisitHistory extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      details {
        margin-top: 16px;
        border-top: 1px solid var(--line);
      }
      summary {
        cursor: pointer;
        font: 700 0.969rem / 1.25 var(--serif);
        min-height: 44px;
        padding: 12px 0;
      }
      li {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        border-bottom: 1px solid var(--ring);
      }
    `,
  ];

  @property() post = '';

  protected override watches() {
    return ['round', 'words', 'plan'] as const;
  }

  protected override render() {
    const visits = [...(nowOf(this.state).get(this.post)?.visits ?? [])].reverse().slice(0, shown);
    if (visits.length === 0) return null;
    const { visit } = this.words.round;
    return html`<details>
      <summary>${visit.history}</summary>
      <ul>
        ${visits.map((one) => html`<li><span>${this.#words(one)}</span>${this.#correct(one)}</li>`)}
      </ul>
    </details>`;
  }

  #words(one: Visit): string {
    const when = [dayWords(one.date), one.time].filter(Boolean).join(', ');
    return `${when}: ${visitWords(one, this.words)}${one.observer ? ` (${one.observer})` : ''}`;
  }

  #correct(one: Visit) {
    const { visit } = this.words.round;
    return html`<button class="text" data-correct=${one.id} @click=${() => correctVisit(this.store, one)}>
      ${visit.correct}<span class="unseen"> ${dayWords(one.date)}</span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-visit-history': VisitHistory;
  }
}
