/** Corners of the chosen thing without the map: step from one to the next, move it with the arrow keys, delete it; or move the thing whole. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { positionAt } from '../../../edits/chains.ts';
import { formatDecimal } from '../../../exchange/coordinate-format.ts';
import type { LonLat, SiteFeature } from '../../../site/types.ts';
import { cornersOf, nudge, stepCorner } from '../../actions/land-corner.ts';
import { deleteCorner } from '../../actions/land-tools.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { landStyle } from '../place-land/land-style.ts';

/** Metres a key moves a corner (look: arrow keys move 1 m, with Shift 0.1 m). */
const steps = { coarse: 1, fine: 0.1 };
const ways: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
};

@customElement('mp-land-corner')
export class LandCorner extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .move {
        display: block;
        margin-top: 8px;
        padding: 10px 12px;
        min-height: 44px;
        border: var(--rule) dashed var(--line);
        border-radius: 5px;
      }
    `,
  ];
  @property({ attribute: false }) feature!: SiteFeature;

  protected override watches() {
    return ['words', 'land', 'site'] as const;
  }

  protected override render() {
    const { feature } = this;
    if (!feature?.geometry) return null;
    const { land } = this.words;
    const all = cornersOf(feature.geometry);
    const { corner } = this.state.land;
    const at = all.findIndex((c) => c.chain === corner?.chain && c.corner === corner.corner);
    const isPoint = feature.geometry.type === 'Point';
    const place = isPoint
      ? feature.geometry.coordinates
      : corner && at >= 0
        ? positionAt(feature.geometry, corner)
        : null;
    return html`<section>
      ${isPoint ? null : this.#stepper(at, all.length)}
      <span
        class="move"
        tabindex="0"
        role="group"
        aria-label=${place ? land.nudgeLabel : land.moveWholeLabel}
        data-move=${place ? 'corner' : 'whole'}
        @keydown=${this.#keys}
        >${place ? formatDecimal(place as LonLat) : land.moveWhole}<span class="why"
          >${place ? land.nudgeHint : land.moveWholeHint}</span
        ></span
      >
      <div class="two" style="margin-top:8px">
        ${(['north', 'south', 'west', 'east'] as const).map(
          (way) => html`<button data-way=${way} @click=${() => this.#nudge(way)}>${land.wayWords[way]}</button>`,
        )}
      </div>
    </section>`;
  }

  #stepper(at: number, all: number) {
    const { land } = this.words;
    return html`<h2>${land.corners}</h2>
      <p role="status">${at >= 0 ? land.cornerOf(at + 1, all) : land.noCorner}</p>
      <div class="row">
        <button data-step="-1" @click=${() => stepCorner(this.store, -1)}>${land.before}</button>
        <button data-step="1" @click=${() => stepCorner(this.store, 1)}>${land.next}</button>
        <button data-delete-corner aria-disabled=${at < 0} @click=${() => at >= 0 && deleteCorner(this.store)}>
          ${land.deleteCorner}${at < 0 ? html`<span class="why">${land.whyNot.noCorner}</span>` : null}
        </button>
      </div>`;
  }

  #nudge(way: 'north' | 'south' | 'west' | 'east'): void {
    const [east, north] = { north: [0, 1], south: [0, -1], west: [-1, 0], east: [1, 0] }[way] as [number, number];
    nudge(this.store, east * steps.coarse, north * steps.coarse);
  }

  #keys(event: KeyboardEvent): void {
    const way = ways[event.key];
    if (!way) return;
    event.preventDefault();
    const metres = event.shiftKey ? steps.fine : steps.coarse;
    nudge(this.store, way[0] * metres, way[1] * metres);
  }
}
