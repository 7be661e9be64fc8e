/** The site file: written with its seal, another one opened. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { openPage } from '../../actions/land-state.ts';
import { canOpenFiles, chooseSiteFile } from '../../actions/own-file.ts';
import { downloadSite, openFile } from '../../actions/shelf-file.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../own-file/own-file.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-files')
export class LandFiles extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['words', 'site'] as const;
  }

  protected override render() {
    const { file } = this.words.land;
    const none = this.state.site === null;
    return html`<section>
        <h2>${file.download}</h2>
        <p>${file.downloadHint}</p>
        <div class="row" style="margin-top:8px">
          <button class="filled" data-do="download" ?disabled=${none} @click=${() => downloadSite(this.store)}>${file.download}</button>
          <mp-own-file></mp-own-file>
        </div>
      </section>
      <section>
        <h2>${file.open}</h2>
        <p>${file.openHint} ${canOpenFiles() ? file.backHint : ''}</p>
        ${
          canOpenFiles()
            ? html`<button data-do="choose" style="margin-top:8px" @click=${this.#choose}>${file.choose}</button>`
            : html`<label class="field"
                ><span>${file.choose}</span
                ><input type="file" accept=".geojson,.json,application/geo+json" data-do="open" @change=${this.#open}
              /></label>`
        }
      </section>`;
  }

  readonly #choose = async (): Promise<void> => {
    const before = this.state.siteId;
    await chooseSiteFile(this.store);
    if (this.state.siteId !== before) openPage(this.store, 'list');
  };

  async #open({ target }: Event): Promise<void> {
    const input = target as HTMLInputElement;
    const chosen = input.files?.[0];
    input.value = '';
    if (!chosen) return;
    await openFile(this.store, chosen);
    openPage(this.store, 'list');
  }
}
