/** The band of the walk: which box, how far, which way, and how far the position can be trusted. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { lengthText } from '../../../criteria/units.ts';
import { compassPhrase } from '../../../sky/compass.ts';
import { needleAt, showPage, startPosition } from '../../actions/round.ts';
import { roundOf, seenToday, targetOf, wayTo, withinOf } from '../../actions/round-view.ts';
import { setRound } from '../../actions/visit-log.ts';
import type { Stop } from '../../field/field-round.ts';
import { arrowTurn } from '../../field/heading.ts';
import { markOf } from '../../field/next-box.ts';
import { gradeOf, isStale, type WayThere } from '../../field/position.ts';
import { askForCompass, mustAskForCompass } from '../../field/watch-heading.ts';
import { compass, degrees } from '../../format.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { wayStyle } from './way-style.ts';

@customElement('mp-round-way')
export class RoundWay extends StoreElement {
  static override styles = [shared, wayStyle];
  #tick: ReturnType<typeof setInterval> | null = null;

  protected override watches() {
    return ['round', 'selection', 'plan', 'words', 'units'] as const;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // A position that stops coming must be seen to grow old.
    this.#tick = setInterval(() => this.requestUpdate(), 5000);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#tick !== null) clearInterval(this.#tick);
  }

  protected override render() {
    const round = roundOf(this.state);
    const target = targetOf(this.state);
    if (!round || !target) return null;
    const way = wayTo(this.state, target);
    return html`<div class="top">
      <div class="band">
        ${this.#progress()}
        <div class="line">
          <h1>${this.words.round.box(target.number)}</h1>
          <p class="far ${way ? '' : 'told'}">${this.#distance(target, way)}</p>
        </div>
        <div class="line second">
          <p>
            ${target.facing === null ? '' : this.words.round.faces(shortPhrase(target.facing), degrees(target.facing))}
          </p>
          <p class="way">${this.#bearing(target, way)}</p>
        </div>
        ${this.#trust(way)}
      </div>
      ${this.#dial(way)}
    </div>`;
  }

  #progress() {
    const { round } = this.words;
    const stops = roundOf(this.state)?.stops ?? [];
    const seen = seenToday(this.state);
    const count = stops.filter((stop) => seen.has(stop.post)).length;
    const skipped = new Set(this.state.round.skipped);
    const current = targetOf(this.state)?.post ?? null;
    return html`<button class="progress" @click=${() => showPage(this.store, 'list')}>
      <span>${round.seenOf(count, stops.length)}</span>
      <span class="dots" aria-hidden="true"
        >${stops.map((stop) => html`<i class=${`${markOf(stop, seen, skipped, current)} ${seen.has(stop.post) ? 'done' : ''}`}></i>`)}</span
      >
      <span class="open">${round.pages.list}</span>
    </button>`;
  }

  #distance(target: Stop, way: WayThere | null) {
    const { units } = this.state;
    if (way) return way.within ? this.words.round.near : lengthText(way.metres, units);
    return target.way ? lengthText(target.way.metres, units) : '';
  }

  #bearing(target: Stop, way: WayThere | null) {
    const { round } = this.words;
    if (way?.within) return '';
    const bearing = way?.bearing ?? target.way?.bearing;
    if (bearing === undefined) return target.position ? '' : round.noPlace;
    const needle = needleAt(this.state);
    const said = round.bearing(compass(bearing), degrees(bearing), needle === null ? null : degrees(bearing - needle));
    return html`<span class="unseen">${round.bearingSpoken(compassPhrase(bearing))}</span>${said}${way ? null : html`<span class="from"> ${this.#from(target)}</span>`}`;
  }

  /** The way told by the plan starts at the box before. */
  #from(target: Stop): string {
    const stops = roundOf(this.state)?.stops ?? [];
    const before = stops[stops.indexOf(target) - 1];
    const { round } = this.words;
    return `${round.fromWord} ${before ? round.box(before.number).toLowerCase() : round.theStart}`;
  }

  /** One line of how far to trust it; the important one. */
  #trust(way: WayThere | null) {
    const { where } = this.state.round;
    const { round } = this.words;
    const within = withinOf(this.state);
    if (where.at !== 'fix') return this.#noPosition(where.at);
    const { fix } = where;
    const now = Date.now();
    if (isStale(fix, now))
      return html`<p class="trust care" role="status">${round.position.stale(Math.round((now - fix.time) / 1000))}</p>`;
    if (gradeOf(fix.accuracy) === 'poor')
      return html`<p class="trust care" role="status">
        ${round.position.poor(lengthText(fix.accuracy, this.state.units))}
      </p>`;
    if (within.length > 0) return html`<p class="trust" role="status">${round.withinError(within)}</p>`;
    return way || !targetOf(this.state)?.position ? null : html`<p class="trust">${round.noPlace}</p>`;
  }

  #noPosition(at: 'off' | 'asking' | 'denied' | 'none' | 'not-possible') {
    const { position } = this.words.round;
    if (at === 'off')
      return html`<button class="trust" @click=${() => startPosition(this.store)}>${position.turnOn}</button>`;
    return html`<p class="trust ${at === 'asking' ? '' : 'care'}" role="status">${position[at]}</p>`;
  }

  #dial(way: WayThere | null) {
    if (!way || way.within) return null;
    const { heading } = this.state.round;
    const turn = arrowTurn(way.bearing, heading);
    const { round } = this.words;
    const ask = !heading && mustAskForCompass();
    return html`<div class="slip">
      <svg viewBox="-30 -30 60 60" width="56" height="56" role="img" aria-label=${round.heading.label(compassPhrase(way.bearing))}>
        <circle r="27"></circle>
        <g transform=${`rotate(${-(heading?.degrees ?? 0)})`}><path class="north" d="M0 -27 L-4 -20 L4 -20 Z"></path></g>
        <g transform=${`rotate(${turn})`}><path class="arrow" d="M0 -19 L11 14 L0 8 L-11 14 Z"></path></g>
      </svg>
      <p>${this.#headingWords()}</p>
      ${
        ask
          ? html`<button @click=${() => void askForCompass().then(() => startPosition(this.store))}>
              ${round.heading.ask}
            </button>`
          : null
      }
      ${
        this.state.round.follow
          ? null
          : html`<button @click=${() => setRound(this.store, { follow: true })}>${round.centre}</button>`
      }
    </div>`;
  }

  #headingWords(): string {
    const { heading: known } = this.state.round;
    const { heading } = this.words.round;
    if (!known) return heading.none;
    const needle = needleAt(this.state);
    if (known.kind === 'course') return heading.course;
    if (known.kind === 'magnetic') return needle === null ? heading.magneticRaw : heading.magnetic;
    return needle === null ? heading.compassOnly : heading.compass(degrees(Math.abs(needle)));
  }
}

/** "east", but "ESE" where the words would not fit beside the way. */
function shortPhrase(bearing: number): string {
  const phrase = compassPhrase(bearing);
  return phrase.length > 9 ? compass(bearing) : phrase;
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-way': RoundWay;
  }
}
