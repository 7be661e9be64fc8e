/** What was said: an undo slip at the foot of the map for ten seconds, troubles until put away. Read out as status. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { unsay } from '../../actions/say.ts';
import type { AppState, Message } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

/** How long a slip stays (look: 10 s); longer while it has the focus. */
const stay = 10_000;

@customElement('mp-messages')
export class Messages extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      [role='status'] {
        display: flex;
        flex-direction: column;
        align-items: center;
        gap: 8px;
      }
      .slip {
        pointer-events: auto;
        display: flex;
        align-items: center;
        gap: 4px;
        max-width: 560px;
        border-radius: 3px;
        background: var(--ink);
        color: var(--paper);
        padding: 0 4px 0 16px;
        min-height: 44px;
      }
      .slip p {
        padding: 8px 0;
      }
      .slip p:last-child {
        padding-right: 12px;
      }
      .slip button {
        color: var(--paper);
        background: none;
        border: 0;
        text-decoration: underline;
        text-underline-offset: 3px;
      }
      @media (max-width: 719px) {
        .slip button {
          min-height: 56px;
          min-width: 64px;
        }
      }
      .slip.trouble {
        background: var(--rust-wash);
        color: var(--rust);
        border: var(--rule) solid var(--rust);
      }
      .slip.trouble button {
        color: var(--rust);
      }
    `,
  ];

  protected override watches() {
    return ['messages', 'words'] as const;
  }

  protected override changed(state: AppState, before: AppState): void {
    const fresh = state.messages.filter((m) => m.kind !== 'trouble' && !before.messages.includes(m));
    for (const message of fresh) setTimeout(() => this.#fade(message), stay);
  }

  protected override render() {
    return html`<div role="status" aria-live="polite">
      ${this.state.messages.map((message) => this.#slip(message))}
    </div>`;
  }

  #slip(message: Message) {
    const { act } = message;
    const close = () => unsay(this.store, message.id);
    const run = () => {
      close();
      act?.run();
    };
    return html`<div class="slip ${message.kind}" data-id=${message.id}>
      <p>${message.sentence}</p>
      ${act ? html`<button @click=${run}>${act.word}</button>` : null}
      ${message.kind === 'trouble' ? html`<button @click=${close}>${this.words.shell.close}</button>` : null}
    </div>`;
  }

  #fade(message: Message): void {
    if (!this.isConnected) return;
    const slip = this.renderRoot.querySelector(`[data-id="${message.id}"]`);
    if (slip?.matches(':focus-within')) setTimeout(() => this.#fade(message), stay);
    else unsay(this.store, message.id);
  }
}
