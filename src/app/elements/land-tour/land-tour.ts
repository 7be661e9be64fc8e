/** A short walk through the yard demo: six cards, each with a ring around what it speaks of, passed over or played again at will. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { setLand } from '../../actions/land-state.ts';
import { endTour, startTour, tourSeen } from '../../actions/land-tour.ts';
import { onceAFrame } from '../../once-a-frame.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import { pointed, seenElement } from './pointed.ts';

@customElement('mp-land-tour')
export class LandTour extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .ring {
        position: fixed;
        box-sizing: border-box;
        margin: 0;
        padding: 0;
        border: 3px solid var(--sky);
        border-radius: 8px;
        background: none;
        box-shadow: 0 0 0 2px var(--paper), inset 0 0 0 2px var(--paper);
        pointer-events: none;
      }
      @media (forced-colors: active) {
        .ring {
          border-color: Highlight;
        }
      }
    `,
  ];

  readonly #ring = onceAFrame(() => this.#point());

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('resize', this.#ring);
    addEventListener('scroll', this.#ring, { capture: true, passive: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('resize', this.#ring);
    removeEventListener('scroll', this.#ring, { capture: true });
  }

  protected override updated(): void {
    const { tour } = this.state.land;
    if (tour !== null) this.#target(tour)?.scrollIntoView({ block: 'nearest' });
    this.#ring();
  }

  #target(step: number): HTMLElement | null {
    return seenElement(document, pointed[step] ?? []);
  }

  /** Rings what the card speaks of; above everything, wherever it stands, and in nobody's way. */
  #point(): void {
    const ring = this.renderRoot.querySelector<HTMLElement>('.ring');
    const { tour } = this.isConnected ? this.state.land : { tour: null };
    const target = tour === null ? null : this.#target(tour);
    if (!ring || !target) {
      ring?.hidePopover();
      return;
    }
    const { left, top, width, height } = target.getBoundingClientRect();
    const inset = (low: number, size: number, all: number) => [Math.max(2, low - 4), Math.min(all - 2, low + size + 4)];
    const [x = 0, right = 0] = inset(left, width, innerWidth);
    const [y = 0, bottom = 0] = inset(top, height, innerHeight);
    ring.style.cssText = `left:${x}px;top:${y}px;width:${right - x}px;height:${bottom - y}px`;
    if (!ring.matches(':popover-open')) ring.showPopover();
  }

  protected override watches() {
    return ['words', 'land'] as const;
  }

  protected override render() {
    const { tour } = this.state.land;
    const words = this.words.land.tour;
    if (tour === null)
      return tourSeen()
        ? html`<p><button class="text" style="margin-left:-14px" data-do="tour" @click=${() => startTour(this.store)}>${words.again}</button></p>`
        : html`<section aria-label=${words.label}>
            <p>${words.offer}</p>
            <div class="row" style="margin-top:8px">
              <button data-do="tour" @click=${() => startTour(this.store)}>${words.start}</button>
              <button data-do="no-tour" @click=${() => endTour(this.store)}>${words.no}</button>
            </div>
          </section>`;
    const step = words.steps[tour];
    if (!step) return null;
    const last = tour === words.steps.length - 1;
    return html`<section aria-label=${words.label} style="border:var(--rule) solid var(--ink);border-radius:3px;padding:10px 14px">
      <div class="ring" popover="manual" data-ring></div>
      <div role="status">
        <p class="small">${words.of(tour + 1, words.steps.length)}</p>
        <h2>${step.title}</h2>
        <p>${step.say}</p>
      </div>
      <div class="row" style="margin-top:8px">
        <button class="filled" data-do="tour-next" @click=${() => (last ? endTour(this.store) : setLand(this.store, { tour: tour + 1 }))}>
          ${last ? words.end : words.next}
        </button>
        ${tour > 0 ? html`<button @click=${() => setLand(this.store, { tour: tour - 1 })}>${words.before}</button>` : null}
        ${last ? null : html`<button class="text" data-do="tour-skip" @click=${() => endTour(this.store)}>${words.skip}</button>`}
      </div>
    </section>`;
  }
}
