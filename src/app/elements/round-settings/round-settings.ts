/** Walkers, minutes a box, start and way round of the walk, and which way it is walked now. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { setSetting } from '../../../edits/set-setting.ts';
import type { SiteSettings } from '../../../site/types.ts';
import { edit } from '../../actions/edit.ts';
import { say } from '../../actions/say.ts';
import { setRound } from '../../actions/visit-log.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { roundStyle } from '../place-round/round-style.ts';

@customElement('mp-round-settings')
export class RoundSettings extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      .row {
        display: flex;
        align-items: center;
        gap: 8px;
        padding: 4px 0;
      }
      .row > span:first-child,
      .row > label {
        flex: 1;
        font-weight: 600;
      }
      output {
        min-width: 32px;
        text-align: center;
        font: 700 1.1rem / 1 var(--serif);
      }
      .step {
        font-size: 1.2rem;
        padding: 0;
      }
      select {
        max-width: 60%;
      }
    `,
  ];

  /** Whether it stands among the plan's settings: then how the walker goes about it is left out. */
  @property({ type: Boolean }) plan = false;

  protected override watches() {
    return ['site', 'round', 'words'] as const;
  }

  protected override render() {
    const { site, round } = this.state;
    if (!site || round.shared) return null;
    const { settings } = site;
    const { words } = this;
    return html`${this.#stepper(words.round.walkers, settings.walkers, 1, 12, (walkers) => this.#set('walkers', walkers))}
      ${this.#stepper(words.round.minutesPerBox, settings.minutesPerBox, 1, 30, (minutes) => this.#set('minutesPerBox', minutes))}
      ${this.#start()} ${this.#wayRound()}
      ${this.plan ? null : this.#direction()}`;
  }

  /** Which way it is walked now: for this window only, numbers stay. */
  #direction() {
    const { round, words } = this.state;
    return html`<div class="row">
        <label for="direction">${words.round.direction}</label>
        <select
          id="direction"
          .value=${round.reversed ? 'other' : 'numbered'}
          @change=${(event: Event) =>
            setRound(this.store, { reversed: (event.target as HTMLSelectElement).value === 'other' })}
        >
          <option value="numbered" ?selected=${!round.reversed}>${words.round.asNumbered}</option>
          <option value="other" ?selected=${round.reversed}>${words.round.otherWay}</option>
        </select>
      </div>`;
  }

  #stepper(word: string, value: number, least: number, most: number, set: (value: number) => void) {
    const { round } = this.words;
    return html`<div class="row" role="group" aria-label=${word}>
      <span>${word}</span>
      <button class="step" aria-label=${round.fewer(word)} ?disabled=${value <= least} @click=${() => set(value - 1)}>−</button>
      <output>${value}</output>
      <button class="step" aria-label=${round.more(word)} ?disabled=${value >= most} @click=${() => set(value + 1)}>+</button>
    </div>`;
  }

  #start() {
    const { site, words } = this.state;
    const heads = site?.features.filter((one) => one.kind === 'trailhead') ?? [];
    if (!site || heads.length < 2) return null;
    const chosen = site.settings.start ?? heads[0]?.id;
    return html`<div class="row">
      <label for="start">${words.round.start}</label>
      <select id="start" @change=${(event: Event) => this.#set('start', (event.target as HTMLSelectElement).value)}>
        ${heads.map(
          (head) =>
            html`<option value=${head.id} ?selected=${head.id === chosen}>${String(head.properties.name ?? head.id)}</option>`,
        )}
      </select>
    </div>`;
  }

  /** Which way round the walk is planned; numbers and sheets follow. Without a trailhead there is no round trip to turn. */
  #wayRound() {
    const { site, words } = this.state;
    if (!site?.features.some((one) => one.kind === 'trailhead'))
      return html`<p class="small">${words.round.noStart}</p>`;
    const { direction, order } = site.settings;
    const choices = [null, 'clockwise', 'counterclockwise'] as const;
    const pick = ({ target }: Event) =>
      this.#set('direction', choices[(target as HTMLSelectElement).selectedIndex] ?? null);
    return html`<div class="row">
        <label for="way-round">${words.round.wayRound}</label>
        <select id="way-round" ?disabled=${order.length > 0} @change=${pick}>
          ${choices.map(
            (one) =>
              html`<option value=${one ?? ''} ?selected=${one === direction}>${words.round.waysRound[one ?? 'either']}</option>`,
          )}
        </select>
      </div>
      ${order.length > 0 ? html`<p class="small">${words.round.wayByHand}</p>` : null}`;
  }

  #set<K extends 'walkers' | 'minutesPerBox' | 'start' | 'direction'>(key: K, value: SiteSettings[K]): void {
    const { site } = this.state;
    if (!site) return;
    const done = setSetting(site, key, value);
    if ('refused' in done) say(this.store, 'trouble', done.refused);
    else edit(this.store, done.site, done.sentence);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-settings': RoundSettings;
  }
}
