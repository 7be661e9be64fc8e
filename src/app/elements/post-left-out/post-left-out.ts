/** A post that is no box: its score, and why it was left out. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LeftOut } from '../../../plan-types.ts';
import { select } from '../../actions/select.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-post-left-out')
export class PostLeftOut extends StoreElement {
  static override styles = [
    shared,
    css`
      .wash {
        margin: 12px 0;
      }
    `,
  ];

  @property({ attribute: false }) left: LeftOut | null = null;

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { left } = this;
    if (!left) return null;
    const { posts } = this.words;
    const { becauseOf, score } = left;
    return html`<h1>${posts.leftOut}</h1>
      ${score === null ? null : html`<p class="sub">${posts.score} ${Math.round(score)}</p>`}
      <p class="wash">${left.sentence}</p>
      ${
        becauseOf === null
          ? null
          : html`<button @click=${() => select(this.store, { of: 'box', number: becauseOf })}>${posts.box(becauseOf)}</button>`
      }`;
  }
}
