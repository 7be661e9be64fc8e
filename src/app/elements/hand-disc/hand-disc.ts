/** A post in the hand: its disc, and on a slip beside it the score where it is now and what that is against before. */
import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { PostCard } from '../../../plan-types.ts';
import type { Words } from '../../words/en.ts';
import '../score-disc/score-disc.ts';

export interface HandLook {
  /** The box's number; empty for a post that is no box. */
  readonly label: string;
  readonly card: PostCard | null;
  readonly before: number | null;
  readonly forbidden: string | null;
  readonly standing: boolean;
  readonly words: Words['posts'];
}

/** Under this the ring is drawn as weak, as on the map. */
const weakUnder = 60;

@customElement('mp-hand-disc')
export class HandDisc extends LitElement {
  static override styles = css`
    :host {
      display: block;
      pointer-events: none;
      cursor: grabbing;
    }
    mp-score-disc {
      display: block;
    }
    p {
      position: absolute;
      left: 50%;
      translate: -50% 0;
      margin: 0;
      padding: 2px 8px;
      border: var(--rule) solid var(--ink);
      border-radius: 3px;
      background: var(--paper);
      color: var(--ink);
      font: 700 0.9375rem / 1.2 var(--serif);
      white-space: nowrap;
    }
    .under {
      top: calc(100% + 12px);
    }
    .over {
      bottom: calc(100% + 12px);
    }
    .by {
      font: 600 0.8125rem / 1.2 var(--sans);
    }
    .not {
      background: var(--rust-wash);
      color: var(--rust);
      border-color: var(--rust);
    }
  `;

  @property({ attribute: false }) look: HandLook | null = null;

  protected override render() {
    if (!this.look) return null;
    const { card, label, standing, forbidden } = this.look;
    const facing = card?.facing.used ?? 0;
    const score = Math.round(card?.score ?? 0);
    // The slip stands away from the beak.
    const side = facing > 90 && facing < 270 ? 'over' : 'under';
    return html`<mp-score-disc
        size="34"
        .score=${score}
        .facing=${facing}
        .label=${label}
        .standing=${standing}
        .weak=${score < weakUnder || forbidden !== null}
      ></mp-score-disc>
      ${card ? html`<p class="${side} ${forbidden ? 'not' : ''}" data-score=${score}>${forbidden ?? this.#score(score)}</p>` : null}`;
  }

  #score(score: number) {
    const { before, words } = this.look as HandLook;
    const by = before === null ? '' : words.changedBy(score - Math.round(before));
    return html`${score} <span class="by">${by}</span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-hand-disc': HandDisc;
  }
}
