/** Which boxes are due, most overdue first, and the same as a calendar file. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { dayWords } from '../../../visits/days.ts';
import type { Due } from '../../../visits/due.ts';
import { goToBox } from '../../actions/round.ts';
import { calendarFile } from '../../actions/round-share.ts';
import { nowOf, today } from '../../actions/round-view.ts';
import { setExperience } from '../../actions/visit-log.ts';
import { dueOf } from '../../field/box-now.ts';
import { saveFile } from '../../field/hand-over.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';

@customElement('mp-round-due')
export class RoundDue extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      :host {
        display: block;
      }
      li button {
        display: block;
        width: 100%;
        text-align: left;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        padding: 8px 4px;
        font-weight: 400;
        line-height: 1.3;
      }
      b {
        font: 700 1rem / 1.2 var(--serif);
      }
    `,
  ];

  protected override watches() {
    return ['round', 'plan', 'words'] as const;
  }

  protected override render() {
    const { due: words } = this.words.round;
    const { experience } = this.state.round;
    const list = dueOf(nowOf(this.state), today(), experience);
    return html`<h1>${words.title}</h1>
      ${list.length === 0 ? html`<p>${words.none}</p>` : null}
      <ol>
        ${list.map((due) => html`<li>${this.#row(due)}</li>`)}
      </ol>
      <p class="small">${words.rule}</p>
      <section>
        <h2>${words.experience}</h2>
        <div class="choices">
          <button aria-pressed=${experience === 'new'} @click=${() => void setExperience(this.store, 'new')}>
            ${words.beginner}
          </button>
          <button aria-pressed=${experience === 'experienced'} @click=${() => void setExperience(this.store, 'experienced')}>
            ${words.experienced}
          </button>
        </div>
        <p class="small">${words.source}</p>
      </section>
      <div class="buttons">
        <button ?disabled=${list.length === 0} @click=${() => saveFile(calendarFile(this.state))}>${words.calendar}</button>
      </div>`;
  }

  #row(due: Due) {
    const { due: words, box } = this.words.round;
    const when =
      due.overdue > 0 ? words.overdue(due.overdue) : due.due === today() ? words.today : words.on(dayWords(due.due));
    return html`<button @click=${() => due.number !== null && goToBox(this.store, due.number)}>
      <b>${box(due.number ?? 0)}</b> <span class=${due.overdue > 0 ? 'weak' : ''}>${when}</span>${due.do === 'watch' ? html` · <span class="weak">${words.watch}</span>` : null}<br />
      <span class="small">${due.detail}</span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-due': RoundDue;
  }
}
