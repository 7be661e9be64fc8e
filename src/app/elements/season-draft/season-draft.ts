/** Next year's plan, line by line with a tick each; boxes that stay are one line. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Change } from '../../../plan/next-year.ts';
import { draftChanges, strike } from '../../actions/season-draft.ts';
import { showsInvented } from '../../actions/season-review.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';

@customElement('mp-season-draft')
export class SeasonDraft extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      label {
        display: grid;
        grid-template-columns: 24px 1fr;
        gap: 10px;
        align-items: center;
        min-height: 44px;
        padding: 4px 0;
        border-bottom: 1px solid var(--line);
      }
      input {
        width: 22px;
        height: 22px;
        accent-color: var(--sky);
      }
      @media (max-width: 719px) {
        label {
          min-height: 56px;
        }
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words', 'plan'] as const;
  }

  protected override render() {
    const { season } = this.words;
    const changes = draftChanges(this.state);
    const stay = changes.filter((one) => one.kind === 'keep' && one.cannot === null);
    const others = changes.filter((one) => one.kind !== 'keep');
    return html`<p>${season.draftHint}</p>
      ${showsInvented(this.state) ? html`<p class="wash">${season.draftInvented}</p>` : null}
      ${others.map((one) => this.#row(one))}
      ${stay.length > 0 ? this.#tick(season.draftStay(stay.length), stay) : null}`;
  }

  #row(change: Change) {
    return change.cannot === null
      ? this.#tick(change.sentence, [change])
      : html`<p class="small">${change.sentence} ${change.cannot}</p>`;
  }

  #tick(sentence: string, changes: readonly Change[]) {
    const keys = changes.map((one) => one.key);
    const off = keys.every((key) => this.state.season.struck.includes(key));
    return html`<label>
      <input
        type="checkbox"
        data-change=${keys[0] ?? ''}
        .checked=${!off}
        @change=${({ target }: Event) => strike(this.store, keys, !(target as HTMLInputElement).checked)}
      /><span>${sentence}</span>
    </label>`;
  }
}
