/** Why the box stands here: what the choice is worth, which places it beat, and what its neighbors left free. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { lengthText } from '../../../criteria/units.ts';
import { bearing, distance } from '../../../geometry/point.ts';
import type { LeftOut, PlannedBox } from '../../../plan-types.ts';
import { openPostsPage } from '../../actions/posts-state.ts';
import { select } from '../../actions/select.ts';
import { compass } from '../../format.ts';
import { shownBox } from '../../shown-plan.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

/** Beaten places shown. */
const most = 6;

@customElement('mp-posts-why')
export class PostsWhy extends StoreElement {
  static override styles = [
    shared,
    css`
      *,
      *::before,
      *::after {
        box-sizing: border-box;
      }
      p,
      ol {
        margin-top: 8px;
      }
      h2 {
        margin-top: 14px;
      }
      button {
        display: flex;
        justify-content: space-between;
        align-items: center;
        width: 100%;
        padding: 0;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        font-weight: 400;
        text-align: left;
      }
    `,
  ];

  protected override watches() {
    return ['plan', 'selection', 'words', 'units', 'posts'] as const;
  }

  protected override render() {
    const { plan } = this.state;
    const box = shownBox(this.state);
    const { why } = this.words.posts;
    if (!plan || !box) return html`<p>${why.noBox}</p>`;
    const beaten = plan.leftOut
      .filter((left) => left.becauseOf === box.number)
      .sort((a, b) => (b.score ?? -1) - (a.score ?? -1));
    const score = Math.round(box.card.score);
    const best = plan.proof.state === 'best-possible';
    const better = beaten.filter((left) => (left.score ?? 0) > box.card.score).length;
    return html`<h1>${why.title(box.number)}</h1>
      <p>${box.state === 'standing' ? why.standing : box.locked ? why.locked : why.chosen(score, plan.sites, best)}</p>
      <p>${beaten.length === 0 ? why.beatsNone : why.beats(beaten.length)} ${better > 0 ? why.better(better, best) : ''}</p>
      ${
        beaten.length > 0
          ? html`<h2>${why.beatenTitle}</h2>
              <ol>
                ${beaten.slice(0, most).map((left) => html`<li>${this.#row(box, left)}</li>`)}
              </ol>`
          : null
      }
      <p class="small">${plan.proof.sentence}</p>`;
  }

  #row(box: PlannedBox, left: LeftOut) {
    const { why } = this.words.posts;
    const way = lengthText(distance(box.at, left.at), this.state.units);
    const show = () => {
      openPostsPage(this.store, 'list');
      select(this.store, { of: 'post', id: left.post });
    };
    return html`<button data-post=${left.post} @click=${show}>
      <span>${why.away(way, compass(bearing(box.at, left.at)))}</span>
      <span class="number">${left.score === null ? '–' : Math.round(left.score)}</span>
    </button>`;
  }
}
