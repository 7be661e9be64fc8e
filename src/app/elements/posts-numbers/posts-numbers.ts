/** Numbers set by hand: type a number or move a box up and down; each change is one step back, and printed sheets are spoken of. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Plan, PlannedBox } from '../../../plan-types.ts';
import { followWalk, giveNumber, isUnsettled } from '../../actions/number.ts';
import { birdName } from '../../bird-name.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-posts-numbers')
export class PostsNumbers extends StoreElement {
  static override styles = [
    shared,
    css`
      *,
      *::before,
      *::after {
        box-sizing: border-box;
      }
      p {
        margin-top: 6px;
      }
      ol {
        margin-top: 10px;
      }
      li {
        display: grid;
        grid-template-columns: 64px 1fr auto auto;
        align-items: center;
        gap: 8px;
        padding: 4px 0;
        border-bottom: 1px solid var(--ring);
      }
      input {
        width: 64px;
        min-height: 44px;
        padding: 0 8px;
        border: var(--rule) solid var(--line);
        border-radius: 5px;
        background: var(--raised);
        font: 700 max(1rem, 16px) / 1 var(--serif);
        text-align: center;
      }
      .bird {
        line-height: 1.2;
      }
      li button {
        padding: 0 10px;
      }
      .wash {
        margin-top: 10px;
      }
      @media (max-width: 719px) {
        input {
          min-height: 56px;
        }
      }
    `,
  ];

  @state() private refused: { readonly post: string; readonly text: string } | null = null;
  /** Post whose field is to have the focus again after the list was drawn anew. */
  #focus: string | null = null;

  protected override watches() {
    return ['plan', 'site', 'words', 'engine'] as const;
  }

  protected override render() {
    const { plan, site } = this.state;
    const { posts } = this.words;
    const { numbers } = posts;
    if (!plan || !site || plan.boxes.length === 0) return html`<p>${posts.noPlan}</p>`;
    const { walkers, order } = site.settings;
    const byHand = order.length > 0;
    const unsettled = isUnsettled(this.state);
    return html`<h1>${numbers.title}</h1>
      <p class="small">${walkers > 1 ? numbers.walkers(walkers) : numbers.about}</p>
      ${walkers > 1 ? null : html`<p class="small">${numbers.keys}</p>`}
      <p data-how=${byHand ? 'hand' : 'walk'}>${walkers > 1 ? null : byHand ? this.#byHand(plan) : unsettled ? numbers.busy : numbers.follow}</p>
      ${
        byHand
          ? html`<p class="wash">${numbers.printed}</p>
              <p><button data-do="by-walk" @click=${() => followWalk(this.store)}>${numbers.back}</button></p>`
          : null
      }
      ${
        walkers > 1
          ? null
          : html`<ol aria-label=${posts.listTitle}>
              ${plan.boxes.map((box) => this.#row(box, plan.boxes.length))}
            </ol>`
      }`;
  }

  /** How much longer the walk is than the shortest; not known until the new plan is there. */
  #byHand({ rounds }: Plan): string {
    const { numbers } = this.words.posts;
    const gap = rounds[0]?.gap ?? null;
    if (gap === null) return numbers.byHand(null);
    return gap < 0.0005 ? numbers.byHandShort : numbers.byHand((gap * 100).toFixed(1));
  }

  #row(box: PlannedBox, most: number) {
    const unsettled = isUnsettled(this.state);
    const { numbers } = this.words.posts;
    const { number, post } = box;
    return html`<li>
        <input
          data-post=${post}
          inputmode="numeric"
          ?disabled=${unsettled}
          aria-label=${numbers.number(number)}
          .value=${String(number)}
          @change=${({ target }: Event) => this.#typed(box, (target as HTMLInputElement).value, most)}
          @keydown=${(event: KeyboardEvent) => this.#key(event, box, most)}
        />
        <span class="bird">${birdName(box.bird)}<br /><span class="small">${this.words.posts.score} ${Math.round(box.card.score)}</span></span>
        <button aria-label=${numbers.up(number)} ?disabled=${unsettled || number === 1} @click=${() => this.#give(box, number - 1)}>
          ${numbers.upWord}
        </button>
        <button aria-label=${numbers.down(number)} ?disabled=${unsettled || number === most} @click=${() => this.#give(box, number + 1)}>
          ${numbers.downWord}
        </button>
      </li>
      ${this.refused?.post === post ? html`<p class="wash" role="alert">${numbers.refused(this.refused.text, most)}</p>` : null}`;
  }

  #typed(box: PlannedBox, text: string, most: number): void {
    const number = Number(text);
    const good = text.trim() !== '' && Number.isInteger(number) && number >= 1 && number <= most;
    this.refused = good ? null : { post: box.post, text };
    if (good) this.#give(box, number);
  }

  #key(event: KeyboardEvent, box: PlannedBox, most: number): void {
    const step = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const to = box.number + step;
    if (to >= 1 && to <= most) this.#give(box, to);
  }

  #give({ post }: PlannedBox, number: number): void {
    this.refused = null;
    if (this.renderRoot.querySelector('input:focus')) this.#focus = post;
    giveNumber(this.store, post, number);
  }

  protected override updated(): void {
    if (this.#focus === null) return;
    const field = [...this.renderRoot.querySelectorAll('input')].find((one) => one.dataset.post === this.#focus);
    this.#focus = null;
    field?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-posts-numbers': PostsNumbers;
  }
}
