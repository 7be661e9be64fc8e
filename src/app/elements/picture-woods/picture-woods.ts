/** Woods from a height raster: files, thresholds, what was found, and keeping it as one step. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { type CanopySettings, canopySettings } from '../../../exchange/canopy.ts';
import { dropWoods, findWoods, keepWoods } from '../../actions/picture-woods.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { panelStyle } from '../picture-panel/panel-style.ts';

/** What may be set, its unit, and the least and most. */
const fields = [
  ['woodsFrom', 'm', 1, 40],
  ['brushFrom', 'm', 0.1, 10],
  ['leastWoods', 'm²', 10, 100_000],
  ['leastBrush', 'm²', 1, 10_000],
] as const;

@customElement('mp-picture-woods')
export class PictureWoods extends StoreElement {
  static override styles = [shared, panelStyle];

  @state() private surface: File | null = null;
  @state() private ground: File | null = null;

  protected override watches() {
    return ['pictures', 'words', 'site'] as const;
  }

  protected override render() {
    const { woods } = this.words.pictures;
    return html`<section>
      <h2>${woods.title}</h2>
      <p class="small">${woods.hint}</p>
      ${this.#file(woods.surface, 'surface')} ${this.#file(woods.ground, 'ground')}
      <label
        ><span class="small">${this.words.pictures.projection}</span><input data-in="projection" placeholder="EPSG:32617"
      /></label>
      <div class="row">
        ${fields.map(
          ([name, unit, least, most]) => html`<label
            ><span class="small">${woods[name]}, ${unit}</span
            ><input type="number" data-set=${name} min=${least} max=${most} step="any" .value=${String(canopySettings[name])}
          /></label>`,
        )}
      </div>
      <div class="row">
        <button data-do="find" ?disabled=${!this.surface || !this.state.site} @click=${() => this.#find()}>
          ${this.state.pictures.woods ? woods.again : woods.find}
        </button>
      </div>
      <div role="status">${this.#found()}</div>
    </section>`;
  }

  #file(word: string, which: 'surface' | 'ground') {
    const take = ({ target }: Event) => {
      this[which] = (target as HTMLInputElement).files?.[0] ?? null;
    };
    return html`<label><span>${word}</span><input type="file" data-do=${which} accept=".tif,.tiff" @change=${take} /></label>`;
  }

  #find(): void {
    const typed = [...this.renderRoot.querySelectorAll<HTMLInputElement>('[data-set]')];
    const good = typed.filter((one) => one.value !== '' && one.checkValidity());
    const settings: Partial<CanopySettings> = Object.fromEntries(
      good.map((one) => [one.dataset.set ?? '', Number(one.value)]),
    );
    const projection = this.renderRoot.querySelector<HTMLInputElement>('[data-in=projection]')?.value.trim() || null;
    if (this.surface) void this.#look(this.surface, projection, settings);
  }

  /** What was found, or why nothing was, may stand below what is seen of the panel. */
  async #look(surface: File, projection: string | null, settings: Partial<CanopySettings>): Promise<void> {
    await findWoods(this.store, surface, this.ground, projection, settings);
    await this.updateComplete;
    this.renderRoot.querySelector('[role=status]')?.scrollIntoView({ block: 'nearest' });
  }

  #found() {
    const found = this.state.pictures.woods;
    const { woods } = this.words.pictures;
    if (!found) return null;
    const { features, tooSmall, unknownShare } = found.canopy;
    const count = (kind: string) => features.filter((one) => one.kind === kind).length;
    if (features.length === 0) return html`<p>${woods.nothing}</p>`;
    return html`<p data-found>${woods.found(count('woods'), count('brush'), count('tree'))}</p>
      ${tooSmall > 0 ? html`<p class="small">${woods.small(tooSmall)}</p>` : null}
      ${unknownShare > 0.005 ? html`<p class="small">${woods.unknown(Math.round(unknownShare * 100))}</p>` : null}
      <p class="small">${woods.sure}</p>
      <div class="row">
        <button class="filled" data-do="keep" @click=${() => keepWoods(this.store)}>${woods.keep(features.length)}</button>
        <button @click=${() => dropWoods(this.store)}>${woods.drop}</button>
      </div>`;
  }
}
