/** Everything drawn, as a list: the second way to every thing beside the map. One tab stop, arrows from row to row. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { nameOf } from '../../../site/properties.ts';
import type { SiteFeature } from '../../../site/types.ts';
import { choose } from '../../actions/land-state.ts';
import { capital } from '../../capital.ts';
import { area, length } from '../../format.ts';
import { measureOf } from '../../map/drawing/measure.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { kindGroups } from '../land-kinds/kind-groups.ts';
import { landStyle } from '../place-land/land-style.ts';

/** Rows drawn at once: more are found by typing (ours: a list of hundreds is no way to anything). */
const most = 120;
const order = [...kindGroups.ground, ...kindGroups.edges, ...kindGroups.things];

@customElement('mp-land-list')
export class LandList extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      ul button {
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 2px 10px;
        width: 100%;
        padding: 6px 4px;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
        line-height: 1.2;
      }
      .name {
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      .figure {
        text-align: right;
      }
    `,
  ];

  @state() private typed = '';
  @state() private at = 0;

  protected override watches() {
    return ['site', 'issues', 'words', 'units'] as const;
  }

  protected override render() {
    const { land } = this.words;
    const all = this.#rows();
    const rows = all.slice(0, most);
    const at = Math.min(this.at, rows.length - 1);
    return html`${
      (this.state.site?.features.length ?? 0) > 12
        ? html`<label
            ><span>${land.find}</span
            ><input type="search" .value=${this.typed} @input=${({ target }: Event) => (this.typed = (target as HTMLInputElement).value)}
          /></label>`
        : null
    }
      <ul aria-label=${land.listLabel} @keydown=${this.#keys}>
        ${rows.map((feature, i) => html`<li>${this.#row(feature, i === at, i)}</li>`)}
      </ul>
      ${rows.length === 0 ? html`<p>${land.none}</p>` : null}
      ${all.length > most ? html`<p class="small">${land.more(all.length - most)}</p>` : null}`;
  }

  #rows(): SiteFeature[] {
    const word = this.typed.trim().toLowerCase();
    const { kinds } = this.words;
    return (this.state.site?.features ?? [])
      .filter(
        (f) => word === '' || `${kinds[f.kind] ?? f.kind} ${nameOf(f) ?? ''} ${f.id}`.toLowerCase().includes(word),
      )
      .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
  }

  #row(feature: SiteFeature, stop: boolean, i: number) {
    const { land, kinds } = this.words;
    const trouble = this.state.issues.some((issue) => issue.feature === feature.id && issue.severity !== 'note');
    const name = nameOf(feature);
    return html`<button
      data-feature=${feature.id}
      tabindex=${stop ? 0 : -1}
      @focus=${() => (this.at = i)}
      @click=${() => choose(this.store, feature.id)}
    >
      <span class="name">${name ?? capital(kinds[feature.kind] ?? feature.kind)}</span><span class="figure">${this.#figure(feature)}</span>
      ${name || trouble ? html`<span class="small">${name ? kinds[feature.kind] : ''}</span>` : null}
      ${trouble ? html`<span class="small weak">${land.trouble}</span>` : null}
    </button>`;
  }

  #figure(feature: SiteFeature): string {
    const { units } = this.state;
    const measure = measureOf(feature);
    if (!measure) return this.words.land.notPlaced;
    if (measure.area !== null) return area(measure.area, units);
    return measure.length === null ? '' : length(measure.length, units);
  }

  #keys(event: KeyboardEvent): void {
    const rows = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-feature]')];
    const by = { ArrowDown: 1, ArrowUp: -1, Home: -rows.length, End: rows.length }[event.key];
    if (!by) return;
    event.preventDefault();
    rows[Math.max(0, Math.min(rows.length - 1, this.at + by))]?.focus();
  }
}
