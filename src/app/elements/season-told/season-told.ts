/** Which part of the score told success from failure on this trail, or that there are too few nests to tell. */
import { css, html, svg } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Told } from '../../../visits/told.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';

@customElement('mp-season-told')
export class SeasonTold extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      .line {
        grid-template-columns: 1fr;
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words'] as const;
  }

  protected override render() {
    const told = this.state.season.trail?.review.told;
    const { season } = this.words;
    if (!told) return null;
    return html`<section>
      <h2>${season.told}</h2>
      ${
        told.kind === 'too-few'
          ? html`<p>${told.sentence}</p>`
          : html`<p class="small">${season.toldHint}</p>
              <div class="rows">${told.criteria.map((one) => this.#row(one))}</div>`
      }
    </section>`;
  }

  #row({ criterion, auc, interval, verdict }: Told) {
    const { season } = this.words;
    const figures = season.toldFigures(auc, interval?.low ?? null, interval?.high ?? null);
    return html`<div class="line">
      <span>${season.criterion[criterion] ?? criterion}: ${season.verdict[verdict]}</span>
      <div class="small">${figures} ${mark(auc, interval)}</div>
    </div>`;
  }
}

/** From 0 to 1 with the middle marked: left of it it ran against, right of it it told. */
function mark(auc: number, interval: Told['interval']) {
  const x = (value: number) => (6 + value * 188).toFixed(1);
  return html`<svg class="interval" viewBox="0 0 200 16" preserveAspectRatio="xMinYMid" aria-hidden="true">
    ${svg`<path class="base" d="M6 8H194M100 1v14" fill="none" />
      ${interval ? svg`<path class="span" d="M${x(interval.low)} 8H${x(interval.high)}" />` : null}
      <circle cx=${x(auc)} cy="8" r="5" />`}
  </svg>`;
}
