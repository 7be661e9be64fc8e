/** The shape in progress: what to do next, its lengths and area, what is wrong with it. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shapeOf } from '../../../site/kinds.ts';
import type { Kind, SiteFeature } from '../../../site/types.ts';
import { pickOther } from '../../actions/land-tools.ts';
import { capital } from '../../capital.ts';
import { area, length } from '../../format.ts';
import type { Tool } from '../../land-state.ts';
import { crossingShown, draws, metresBetween, progressMeasures } from '../../map/drawing/sketch.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../land-numbers/land-numbers.ts';
import '../land-switches/land-switches.ts';
import { landStyle } from '../place-land/land-style.ts';

@customElement('mp-land-draft')
export class LandDraft extends StoreElement {
  static override styles = [shared, landStyle];

  protected override watches() {
    return ['land', 'words', 'units', 'site'] as const;
  }

  protected override render() {
    const { tool } = this.state.land;
    if (!tool) return null;
    const { land } = this.words;
    return html`<h1>${this.#title(tool)}</h1>
      <p>${this.#how(tool)}</p>
      ${this.#figures(tool)} ${this.#trouble(tool)}
      ${tool.does === 'merge' || tool.does === 'cut-out' ? this.#others(tool.id) : null}
      ${
        draws(tool)
          ? html`<mp-land-switches></mp-land-switches>
              <p class="small">${land.keysHint}</p>
              <details>
                <summary>${land.pages.numbers}</summary>
                <mp-land-numbers></mp-land-numbers>
              </details>`
          : null
      }`;
  }

  #title(tool: Tool): string {
    const { land, kinds } = this.words;
    if (tool.does === 'draw') return capital(kinds[tool.kind] ?? tool.kind);
    return tool.does === 'circle' ? land.round(kinds[tool.kind] ?? tool.kind) : land.tools[tool.does];
  }

  #how(tool: Tool): string {
    const { how } = this.words.land;
    if (tool.does === 'draw' || tool.does === 'circle') return how[draws(tool) ?? 'point'];
    return how[tool.does];
  }

  #figures(tool: Tool) {
    const { corners } = this.state.land;
    const { land } = this.words;
    const { units } = this.state;
    const how = draws(tool);
    if (!how || how === 'point') return null;
    const { length: all, area: ground } = progressMeasures(tool, corners);
    const [a, b] = corners.slice(-2);
    const rows: [string, string][] = [];
    if (a && b && how !== 'round') rows.push([land.lastEdge, length(metresBetween(a, b), units)]);
    rows.push([how === 'round' ? land.radius : land.length, length(all, units)]);
    if (ground !== null) rows.push([land.area, area(ground, units)]);
    const put = a && b && how !== 'round' ? metresBetween(a, b) : null;
    return html`<p class="small" role="status">
        ${corners.length === 0 ? land.cornersPut(0) : land.cornerPut(corners.length, put, units)}
      </p>
      <dl class="figures">
        ${rows.map(([word, figure]) => html`<div><dt>${word}</dt><dd class="number">${figure}</dd></div>`)}
      </dl>`;
  }

  #trouble(tool: Tool) {
    const { trouble, corners } = this.state.land;
    const crossing = draws(tool) === 'outline' && crossingShown(corners) ? this.words.land.crossesSoon : null;
    const sentence = trouble?.sentence ?? crossing;
    return sentence ? html`<p class="wash" role="alert">${sentence}</p>` : null;
  }

  /** The list is the second way to the other area. */
  #others(id: string) {
    const others = (this.state.site?.features ?? []).filter(
      (f) => f.id !== id && shapeOf(f.kind) === 'area' && f.geometry,
    );
    return html`<ul>
      ${others.map((other) => html`<li><button class="wide" data-other=${other.id} @click=${() => pickOther(this.store, other.id)}>${this.#label(other)}</button></li>`)}
    </ul>`;
  }

  #label(feature: SiteFeature): string {
    const name = typeof feature.properties.name === 'string' ? feature.properties.name : feature.id;
    return `${this.words.kinds[feature.kind as Kind] ?? feature.kind}: ${name}`;
  }
}
