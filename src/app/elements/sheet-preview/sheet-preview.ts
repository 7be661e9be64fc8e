/** The drawn sheets: one large, the others as a strip to choose from. */
import { html, type PropertyValues } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { isDrawn, showSheet } from '../../actions/paper-draw.ts';
import type { DrawnSheet } from '../../paper/paper-state.ts';
import { sheetPicture } from '../../paper/sheet-node.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { sheetPreviewStyle } from './sheet-preview-style.ts';
import { Thumbs } from './thumbs.ts';

@customElement('mp-sheet-preview')
export class SheetPreview extends StoreElement {
  static override styles = [shared, sheetPreviewStyle];

  @query('.sheet') private paper!: HTMLElement | null;
  @state() private large = false;
  readonly #thumbs = new Thumbs();
  #laid: DrawnSheet | null = null;

  protected override watches() {
    return ['paper', 'plan', 'words'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#thumbs.clear();
    this.#laid = null;
  }

  protected override render() {
    const { drawn, shown } = this.state.paper;
    const sheet = drawn?.sheets[shown];
    if (!drawn || !sheet) return html`<p class="small">${this.words.paper.drawing}</p>`;
    return html`${this.#head(sheet, shown, drawn.sheets.length)} ${this.#stage(sheet)}
      ${drawn.sheets.length > 1 ? this.#strip(drawn.sheets, shown) : null}`;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    const { drawn, shown } = this.state.paper;
    this.#lay(drawn?.sheets[shown] ?? null);
    this.#thumbs.keep(drawn?.sheets ?? []);
    this.#reveal();
  }

  /** Brings the chosen small picture into the strip's view; the page itself stays where it is. */
  #reveal(): void {
    const strip = this.renderRoot.querySelector<HTMLElement>('.strip');
    const chosen = strip?.querySelector<HTMLElement>('[aria-selected=true]');
    if (!strip || !chosen) return;
    const over = chosen.offsetLeft + chosen.offsetWidth - strip.clientWidth;
    if (strip.scrollLeft > chosen.offsetLeft || strip.scrollLeft < over)
      strip.scrollLeft = chosen.offsetLeft - (strip.clientWidth - chosen.offsetWidth) / 2;
  }

  /** The picture is a node of its own: it is changed only when another sheet is shown. */
  #lay(sheet: DrawnSheet | null): void {
    const { paper } = this;
    if (!paper || (sheet === this.#laid && paper.firstChild)) return;
    this.#laid = sheet;
    paper.replaceChildren(...(sheet ? [sheetPicture(sheet.svg, `${this.words.paper.preview}: ${sheet.what}`)] : []));
  }

  #head(sheet: DrawnSheet, shown: number, all: number) {
    const { paper } = this.words;
    return html`<div class="head">
      <p>
        <span class="name">${paper.ofAll(shown + 1, all)}</span>
        <span class="quiet">${sheet.what}</span>
      </p>
      <button ?disabled=${shown === 0} @click=${() => showSheet(this.store, shown - 1)}>${paper.previous}</button>
      <button ?disabled=${shown === all - 1} @click=${() => showSheet(this.store, shown + 1)}>${paper.next}</button>
      <button aria-pressed=${this.large} @click=${this.#enlarge}>${this.large ? paper.whole : paper.trueSize}</button>
    </div>`;
  }

  #stage(sheet: DrawnSheet) {
    const { large } = this;
    const size = large
      ? `width:${sheet.width}mm;height:${sheet.height}mm`
      : `--shape:${sheet.width / sheet.height};aspect-ratio:${sheet.width}/${sheet.height}`;
    return html`<div
      class="stage ${large ? 'large' : ''} ${isDrawn(this.state) ? '' : 'old'}"
      tabindex=${large ? 0 : -1}
      role="group"
      aria-label=${large ? this.words.paper.enlarged : this.words.paper.preview}
    >
      <div class="sheet" style=${size}></div>
    </div>`;
  }

  #strip(sheets: readonly DrawnSheet[], shown: number) {
    const { paper } = this.words;
    return html`<div
      class="strip"
      role="listbox"
      tabindex="0"
      aria-orientation="horizontal"
      aria-label=${paper.strip}
      aria-activedescendant=${`sheet-${shown}`}
      @keydown=${this.#keys}
    >
      ${sheets.map(
        (sheet, i) =>
          html`<div
            id=${`sheet-${i}`}
            role="option"
            aria-selected=${i === shown}
            @click=${() => showSheet(this.store, i)}
          >
            <img alt="" loading="lazy" decoding="async" style=${`aspect-ratio:${sheet.width}/${sheet.height}`} src=${this.#thumbs.of(sheet)} />
            ${i + 1} ${paper.short[sheet.name]}
          </div>`,
      )}
    </div>`;
  }

  readonly #enlarge = (): void => {
    this.large = !this.large;
  };

  #keys(event: KeyboardEvent): void {
    const { drawn, shown } = this.state.paper;
    const last = (drawn?.sheets.length ?? 1) - 1;
    const to = { ArrowLeft: shown - 1, ArrowRight: shown + 1, Home: 0, End: last }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    showSheet(this.store, to);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-sheet-preview': SheetPreview;
  }
}
