/** What decides: a row for each criterion that counts, and one quiet line for those that do not. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Row } from '../../../criteria/criterion.ts';
import type { PostCard } from '../../../plan-types.ts';
import { birdName } from '../../bird-name.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../curve-spark/curve-spark.ts';
import { weakRows } from '../post-card/card-words.ts';
import { type SourceMarks, sourceMarks } from './source-marks.ts';

@customElement('mp-reason-rows')
export class ReasonRows extends StoreElement {
  static override styles = [
    shared,
    css`
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 54px minmax(30px, auto);
        overflow-wrap: anywhere;
        gap: 10px;
        align-items: center;
        min-height: 28px;
        padding: 2px 0;
        border-bottom: 1px solid var(--ring);
        line-height: 1.22;
      }
      .number {
        text-align: right;
        color: var(--sky);
      }
      li.weak {
        color: inherit;
      }
      .weak .number {
        color: var(--rust);
      }
      .not {
        grid-column: 2 / 4;
        text-align: right;
      }
      sup {
        font: 400 0.656rem / 0 var(--serif);
        color: var(--quiet);
        padding-left: 2px;
      }
      .rest {
        padding-top: 5px;
        line-height: 1.3;
      }
    `,
  ];

  @property({ attribute: false }) card: PostCard | null = null;

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { card } = this;
    if (!card) return null;
    const marks = sourceMarks(card.rows);
    const rest = card.rows.filter((row) => row.weight === 0);
    return html`<ul aria-label=${this.words.posts.reasons}>
        ${card.rows.filter((row) => row.weight > 0).map((row) => this.#row(row, card, marks))}
      </ul>
      ${rest.length > 0 ? html`<p class="small rest">${this.#rest(rest, card)}</p>` : null}`;
  }

  #row(row: Row, card: PostCard, marks: SourceMarks) {
    const weak = weakRows(card).includes(row.id);
    const mark = marks.of.get(row.id);
    return html`<li class=${weak ? 'weak' : ''} data-row=${row.id}>
      <span>${row.sentence}${mark ? html`<sup>${mark}</sup>` : null}</span>
      ${row.score === null || row.raw === null ? this.#notJudged() : this.#figures(row, row.raw, row.score, weak)}
    </li>`;
  }

  #figures(row: Row, raw: number, score: number, weak: boolean) {
    return html`<mp-curve-spark .curve=${row.curve} .raw=${raw} .score=${score} .weak=${weak}></mp-curve-spark>
      <span class="number"
        ><span class="unseen">${this.words.posts.score} </span>${Math.round(score * 100)}</span
      >`;
  }

  #notJudged() {
    return html`<span class="small not">${this.words.posts.notJudged}</span>`;
  }

  /** The bird is named once. */
  #rest(rows: readonly Row[], { bird }: PostCard): string {
    const name = `${birdName(bird)} `;
    return rows
      .map(
        ({ sentence }, i) =>
          `${i > 0 && sentence.startsWith(name) ? this.words.posts.itDoes(sentence.slice(name.length)) : sentence}.`,
      )
      .join(' ');
  }
}
