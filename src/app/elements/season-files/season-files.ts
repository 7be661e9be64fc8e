/** Visits brought in with a report, and every file of the season to take along. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { bringVisits, type SeasonFile, takeSeasonFile } from '../../actions/season-files.ts';
import { seasonVisits } from '../../actions/season-review.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';

/** Odd visits named one by one. */
const shown = 12;
const files: readonly SeasonFile[] = ['visits', 'nests', 'dictionary', 'all', 'due'];

@customElement('mp-season-files')
export class SeasonFiles extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      label {
        display: grid;
        gap: 4px;
        margin-top: 8px;
      }
      input {
        min-height: 44px;
        max-width: 100%;
      }
      @media (max-width: 719px) {
        input {
          min-height: 56px;
        }
        .two button {
          min-height: 64px;
        }
      }
      input::file-selector-button {
        font: 600 0.875rem / 1 var(--sans);
        min-height: 44px;
        margin-right: 10px;
        padding: 0 14px;
        border: var(--rule) solid var(--ink);
        border-radius: 5px;
        background: var(--raised);
        color: var(--ink);
      }
      .two {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 8px;
        margin-top: 6px;
      }
      .two button {
        width: 100%;
        height: 100%;
        padding: 4px 10px;
        text-align: left;
        line-height: 1.2;
      }
      .two button span {
        display: block;
        font-weight: 400;
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words', 'round', 'plan'] as const;
  }

  protected override render() {
    const { season } = this.words;
    const nothing = seasonVisits(this.state).length === 0;
    return html`<section>
        <h2>${season.importTitle}</h2>
        <p>${season.importHint}</p>
        <label
          ><span>${season.importChoose}</span
          ><input type="file" accept=".json,application/json" data-do="bring" @change=${this.#bring}
        /></label>
        ${this.#report()}
      </section>
      <section>
        <h2>${season.exportTitle}</h2>
        <p class="small">${season.exact}</p>
        <ul class="two">
          ${files.map((file) => this.#file(file, nothing && file !== 'dictionary'))}
        </ul>
      </section>`;
  }

  #file(file: SeasonFile, off: boolean) {
    const [name, use] = this.words.season.file[file];
    return html`<li>
      <button data-file=${file} ?disabled=${off} @click=${() => takeSeasonFile(this.store, file)}>
        ${name}<span class="small">${use}</span>
      </button>
    </li>`;
  }

  #report() {
    const { taken } = this.state.season;
    const { season, round } = this.words;
    if (!taken) return html`<p role="status"></p>`;
    const { name, taken: report } = taken;
    const sentence =
      report.refused === null
        ? season.importRead(name, report.added.length, report.same)
        : season.importRefused(name, report.refused);
    return html`<div role="status">
      <p class=${report.refused === null ? '' : 'wash'}>${sentence}</p>
      ${report.issues.slice(0, shown).map((one) => html`<p class="small">${one.sentence} ${one.fix}</p>`)}
      ${report.issues.length > shown ? html`<p class="small">${round.share.more(report.issues.length - shown)}</p>` : null}
      ${report.conflicts.length > 0 ? html`<p class="weak">${season.importClash(report.conflicts.length)}</p>` : null}
      ${report.conflicts.map((one) => html`<p class="small">${one.sentence}</p>`)}
    </div>`;
  }

  #bring({ target }: Event): void {
    const input = target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file) void bringVisits(this.store, file);
  }
}
