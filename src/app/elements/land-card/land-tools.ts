/** Buttons that change the shape of the chosen thing; one that cannot be used says why under its word. */
import { html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { defaultHedgeWidth } from '../../../site/defaults.ts';
import { type AreaKind, areaKinds, type SiteFeature } from '../../../site/types.ts';
import { setLand } from '../../actions/land-state.ts';
import { runTool, type ToolName, type ToolRow, toolsFor } from '../../actions/land-tools.ts';
import { shownLength, typedLength } from '../../length-input.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

/** What a strip along a line most likely is. */
const stripKinds: Readonly<Record<string, AreaKind>> = {
  hedge: 'brush',
  stream: 'water',
  road: 'paved',
  path: 'short-grass',
};

@customElement('mp-land-tools')
export class LandTools extends StoreElement {
  static override styles = [shared, landStyle];
  @property({ attribute: false }) feature!: SiteFeature;

  /** Which tool's question is open. */
  @state() private asks: ToolName | null = null;

  protected override watches() {
    return ['words', 'units', 'site', 'land'] as const;
  }

  protected override render() {
    const { site, land } = this.state;
    const { feature, words } = this;
    if (!site || !feature) return null;
    const rows = toolsFor(site, feature, land.corner?.chain ?? null, words);
    if (rows.length === 0) return null;
    return html`<section>
      <h2>${words.land.toolsTitle}</h2>
      <div class="two">${rows.map((row) => this.#button(row))}</div>
      ${this.asks === 'simplify' ? this.#askSimplify() : null} ${this.asks === 'buffer' ? this.#askBuffer() : null}
    </section>`;
  }

  #button({ name, why }: ToolRow) {
    return html`<button
      data-tool=${name}
      aria-disabled=${why !== null}
      aria-expanded=${name === 'simplify' || name === 'buffer' ? String(this.asks === name) : 'false'}
      @click=${() => this.#press(name, why)}
    >
      ${this.words.land.tools[name]}${why ? html`<span class="why">${why}</span>` : null}
    </button>`;
  }

  #press(name: ToolName, why: string | null): void {
    if (why) setLand(this.store, { trouble: { sentence: why, at: null } });
    else if (name === 'simplify' || name === 'buffer') this.asks = this.asks === name ? null : name;
    else runTool(this.store, name);
  }

  #askSimplify() {
    const { land } = this.words;
    return html`<label
        ><span>${land.simplifyBy}</span>${this.#amount(1)}</label
      ><p><button data-do="simplify" @click=${() => this.#run('simplify')}>${land.tools.simplify}</button></p>`;
  }

  #askBuffer() {
    const { land, kinds } = this.words;
    const most = stripKinds[this.feature.kind] ?? 'brush';
    const width =
      typeof this.feature.properties.width === 'number' ? this.feature.properties.width : defaultHedgeWidth.value;
    return html`<label><span>${land.stripWidth}</span>${this.#amount(width)}</label>
      <label
        ><span>${land.stripKind}</span
        ><select data-strip>
          ${areaKinds.map((kind) => html`<option value=${kind} ?selected=${kind === most}>${kinds[kind]}</option>`)}
        </select></label
      >
      <p><button data-do="buffer" @click=${() => this.#run('buffer')}>${land.tools.buffer}</button></p>`;
  }

  #amount(metres: number) {
    const { units } = this.state;
    return html`<span class="unit"><input data-amount inputmode="decimal" .value=${String(shownLength(metres, units))} />${this.words.land.unit[units]}</span>`;
  }

  #run(name: 'simplify' | 'buffer'): void {
    const text = this.renderRoot.querySelector<HTMLInputElement>('[data-amount]')?.value ?? '';
    const metres = typedLength(text, this.state.units);
    if (metres === null || !(metres > 0)) {
      setLand(this.store, { trouble: { sentence: this.words.land.numbers.needLength, at: null } });
      return;
    }
    const kind = this.renderRoot.querySelector<HTMLSelectElement>('[data-strip]')?.value as AreaKind | undefined;
    this.asks = null;
    runTool(this.store, name, metres, kind);
  }
}
