/** The rounds as lists: every box in walking order with the way to it, what was seen last, and whether it was seen today. */
import { css, html, svg } from 'lit';
import { customElement } from 'lit/decorators.js';
import { hollowCore, walkerLook } from '../../../../layers/walkers.ts';
import { lengthText } from '../../../criteria/units.ts';
import { goToBox } from '../../actions/round.ts';
import { nowOf, roundOf, roundsOf, seenToday, targetOf } from '../../actions/round-view.ts';
import { setRound } from '../../actions/visit-log.ts';
import type { FieldRound, Stop, Way } from '../../field/field-round.ts';
import { markOf } from '../../field/next-box.ts';
import { compass, degrees } from '../../format.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { knownOf } from '../visit-choices/visit-known.ts';
import { timeWords } from './time-words.ts';

/** A length that is told in yards: all legs then have one unit, and their sum another. */
const yards = 200;

/** Dashes of a sample, as a share of those on the map, so that it holds more than one. */
const sampleDash = 0.6;

@customElement('mp-round-list')
export class RoundList extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      *,
      *::before {
        box-sizing: border-box;
      }
      .walker {
        display: flex;
        align-items: center;
        gap: 10px;
        width: 100%;
        text-align: left;
        margin-top: 6px;
      }
      .walker svg {
        flex: none;
      }
      .walker span {
        flex: 1;
      }
      .walker[aria-pressed="true"] {
        border-color: var(--sky);
        background: var(--sky-wash);
      }
      .total {
        margin: 8px 0 2px;
        font-weight: 600;
      }
      li button {
        display: grid;
        grid-template-columns: 40px 1fr auto;
        align-items: center;
        gap: 8px;
        width: 100%;
        min-height: 48px;
        padding: 5px 4px;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
        line-height: 1.25;
      }
      li.here button {
        background: var(--sky-wash);
      }
      .disc {
        width: 32px;
        height: 32px;
        border-radius: 50%;
        border: 2px solid var(--ink);
        display: grid;
        place-items: center;
        font: 700 0.95rem / 1 var(--serif);
        background: var(--raised);
      }
      .seen .disc {
        background: var(--ink);
        color: var(--paper);
      }
      .skipped .disc {
        border-style: dashed;
      }
      .leg {
        display: block;
        font-weight: 600;
      }
      .mark {
        color: var(--moss);
        font-weight: 600;
      }
      @media (max-width: 719px) {
        .walker,
        li button {
          min-height: 56px;
        }
      }
      .back {
        padding: 10px 4px;
        font-weight: 600;
      }
    `,
  ];

  protected override watches() {
    return ['round', 'plan', 'selection', 'words', 'units'] as const;
  }

  protected override render() {
    const rounds = roundsOf(this.state);
    const round = roundOf(this.state);
    if (!round) return null;
    const { words, units } = this.state;
    return html`${rounds.length > 1 ? rounds.map((one, i) => this.#walker(one, i)) : null}
      <p class="total">
        ${words.round.total(round.stops.length, lengthText(round.metres, units), timeWords(round.minutes))}
      </p>
      ${rounds.length === 1 ? html`<p class="small">${this.#proof()}</p>` : null}
      <ol aria-label=${words.round.listLabel(round.walker)}>
        ${round.stops.map((stop, i) => this.#row(stop, i))}
      </ol>
      ${
        round.back
          ? html`<p class="back">
              ${words.round.back(lengthText(round.back.metres, units, yards), this.#minutes(round.back))}
            </p>`
          : null
      }`;
  }

  #proof(): string {
    const gap = this.state.plan?.rounds[0]?.gap;
    if (gap === null || gap === undefined || this.state.round.shared) return '';
    return gap < 0.0005 ? this.words.round.proven : this.words.round.within((gap * 100).toFixed(1));
  }

  /** Color and pattern as on the map, and both as words. */
  #walker(round: FieldRound, index: number) {
    const { words, units } = this.state;
    const { pattern, hollow, ink } = walkerLook(round.walker);
    const dash = pattern.dash?.map((part) => part * pattern.width * sampleDash).join(' ') ?? '';
    const stroke = (color: string, width: number) => svg`<line
      x1="3" x2="45" y1="6" y2="6" stroke=${`var(--${color})`} stroke-width=${width} stroke-dasharray=${dash} stroke-linecap="round"
    ></line>`;
    return html`<button
      class="walker"
      aria-pressed=${index === this.state.round.walker}
      @click=${() => setRound(this.store, { walker: index, skipped: [] })}
    >
      <svg width="48" height="12" aria-hidden="true">
        ${stroke(ink, pattern.width + (hollow ? 2 : 0.6))} ${hollow ? stroke('raised', (pattern.width + 2) * hollowCore) : null}
      </svg>
      <span
        >${words.round.walkerRound(round.walker)}, ${words.round.pattern(words.round.inks[ink], words.round.patterns[pattern.id], hollow)}<br /><small
          >${words.round.total(round.stops.length, lengthText(round.metres, units), timeWords(round.minutes))}</small
        ></span
      >
    </button>`;
  }

  #row(stop: Stop, index: number) {
    const { words } = this;
    const seen = seenToday(this.state);
    const mark = markOf(stop, seen, new Set(this.state.round.skipped), targetOf(this.state)?.post ?? null);
    const done = seen.has(stop.post);
    const known = knownOf(nowOf(this.state).get(stop.post) ?? null, this.state);
    return html`<li class=${`${mark} ${done ? 'seen' : ''}`}>
      <button data-box=${stop.number} @click=${() => goToBox(this.store, stop.number)}>
        <span class="disc" aria-hidden="true">${stop.number}</span>
        <span
          ><span class="unseen">${words.round.box(stop.number)}, </span
          ><span class="leg">${stop.way ? this.#leg(stop.way) : index === 0 ? words.round.fromStart : ''}</span
          ><span class="small"
            >${known.seen} <span class="weak">${known.closed ? words.round.doNotOpen : known.care}</span></span
          ></span
        >
        ${done ? html`<span class="mark">${words.round.seenWord}</span>` : mark === 'skipped' ? html`<span class="small">${words.round.skippedWord}</span>` : null}
      </button>
    </li>`;
  }

  #leg(way: Way): string {
    return this.words.round.leg(
      lengthText(way.metres, this.state.units, yards),
      compass(way.bearing),
      degrees(way.bearing),
      this.#minutes(way),
    );
  }

  #minutes({ minutes }: Way): string {
    return minutes < 0.95 ? '< 1' : String(Math.round(minutes));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-list': RoundList;
  }
}
