/** Every place that was left out, by its reason, the best first. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LeftOut, LeftOutCode } from '../../../plan-types.ts';
import { select } from '../../actions/select.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

/** Rows added at a time. */
const some = 25;

@customElement('mp-posts-left')
export class PostsLeft extends StoreElement {
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
      summary {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        min-height: 44px;
        border-bottom: 1px solid var(--ring);
        font: 700 0.969rem / 1.25 var(--serif);
        cursor: pointer;
      }
      summary::after {
        content: "+";
        order: 3;
        font: 700 1.125rem / 1 var(--sans);
      }
      details[open] > summary::after {
        content: "–";
      }
      summary span:first-child {
        flex: 1;
      }
      li {
        border-bottom: 1px solid var(--ring);
      }
      button.row {
        width: 100%;
        padding: 4px 0;
        border: 0;
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
        font-size: inherit;
        line-height: 1.25;
      }
    `,
  ];

  /** How many rows of each reason are shown; a reason that is not here is closed. */
  @state() private shown: Readonly<Partial<Record<LeftOutCode, number>>> = {};

  protected override watches() {
    return ['plan', 'words'] as const;
  }

  protected override render() {
    const leftOut = this.state.plan?.leftOut ?? [];
    const { left } = this.words.posts;
    if (leftOut.length === 0) return html`<h1>${left.none}</h1>`;
    return html`<h1>${left.title(leftOut.length)}</h1>
      <p class="small">${left.about}</p>
      ${[...byReason(leftOut)].map(([code, all]) => this.#reason(code, all))}`;
  }

  #reason(code: LeftOutCode, all: readonly LeftOut[]) {
    const { left } = this.words.posts;
    const count = this.shown[code] ?? 0;
    const more = all.length - count;
    return html`<details data-code=${code} @toggle=${(event: Event) => this.#toggle(code, event)}>
      <summary><span>${left.reasons[code]}</span><span class="number">${all.length}</span></summary>
      ${
        count === 0
          ? null
          : html`<ul>
              ${all.slice(0, count).map(
                (one) =>
                  html`<li>
                    <button class="row" data-post=${one.post} @click=${() => select(this.store, { of: 'post', id: one.post })}>
                      ${one.sentence}
                    </button>
                  </li>`,
              )}
            </ul>`
      }
      ${
        count > 0 && more > 0
          ? html`<button class="text" @click=${() => this.#show(code, count + some)}>${left.more(Math.min(some, more))}</button>`
          : null
      }
    </details>`;
  }

  #toggle(code: LeftOutCode, { target }: Event): void {
    const { open } = target as HTMLDetailsElement;
    if (open && !this.shown[code]) this.#show(code, some);
  }

  #show(code: LeftOutCode, count: number): void {
    this.shown = { ...this.shown, [code]: count };
  }
}

/** Most frequent reason first; within one the best score first. */
function byReason(all: readonly LeftOut[]): Map<LeftOutCode, readonly LeftOut[]> {
  const groups = new Map<LeftOutCode, LeftOut[]>();
  for (const one of [...all].sort((a, b) => (b.score ?? -1) - (a.score ?? -1)))
    groups.set(one.code, [...(groups.get(one.code) ?? []), one]);
  return new Map([...groups].sort((a, b) => b[1].length - a[1].length));
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-posts-left': PostsLeft;
  }
}
