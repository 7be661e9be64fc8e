/** The chosen thing: what it is, how large, what is known of it, its shape and its corners. */
import { html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { setKind } from '../../../edits/set-kind.ts';
import { allKinds, shapeOf } from '../../../site/kinds.ts';
import { nameOf } from '../../../site/properties.ts';
import type { Kind, SiteFeature } from '../../../site/types.ts';
import { change } from '../../actions/land-state.ts';
import { capital } from '../../capital.ts';
import { area, length } from '../../format.ts';
import { measureOf } from '../../map/drawing/measure.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../land-numbers/land-numbers.ts';
import '../land-switches/land-switches.ts';
import { landStyle } from '../place-land/land-style.ts';
import './land-corner.ts';
import './land-properties.ts';
import './land-tools.ts';

@customElement('mp-land-card')
export class LandCard extends StoreElement {
  static override styles = [shared, landStyle];
  @property({ attribute: false }) feature!: SiteFeature;

  protected override watches() {
    return ['words', 'units', 'land', 'site', 'issues'] as const;
  }

  protected override render() {
    const { feature } = this;
    if (!feature) return null;
    const { land, kinds } = this.words;
    const { trouble } = this.state.land;
    const word = kinds[feature.kind] ?? feature.kind;
    return html`<h1>${nameOf(feature) ?? capital(word)}</h1>
      ${nameOf(feature) ? html`<p class="sub">${word}</p>` : null} ${this.#figures()}
      ${trouble ? html`<p class="wash" role="alert">${trouble.sentence}</p>` : null} ${this.#issues()}
      ${this.#kind(word)}
      <mp-land-properties .feature=${feature}></mp-land-properties>
      <mp-land-tools .feature=${feature}></mp-land-tools>
      <mp-land-corner .feature=${feature}></mp-land-corner>
      <mp-land-switches></mp-land-switches>
      <details>
        <summary>${land.pages.numbers}</summary>
        <mp-land-numbers></mp-land-numbers>
      </details>`;
  }

  #figures() {
    const { land } = this.words;
    const measure = measureOf(this.feature);
    if (!measure) return html`<p>${land.whyNot.unplaced}</p>`;
    if (measure.length === null) return null;
    const { units } = this.state;
    const rows: [string, string][] =
      measure.area === null
        ? [[land.length, length(measure.length, units)]]
        : [
            [land.area, area(measure.area, units)],
            [land.outline, length(measure.length, units)],
          ];
    return html`<dl class="figures">
      ${rows.map(([name, figure]) => html`<div><dt>${name}</dt><dd class="number">${figure}</dd></div>`)}
    </dl>`;
  }

  #issues() {
    return this.state.issues
      .filter((issue) => issue.feature === this.feature.id)
      .map((issue) => html`<p class="wash">${issue.sentence} ${issue.fix}</p>`);
  }

  #kind(word: string) {
    const { land, kinds } = this.words;
    const same = allKinds.filter((kind) => shapeOf(kind) === shapeOf(this.feature.kind));
    return html`<label
      ><span>${land.kind}</span
      ><select data-field="kind" aria-label=${land.kind} @change=${this.#setKind}>
        ${same.map((kind) => html`<option value=${kind} ?selected=${kind === this.feature.kind}>${kinds[kind] ?? word}</option>`)}
      </select></label
    >`;
  }

  #setKind({ target }: Event): void {
    const { site } = this.state;
    if (site) change(this.store, setKind(site, [this.feature.id], (target as HTMLSelectElement).value as Kind));
  }
}
