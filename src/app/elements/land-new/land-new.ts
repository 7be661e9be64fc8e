/** A new site: its name and unit, and where it lies by typed coordinates, the device, or a file. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { readPosition } from '../../../exchange/coordinates.ts';
import type { LonLat, Units } from '../../../site/types.ts';
import { regionOf, startSite } from '../../actions/land-site.ts';
import { lookAt, openPage } from '../../actions/land-state.ts';
import { length } from '../../format.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { devicePosition } from '../land-numbers/device.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-new')
export class LandNew extends StoreElement {
  static override styles = [shared, landStyle];

  @state() private place: { readonly at: LonLat; readonly said: string } | null = null;
  @state() private trouble: string | null = null;

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { newSite, numbers } = this.words.land;
    return html`<p>${newSite.keeps}</p>
      <label><span>${newSite.name}</span><input data-name autocomplete="off" /></label>
      <label
        ><span>${newSite.units}</span
        ><select data-units>
          <option value="us">${newSite.unitWords.us}</option>
          <option value="metric">${newSite.unitWords.metric}</option>
        </select></label
      >
      <section>
        <h2>${newSite.where}</h2>
        <p class="small" id="where-hint">${numbers.typedHint}</p>
        <input data-where aria-label=${newSite.where} aria-describedby="where-hint" @input=${() => this.#readTyped()} />
        <div class="row" style="margin-top:8px">
          <button data-do="device" @click=${() => this.#device()}>${numbers.askDevice}</button>
        </div>
        <div role="status">
          ${this.place ? html`<p>${this.place.said}</p>` : null}
          ${this.trouble ? html`<p class="wash">${this.trouble}</p>` : null}
        </div>
      </section>
      <p style="margin-top:14px"><button class="filled wide" data-do="start" @click=${() => this.#start(false)}>${newSite.start}</button></p>
      <p style="margin-top:8px"><button class="wide" data-do="start-file" @click=${() => this.#start(true)}>${newSite.startFile}</button></p>`;
  }

  /** Read while it is typed: an answer that came with leaving the field would move the button from under the hand. */
  #readTyped(): void {
    const { position, said } = readPosition(this.#value('[data-where]'));
    this.place = position ? { at: position, said } : null;
    this.trouble = null;
  }

  #read(): void {
    const text = this.#value('[data-where]');
    if (text.trim() === '') return;
    const { position, said, issue } = readPosition(text);
    this.place = position ? { at: position, said } : null;
    this.trouble = issue ? `${issue.sentence} ${issue.fix}` : null;
  }

  async #device(): Promise<void> {
    const { numbers } = this.words.land;
    const fix = await devicePosition();
    if ('trouble' in fix) this.trouble = fix.trouble === 'denied' ? numbers.denied : numbers.noDevice;
    else {
      this.place = { at: fix.at, said: numbers.fix(length(fix.radius, this.state.units)) };
      this.trouble = null;
    }
  }

  /** Without a place the map cannot be shown: then a file must bring it. */
  async #start(byFile: boolean): Promise<void> {
    this.#read();
    if (this.trouble && !byFile) return;
    if (!this.place && !byFile) {
      this.trouble = this.words.land.newSite.needPlace;
      return;
    }
    const region = this.place ? { region: regionOf(this.place.at) } : {};
    const { store, place } = this;
    await startSite(store, this.#value('[data-name]'), { units: this.#value('[data-units]') as Units, ...region });
    if (byFile) openPage(store, 'import');
    else if (place) lookAt(store, place.at);
  }

  #value(selector: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(selector)?.value ?? '';
  }
}
