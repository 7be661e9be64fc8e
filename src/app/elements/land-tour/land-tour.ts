/** A short walk through the yard demo: six cards, passed over or played again at will. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { setLand } from '../../actions/land-state.ts';
import { endTour, startTour, tourSeen } from '../../actions/land-tour.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-tour')
export class LandTour extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['words', 'land'] as const;
  }

  protected override render() {
    const { tour } = this.state.land;
    const words = this.words.land.tour;
    if (tour === null)
      return tourSeen()
        ? html`<p><button class="text" data-do="tour" @click=${() => startTour(this.store)}>${words.again}</button></p>`
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
