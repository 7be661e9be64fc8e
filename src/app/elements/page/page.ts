/** A page of the notebook: what scrolls, and a foot that stays. Places put their content in it and their buttons in `slot="foot"`. */
import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';

@customElement('mp-page')
export class Page extends LitElement {
  static override styles = css`
    :host {
      display: flex;
      flex-direction: column;
      height: 100%;
      min-height: 0;
    }
    .scroll {
      flex: 1;
      min-height: 0;
      overflow: hidden auto;
      padding: 10px 22px 12px 24px;
      scrollbar-width: thin;
      scrollbar-color: var(--line) transparent;
    }
    .foot {
      display: flex;
      gap: 8px;
      padding: 9px 10px 9px 22px;
      border-top: var(--rule) solid var(--ink);
      background: var(--raised);
      border-radius: 0 0 3px 3px;
    }
    .base {
      container-type: inline-size;
    }
    .foot:not(.full) {
      display: none;
    }
    ::slotted(*) {
      box-sizing: border-box;
    }
    ::slotted(button) {
      flex: 0 1 auto;
      line-height: 1.15;
      padding: 0 12px;
    }
    ::slotted(button.filled) {
      flex: 1 1 45%;
    }
    /* Letters twice as large in a narrow window: one button a line. */
    @container (max-width: 16rem) {
      .foot {
        flex-wrap: wrap;
      }
      ::slotted(button),
      ::slotted(button.filled) {
        flex: 1 1 100%;
      }
    }
    @media (max-width: 719px) {
      /* The sheet scrolls as a whole there (notebook-style.ts). */
      @container (max-width: 18rem) {
        :host {
          height: auto;
        }
        .scroll {
          overflow: visible;
        }
      }
      .scroll {
        padding: 8px 16px 16px;
      }
      .foot {
        padding: 8px 12px calc(8px + env(safe-area-inset-bottom));
      }
      ::slotted(button) {
        padding: 0 8px;
      }
    }
  `;

  protected override render() {
    return html`<div class="scroll" tabindex="0"><slot></slot></div>
      <div class="base">
        <div class="foot" part="foot"><slot name="foot" @slotchange=${this.#fill}></slot></div>
      </div>`;
  }

  /** Scrolls back to the top: a new page was opened. */
  toTop(): void {
    const scroll = this.renderRoot.querySelector('.scroll');
    scroll?.scrollTo(0, 0);
    // Where the whole sheet scrolls, its head may stay out of sight.
    if (scroll && this.getBoundingClientRect().top < 0) scroll.scrollIntoView({ block: 'start' });
  }

  /** An empty foot is not drawn. */
  #fill({ target }: Event): void {
    const slot = target as HTMLSlotElement;
    slot.parentElement?.classList.toggle('full', slot.assignedElements().length > 0);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-page': Page;
  }
}
