/** The site file: downloaded with its seal, another one opened. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { downloadSite, openFile } from '../../actions/land-file.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-files')
export class LandFiles extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['words', 'site'] as const;
  }

  protected override render() {
    const { file } = this.words.land;
    return html`<section>
        <h2>${file.download}</h2>
        <p>${file.downloadHint}</p>
        <p><button data-do="download" ?disabled=${!this.state.site} @click=${() => downloadSite(this.store)}>${file.download}</button></p>
      </section>
      <section>
        <h2>${file.open}</h2>
        <p>${file.openHint}</p>
        <label class="field"
          ><span>${file.choose}</span><input type="file" accept=".geojson,.json,application/geo+json" data-do="open" @change=${this.#open}
        /></label>
      </section>`;
  }

  #open({ target }: Event): void {
    const input = target as HTMLInputElement;
    const chosen = input.files?.[0];
    input.value = '';
    if (chosen) void openFile(this.store, chosen);
  }
}
