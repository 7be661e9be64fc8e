/** All boxes in walking order, the second way to them beside the map. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { PlannedBox } from '../../../plan-types.ts';
import { select } from '../../actions/select.ts';
import { birdName } from '../../bird-name.ts';
import { isWeak } from '../../map/box-look.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { weakestWords } from '../post-card/card-words.ts';
import '../score-disc/score-disc.ts';

@customElement('mp-box-list')
export class BoxList extends StoreElement {
  static override styles = [
    shared,
    css`
      button {
        display: grid;
        grid-template-columns: 46px 1fr 30px;
        align-items: center;
        gap: 6px;
        width: 100%;
        padding: 5px 4px;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
        line-height: 1.2;
      }
      .number {
        text-align: right;
        color: var(--sky);
      }
      button.weak {
        color: inherit;
      }
      .weak .number {
        color: var(--rust);
      }
      .bird {
        display: block;
        font-weight: 600;
      }
    `,
  ];

  protected override watches() {
    return ['plan', 'words'] as const;
  }

  protected override render() {
    const boxes = this.state.plan?.boxes ?? [];
    return html`<ol aria-label=${this.words.posts.listTitle}>
      ${boxes.map((box) => html`<li>${this.#row(box)}</li>`)}
    </ol>`;
  }

  #row(box: PlannedBox) {
    const { posts } = this.words;
    const { card } = box;
    const weakest = weakestWords(card, posts);
    return html`<button
      class=${isWeak(box) ? 'weak' : ''}
      data-box=${box.number}
      @click=${() => select(this.store, { of: 'box', number: box.number })}
    >
      <mp-score-disc
        .score=${card.score}
        .facing=${card.facing.used}
        .label=${String(box.number)}
        .weak=${isWeak(box)}
        .standing=${box.state === 'standing'}
        size="30"
      ></mp-score-disc>
      <span
        ><span class="unseen">${posts.box(box.number)}, </span><span class="bird">${birdName(box.bird)}</span
        ><span class="small">${box.locked ? `${posts.lockedShort} ` : null}${weakest ? `${posts.weakest} ${weakest}` : card.weakest.length > 0 ? posts.nothingWeakShort : posts.notJudged}</span></span
      >
      <span class="number"><span class="unseen">${posts.score} </span>${Math.round(card.score)}</span>
    </button>`;
  }
}
