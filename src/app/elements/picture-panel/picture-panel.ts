/** What the word Photo in the Ground slip opens: pictures under the drawing, new ones, and woods from heights. */
import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { addAddress, addFile, agree, packOf } from '../../actions/picture-add.ts';
import { moveCorners, tiePoints } from '../../actions/picture-place.ts';
import { changePicture, openPictures, readPictures, removePicture } from '../../actions/picture-state.ts';
import type { MapView } from '../../map/map-view.ts';
import { freeSpot } from '../../map/pictures/free-spot.ts';
import type { GroundPicture, PlacedPicture, ServedPictures } from '../../picture-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../picture-ties/picture-ties.ts';
import '../picture-woods/picture-woods.ts';
import { panelStyle } from './panel-style.ts';

@customElement('mp-picture-panel')
export class PicturePanel extends StoreElement {
  static override styles = [
    shared,
    panelStyle,
    css`
      header {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: 8px;
      }
    `,
  ];

  @property({ attribute: false }) view: MapView | null = null;
  /** A file that waits for its projection. */
  @state() private waiting: File | null = null;
  #told: string | null = null;

  protected override watches() {
    return ['pictures', 'words', 'siteId'] as const;
  }

  protected override updated(): void {
    void readPictures(this.store);
    const { trouble } = this.state.pictures;
    // It stands at the top; what went wrong may have been asked for at the foot.
    if (trouble && trouble !== this.#told)
      this.renderRoot.querySelector('[role=status]')?.scrollIntoView({ block: 'nearest' });
    this.#told = trouble;
  }

  protected override render() {
    const { pictures } = this.words;
    const { list, trouble, working } = this.state.pictures;
    return html`<header>
        <h2>${pictures.title}</h2>
        <button class="text" @click=${() => openPictures(this.store, false)}>${pictures.close}</button>
      </header>
      ${list.length === 0 ? html`<p>${pictures.none}</p>` : null}
      <div role="status">
        ${working ? html`<p>${working}</p>` : null} ${trouble ? html`<p class="wash">${trouble}</p>` : null}
      </div>
      <ul>
        ${list.map((one) => this.#picture(one))}
      </ul>
      ${this.#add()}
      <mp-picture-woods></mp-picture-woods>
      <p class="small">${pictures.keptHere}</p>`;
  }

  #picture(picture: GroundPicture) {
    const { pictures } = this.words;
    const { id, name, opacity, shown, credit } = picture;
    const set = (change: Partial<GroundPicture>) => changePicture(this.store, id, change);
    return html`<li class="picture" data-picture=${id}>
      <label class="tick"
        ><input
          type="checkbox"
          aria-label=${pictures.shown(name)}
          .checked=${shown}
          @change=${({ target }: Event) => set({ shown: (target as HTMLInputElement).checked })}
        /><b>${name}</b></label
      >
      ${picture.kind === 'served' ? this.#served(picture) : null}
      ${picture.kind === 'tiles' && !packOf(id) ? html`<p>${pictures.chooseAgain}</p>` : null}
      <label
        ><span class="small">${pictures.opacity(name)}: ${pictures.percent(opacity)}</span
        ><input
          type="range"
          min="10"
          max="100"
          step="5"
          .value=${String(Math.round(opacity * 100))}
          @input=${({ target }: Event) => set({ opacity: Number((target as HTMLInputElement).value) / 100 })}
      /></label>
      <label
        ><span class="small">${pictures.credit}</span
        ><input
          maxlength="200"
          .value=${credit}
          @change=${({ target }: Event) => set({ credit: (target as HTMLInputElement).value.trim().slice(0, 200) })}
      /></label>
      ${picture.kind === 'placed' ? this.#placing(picture) : null}
      <div class="row">
        <button class="text" @click=${() => removePicture(this.store, id)}>${pictures.remove}</button>
      </div>
    </li>`;
  }

  #served({ id, source, agreed }: ServedPictures) {
    const { pictures } = this.words;
    if (agreed) return null;
    return html`<p class="wash">${pictures.ask(source.host)}</p>
      ${source.hasKey ? html`<p class="small">${pictures.hasKey}</p>` : null}
      <div class="row"><button data-do="agree" @click=${() => agree(this.store, id)}>${pictures.agree(source.host)}</button></div>`;
  }

  #placing({ id }: PlacedPicture) {
    const { pictures } = this.words;
    const { tool } = this.state.pictures;
    const [corners, ties] = (['corners', 'tie'] as const).map((does) => tool?.id === id && tool.does === does);
    return html`<div class="row">
        <button data-do="corners" aria-pressed=${corners} @click=${() => moveCorners(this.store, id, !corners)}>
          ${corners ? pictures.cornersEnd : pictures.corners}
        </button>
        <button data-do="ties" aria-pressed=${ties} @click=${() => tiePoints(this.store, id, !ties)}>
          ${ties ? pictures.tiesEnd : pictures.ties}
        </button>
      </div>
      ${corners ? html`<p class="small">${pictures.cornersHint}</p>` : null}
      ${ties ? html`<mp-picture-ties .picture=${id}></mp-picture-ties>` : null}`;
  }

  #add() {
    const { pictures } = this.words;
    return html`<section>
      <h2>${pictures.addTitle}</h2>
      <label
        ><span>${pictures.file}</span
        ><input
          type="file"
          data-do="file"
          accept="image/*,.tif,.tiff,.pmtiles"
          @change=${({ target }: Event) => this.#file(target as HTMLInputElement)}
      /></label>
      <label><span class="small">${pictures.projection}</span><input data-in="projection" placeholder="EPSG:32617" /></label>
      ${
        this.waiting
          ? html`<div class="row"><button data-do="again" @click=${() => this.#read(this.waiting)}>${pictures.readAgain(this.waiting.name)}</button></div>`
          : null
      }
      <label
        ><span>${pictures.address}</span><input data-in="address" inputmode="url" autocomplete="off" spellcheck="false"
      /></label>
      <label><span class="small">${pictures.credit}</span><input data-in="credit" maxlength="200" /></label>
      <p class="small">${pictures.addressHint}</p>
      <div class="row"><button data-do="address" @click=${() => this.#address()}>${pictures.add}</button></div>
    </section>`;
  }

  #typed(name: string): HTMLInputElement | null {
    return this.renderRoot.querySelector(`[data-in=${name}]`);
  }

  #file(input: HTMLInputElement): void {
    const file = input.files?.[0];
    input.value = '';
    void this.#read(file ?? null);
  }

  async #read(file: File | null): Promise<void> {
    const map = this.view?.host?.map;
    if (!file || !map) return;
    const projection = this.#typed('projection')?.value.trim() || null;
    const asks = await addFile(this.store, { file, projection, spot: freeSpot(map) });
    this.waiting = asks ? file : null;
  }

  #address(): void {
    const [address, credit] = [this.#typed('address'), this.#typed('credit')];
    if (!address || !credit || !addAddress(this.store, address.value, credit.value)) return;
    address.value = '';
    credit.value = '';
  }
}
