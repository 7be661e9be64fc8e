/** Bringing in a file: chosen or dropped, looked at on the map with what becomes what, then taken as one step that can be undone. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Mapping } from '../../../exchange/mapping.ts';
import { keepMapping, readForImport, type Settled, takeImport } from '../../actions/land-import.ts';
import { lookAt, openPage, setLand } from '../../actions/land-state.ts';
import type { ImportAnswer, Notes } from '../../engine/calls/read-import.ts';
import { wasAborted } from '../../engine/client.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';
import './land-mapping.ts';

@customElement('mp-land-import')
export class LandImport extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .drop {
        padding: 14px;
        border: var(--rule) dashed var(--line);
        border-radius: 5px;
        margin-top: 10px;
      }
      .drop.over {
        background: var(--sky-wash);
      }
      li {
        padding: 4px 0;
        border-bottom: 1px solid var(--ring);
        overflow-wrap: anywhere;
      }
    `,
  ];

  @state() private file: File | null = null;
  @state() private answer: ImportAnswer | null = null;
  @state() private doing: string | null = null;
  @state() private trouble: string | null = null;
  @state() private over = false;
  #settled: Settled = {};
  #stop: AbortController | null = null;

  protected override watches() {
    return ['words', 'land'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.abort();
    if (this.state.land.preview.length > 0) setLand(this.store, { preview: [] });
  }

  protected override render() {
    const { bring } = this.words.land;
    return html`<p>${bring.hint}</p>
      <div class="drop ${this.over ? 'over' : ''}" @dragover=${this.#dragOver} @dragleave=${() => (this.over = false)} @drop=${this.#drop}>
        <label style="margin-top:0"
          ><span>${bring.choose}</span
          ><input type="file" data-do="file" accept=".geojson,.json,.gpx,.kml,.kmz,.csv,.txt,.zip" @change=${this.#choose}
        /></label>
        <p class="small">${bring.orDrop}</p>
      </div>
      <div role="status">${this.doing ? html`<p data-doing>${this.doing}</p>` : null}</div>
      ${this.doing ? html`<p><button @click=${() => this.#stop?.abort()}>${bring.stop}</button></p>` : null}
      ${this.trouble ? html`<p class="wash" role="alert">${this.trouble}</p>` : null} ${this.answer ? this.#look(this.answer) : null}`;
  }

  #look({ account, issues, ask, count, preview, dropped, repaired, mapping, attributes }: ImportAnswer) {
    const { bring } = this.words.land;
    const { trouble } = this.state.land;
    return html`<section>
      <h2>${bring.found(this.file?.name ?? '')}</h2>
      <p role="status" data-report>${account}</p>
      ${issues.map((issue) => html`<p class=${issue.severity === 'error' || issue.severity === 'warning' ? 'wash' : ''}>${issue.sentence} ${issue.fix}</p>`)}
      ${ask ? this.#ask(ask) : null} ${preview.length < count ? html`<p class="small">${bring.shown(preview.length, count)}</p>` : null}
      ${trouble ? html`<p class="wash" role="alert">${trouble.sentence}</p>` : null}
      ${
        count > 0
          ? html`<p style="margin-top:10px">
              <button class="filled wide" data-do="take" ?disabled=${this.doing !== null} @click=${() => this.#take()}>${bring.take(count)}</button>
            </p>`
          : null
      }
      ${
        attributes.length > 0
          ? html`<mp-land-mapping
              .mapping=${mapping}
              .summaries=${attributes}
              @mp-mapping=${(event: CustomEvent<Mapping>) => this.#map(event.detail)}
            ></mp-land-mapping>`
          : null
      }
      ${this.#notes(bring.dropped, dropped)} ${this.#notes(bring.repaired, repaired)}
    </section>`;
  }

  #ask(ask: NonNullable<ImportAnswer['ask']>) {
    const { bring } = this.words.land;
    if (ask.what === 'projection')
      return html`<label><span>${ask.sentence}</span><input data-projection placeholder="EPSG:32617" /></label>
        <p class="small">${ask.hint}</p>
        <p><button @click=${() => this.#settle({ projection: this.#value('[data-projection]') })}>${bring.readAgain}</button></p>`;
    const select = (name: string, word: string) =>
      html`<label
        ><span>${word}</span
        ><select data-column=${name}>
          ${ask.columns.map((column) => html`<option>${column}</option>`)}
        </select></label
      >`;
    return html`<p>${ask.sentence}</p>
      <div class="two">${select('lat', bring.latColumn)} ${select('lon', bring.lonColumn)}</div>
      <p>
        <button @click=${() => this.#settle({ columns: { lat: this.#value('[data-column=lat]'), lon: this.#value('[data-column=lon]') } })}>
          ${bring.readAgain}
        </button>
      </p>`;
  }

  #notes(title: (n: number) => string, { count, first }: Notes) {
    if (count === 0) return null;
    const more = count - first.length;
    return html`<details>
      <summary>${title(count)}</summary>
      <ul class="small">
        ${first.map(({ what, why }) => html`<li>${what}: ${why}</li>`)}
        ${more > 0 ? html`<li>${this.words.land.bring.moreNotes(more)}</li>` : null}
      </ul>
    </details>`;
  }

  #choose({ target }: Event): void {
    const chosen = (target as HTMLInputElement).files?.[0];
    if (chosen) void this.#begin(chosen);
  }

  #dragOver(event: DragEvent): void {
    event.preventDefault();
    this.over = true;
  }

  #drop(event: DragEvent): void {
    event.preventDefault();
    this.over = false;
    const dropped = event.dataTransfer?.files[0];
    if (dropped) void this.begin(dropped);
  }

  /** Starts with a file that was chosen, or dropped anywhere on the window. */
  async begin(file: File): Promise<void> {
    await this.#begin(file);
  }

  async #begin(file: File): Promise<void> {
    this.file = file;
    this.#settled = {};
    await this.#read(null);
  }

  async #settle(settled: Settled): Promise<void> {
    this.#settled = { ...this.#settled, ...settled };
    await this.#read(null);
  }

  async #map(mapping: Mapping): Promise<void> {
    await this.#read(mapping);
    if (this.answer) keepMapping(this.answer);
  }

  async #read(mapping: Mapping | null): Promise<void> {
    if (!this.file) return;
    this.#stop?.abort();
    const stop = new AbortController();
    this.#stop = stop;
    this.trouble = null;
    this.doing = this.words.land.bring.reading;
    try {
      const tell = (done: number | null, what: string) => {
        if (this.#stop === stop) this.doing = this.words.land.bring.step(what, done);
      };
      this.answer = await readForImport(this.store, this.file, this.#settled, mapping, tell, stop.signal);
      this.#show(mapping === null);
    } catch (error) {
      this.answer = null;
      if (!wasAborted(error))
        this.trouble = this.words.land.bring.failed(error instanceof Error ? error.message : String(error));
    } finally {
      if (this.#stop === stop) this.doing = null;
    }
  }

  #show(first: boolean): void {
    const { preview = [], box = null } = this.answer ?? {};
    setLand(this.store, { preview, trouble: null });
    if (first && box)
      lookAt(this.store, {
        type: 'LineString',
        coordinates: [
          [box[0], box[1]],
          [box[2], box[3]],
        ],
      });
  }

  async #take(): Promise<void> {
    const { answer, file } = this;
    if (!answer || !file) return;
    this.doing = this.words.land.bring.taking;
    const done = await takeImport(this.store, answer, file.name);
    this.doing = null;
    if (done) openPage(this.store, 'list');
  }

  #value(selector: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(selector)?.value ?? '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-land-import': LandImport;
  }
}
