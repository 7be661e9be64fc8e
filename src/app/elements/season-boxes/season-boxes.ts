/** Every box with what became of it and what to do: the way into its own page. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { BoxReview } from '../../../visits/review.ts';
import { lookAtBox } from '../../actions/season-review.ts';
import { outcomeOf, outcomeWords } from '../../season-outcome.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';

@customElement('mp-season-boxes')
export class SeasonBoxes extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      li button {
        display: grid;
        grid-template-columns: 34px 1fr auto;
        gap: 8px;
        align-items: center;
        width: 100%;
        min-height: 44px;
        padding: 4px;
        border: 0;
        border-bottom: 1px solid var(--line);
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
      }
      .number {
        text-align: center;
      }
      .do {
        font: 700 0.9375rem / 1.2 var(--serif);
      }
      .change {
        color: var(--rust);
      }
      @media (max-width: 719px) {
        li button {
          min-height: 56px;
        }
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words'] as const;
  }

  protected override render() {
    const review = this.state.season.trail?.review;
    if (!review) return null;
    return html`<section>
      <h2>${this.words.season.boxes}</h2>
      <ul>
        ${review.boxes.map((box) => this.#row(box))}
      </ul>
    </section>`;
  }

  #row(box: BoxReview) {
    const { season } = this.words;
    const kinds = box.advice.map(({ kind }) => season.advice[kind]);
    const stays = box.advice.every(({ kind }) => kind === 'keep');
    const words = outcomeWords(outcomeOf(box), season.short);
    return html`<li>
      <button
        data-box=${box.post}
        @click=${() => lookAtBox(this.store, box.post, box.number)}
      >
        <span class="number" aria-hidden="true">${box.number ?? '–'}</span>
        <span><span class="unseen">${`${season.box(box.number, box.post)}: `}</span>${words}<span class="unseen">. </span></span>
        <span class="do ${stays ? '' : 'change'}">${kinds.join(', ')}</span>
      </button>
    </li>`;
  }
}
