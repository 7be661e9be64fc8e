/** What must be known on every page of the Round: visits not saved, a clock that cannot be right, a newer app waiting. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { visitsFile } from '../../actions/round-share.ts';
import { retryVisits } from '../../actions/visit-log.ts';
import { saveFile } from '../../field/hand-over.ts';
import { clockDoubt, localTime } from '../../field/local-time.ts';
import { takeUpdate } from '../../offline/update.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-round-trouble')
export class RoundTrouble extends StoreElement {
  static override styles = [
    shared,
    css`
      .wash {
        margin: 6px 0;
      }
      button {
        color: var(--rust);
      }
      @media (max-width: 719px) {
        button {
          min-height: 56px;
        }
      }
      .note {
        border-left: 4px solid var(--sky);
        background: var(--sky-wash);
        padding: 6px 10px;
        margin: 6px 0;
      }
      .note button {
        color: var(--ink);
      }
    `,
  ];

  @state() private later = false;

  protected override watches() {
    return ['round', 'words', 'plan'] as const;
  }

  protected override render() {
    return html`${this.#unsaved()} ${this.#clock()} ${this.#update()}`;
  }

  #unsaved() {
    const { unsaved, logTrouble } = this.state.round;
    const { round } = this.words;
    if (unsaved.length === 0) return null;
    return html`<div class="wash" role="alert">
      <p>${round.unsaved(unsaved.length, logTrouble ?? '')}</p>
      <button class="text" @click=${() => void retryVisits(this.store)}>${round.tryAgain}</button>
      <button class="text" @click=${() => saveFile(visitsFile(this.state))}>${round.download}</button>
    </div>`;
  }

  #clock() {
    // Only where the device itself stands: a trail may be planned from far away.
    const { where } = this.state.round;
    const lon = where.at === 'fix' ? where.fix.position[0] : null;
    const doubt = clockDoubt(localTime(new Date()), this.state.round.log, lon);
    if (!doubt) return null;
    const { clock } = this.words.round;
    return html`<p class="wash">
      ${doubt.kind === 'behind' ? clock.behind(doubt.today, doubt.last) : clock.zone(doubt.hours)}
    </p>`;
  }

  #update() {
    const { update } = this.words.round;
    if (this.state.round.offline !== 'update-waiting' || this.later) return null;
    return html`<div class="note" role="status">
      <p>${update.ready} ${update.careful}</p>
      <button class="text" @click=${() => takeUpdate()}>${update.take}</button>
      <button class="text" @click=${() => (this.later = true)}>${update.later}</button>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-trouble': RoundTrouble;
  }
}
