/** Control points of a picture: pressed in it and on the map, or typed; with what is left at each, in meters on the ground. */
import { css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { isFitted } from '../../../exchange/control-points.ts';
import { readPosition } from '../../../exchange/coordinates.ts';
import { bytesOf } from '../../actions/picture-add.ts';
import { addTie, fitOf, placedPicture, pressPixel, removeTie, setFitting } from '../../actions/picture-place.ts';
import { setPictures } from '../../actions/picture-state.ts';
import type { Fitting, PlacedPicture } from '../../picture-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { panelStyle } from '../picture-panel/panel-style.ts';

const fittings: readonly Fitting[] = ['similarity', 'affine'];

/** Residuals are small: always in metric with one decimal, and in feet beside it for who works in feet. */
const off = (metres: number, us: boolean) =>
  us ? `${metres.toFixed(2)} m (${(metres / 0.3048).toFixed(1)} ft)` : `${metres.toFixed(2)} m`;

@customElement('mp-picture-ties')
export class PictureTies extends StoreElement {
  static override styles = [
    shared,
    panelStyle,
    css`
      .sheet {
        position: relative;
        margin-top: 8px;
        border: 1px solid var(--line);
        cursor: crosshair;
      }
      img {
        display: block;
        width: 100%;
      }
      .sheet i {
        position: absolute;
        translate: -50% -50%;
        min-width: 22px;
        padding: 1px 4px;
        border: 2px solid var(--ink);
        border-radius: 12px;
        background: var(--paper);
        font: 700 0.8125rem / 1.2 var(--serif);
        text-align: center;
        pointer-events: none;
      }
      li {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
      }
    `,
  ];

  @property() picture = '';
  @state() private url: string | null = null;
  #of = '';

  protected override watches() {
    return ['pictures', 'words', 'units'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.url) URL.revokeObjectURL(this.url);
    this.url = null;
    this.#of = '';
  }

  protected override updated(): void {
    if (this.#of === this.picture) return;
    this.#of = this.picture;
    void bytesOf(this.store, this.picture).then((bytes) => {
      if (bytes && this.isConnected) this.url = URL.createObjectURL(bytes);
    });
  }

  protected override render() {
    const { pictures } = this.words;
    const picture = placedPicture(this.state, this.picture);
    const { tool } = this.state.pictures;
    if (!picture || tool?.does !== 'tie') return null;
    return html`<p class="small">${pictures.tiesHint}</p>
      ${this.#sheet(picture, tool.pixel)}
      <p role="status">${tool.pixel ? html`<b>${pictures.tieNow}</b>` : null}</p>
      ${this.#typing(picture)} ${this.#fitted(picture)}`;
  }

  #sheet(picture: PlacedPicture, pixel: readonly [number, number] | null) {
    const spot = ([x, y]: readonly [number, number]) =>
      `left:${(x / picture.width) * 100}%;top:${(y / picture.height) * 100}%`;
    return html`<div class="sheet">
      ${
        this.url
          ? html`<img src=${this.url} alt=${this.words.pictures.tieImage} @click=${(event: MouseEvent) => this.#press(event, picture)} />`
          : null
      }
      ${picture.ties.map((tie, i) => html`<i style=${spot(tie.pixel)} aria-hidden="true">${i + 1}</i>`)}
      ${pixel ? html`<i style=${spot(pixel)} aria-hidden="true">?</i>` : null}
    </div>`;
  }

  #press(event: MouseEvent, { id, width, height }: PlacedPicture): void {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * width;
    const y = ((event.clientY - box.top) / box.height) * height;
    pressPixel(this.store, id, [Math.round(x * 10) / 10, Math.round(y * 10) / 10]);
  }

  #typing({ id }: PlacedPicture) {
    const { pictures } = this.words;
    return html`<div class="row">
        <label><span class="small">${pictures.tieX}</span><input data-in="x" inputmode="decimal" /></label>
        <label><span class="small">${pictures.tieY}</span><input data-in="y" inputmode="decimal" /></label>
      </div>
      <label><span class="small">${pictures.tiePlace}</span><input data-in="place" /></label>
      <div class="row"><button data-do="tie" @click=${() => this.#type(id)}>${pictures.tieAdd}</button></div>`;
  }

  #type(id: string): void {
    const inputs = ['x', 'y', 'place'].map(
      (name) => this.renderRoot.querySelector<HTMLInputElement>(`[data-in=${name}]`)!,
    );
    const [x, y] = inputs.slice(0, 2).map((one) => (one.value.trim() === '' ? Number.NaN : Number(one.value)));
    const { position } = readPosition(inputs[2]!.value);
    if (!Number.isFinite(x) || !Number.isFinite(y) || !position) {
      setPictures(this.store, { trouble: this.words.pictures.tieBad });
      return;
    }
    setPictures(this.store, { trouble: null });
    addTie(this.store, id, { pixel: [x!, y!], ground: position });
    for (const input of inputs) input.value = '';
  }

  #fitted({ id, ties, fitting }: PlacedPicture) {
    const { pictures } = this.words;
    const us = this.state.units === 'us';
    const fit = fitOf(ties, fitting);
    const good = fit && isFitted(fit) ? fit : null;
    return html`<ul>
        ${ties.map(
          (_, i) => html`<li>
            <span data-off>${pictures.tieRow(i + 1, good ? off(good.residuals[i] ?? 0, us) : null)}</span>
            <button class="text" aria-label=${pictures.tieRemove(i + 1)} @click=${() => removeTie(this.store, id, i)}>
              ${pictures.remove}
            </button>
          </li>`,
        )}
      </ul>
      ${fit && !good ? html`<p class="wash">${(fit as { reason: string }).reason}</p>` : null}
      ${good ? html`<p data-fit>${pictures.fit(off(good.rms, us), ties.length)}</p>` : null}
      ${good && fitting === 'affine' && ties.length === 3 ? html`<p class="small">${pictures.threeFit}</p>` : null}
      <div class="row" role="group" aria-label=${pictures.fitting}>
        ${fittings.map(
          (one) =>
            html`<button aria-pressed=${one === fitting} @click=${() => setFitting(this.store, id, one)}>
              ${pictures[one]}
            </button>`,
        )}
      </div>`;
  }
}
