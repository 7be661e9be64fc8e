/** The newest visits of a box, each with a way to correct it – a correction is a new visit, the old one stays in the log – and with its photo. */
import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { dayWords } from '../../../visits/days.ts';
import type { Visit } from '../../../visits/visit.ts';
import { correctVisit, visitWords } from '../../actions/round.ts';
import { nowOf } from '../../actions/round-view.ts';
import { logOf } from '../../actions/visit-log.ts';
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
      @media (max-width: 719px) {
        summary {
          min-height: 56px;
          padding: 18px 0;
        }
      }
      img {
        display: block;
        width: 100%;
        margin: 4px 0 8px;
        border: var(--rule) solid var(--ink);
      }
      li > div {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 0 8px;
      }
      li span:first-child {
        flex: 1;
      }
      li {
        border-bottom: 1px solid var(--ring);
      }
    `,
  ];

  @property() post = '';
  /** The photo that is looked at: its name, and its address in this window; null address = not on this device. */
  @state() private photo: { readonly name: string; readonly url: string | null } | null = null;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#close();
  }

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
        ${visits.map(
          (one) => html`<li>
            <div><span>${this.#words(one)}</span>${this.#look(one)}${this.#correct(one)}</div>
            ${this.#picture(one)}
          </li>`,
        )}
      </ul>
    </details>`;
  }

  #words(one: Visit): string {
    const when = [dayWords(one.date), one.time].filter(Boolean).join(', ');
    return `${when}: ${visitWords(one, this.words)}${one.observer ? ` (${one.observer})` : ''}`;
  }

  #look({ photo }: Visit) {
    if (photo === null) return null;
    const open = this.photo?.name === photo;
    return html`<button
      class="text"
      data-photo=${photo}
      aria-expanded=${open}
      @click=${() => (open ? this.#close() : void this.#open(photo))}
    >
      ${this.words.round.visit.photo}
    </button>`;
  }

  #picture({ photo, date }: Visit) {
    if (photo === null || this.photo?.name !== photo) return null;
    const { visit } = this.words.round;
    return this.photo.url === null
      ? html`<p role="status">${visit.photoElsewhere}</p>`
      : html`<img src=${this.photo.url} alt=${visit.photoOf(dayWords(date))} />`;
  }

  async #open(name: string): Promise<void> {
    const kept = await (await logOf(this.store)).photo(name).catch(() => null);
    this.#close();
    this.photo = { name, url: kept ? URL.createObjectURL(kept) : null };
  }

  #close(): void {
    if (this.photo?.url) URL.revokeObjectURL(this.photo.url);
    this.photo = null;
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
