/** The order a new site is drawn in: one sentence and one button at a time, then two posts. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Kind } from '../../../site/types.ts';
import { takeTool } from '../../actions/land-draw.ts';
import { guideOrder, nextOfGuide, suggestTwo } from '../../actions/land-site.ts';
import { setLand } from '../../actions/land-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-guide')
export class LandGuide extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['words', 'site', 'land', 'engine'] as const;
  }

  protected override render() {
    const { site, land } = this.state;
    if (!site) return null;
    const { guide } = this.words.land;
    const next = nextOfGuide(site, land.passed);
    const at = next ? guideOrder.indexOf(next) : guideOrder.length;
    return html`<section aria-label=${guide.label}>
      <h2>${guide.step(Math.min(at + 1, guideOrder.length + 1), guideOrder.length + 1)}</h2>
      ${next ? this.#kind(next) : this.#posts()}
      <p><button class="text" style="margin-left:-14px" data-do="end-guide" @click=${() => setLand(this.store, { guide: false })}>${guide.end}</button></p>
    </section>`;
  }

  #kind(kind: Kind) {
    const { guide } = this.words.land;
    return html`<p>${guide.say[kind]}</p>
      <div class="row" style="margin-top:8px">
        <button class="filled" data-guide=${kind} @click=${() => takeTool(this.store, { does: 'draw', kind })}>${guide.draw[kind]}</button>
        <button data-do="pass" @click=${() => setLand(this.store, { passed: [...this.state.land.passed, kind] })}>${guide.pass[kind]}</button>
      </div>`;
  }

  #posts() {
    const { guide } = this.words.land;
    const busy = this.state.engine.at === 'work';
    const empty = this.state.site?.features.length === 0;
    return html`<p>${empty ? guide.nothing : guide.posts}</p>
      <p style="margin-top:8px">
        <button class="filled" data-do="suggest" ?disabled=${busy || empty} @click=${() => suggestTwo(this.store)}>${guide.suggest}</button>
      </p>
      ${busy ? html`<p class="small">${guide.busy}</p>` : null}`;
  }
}
