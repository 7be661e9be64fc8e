/** Choosing what to draw: every kind as a word with its swatch, in three groups. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { shapeOf } from '../../../site/kinds.ts';
import type { AreaKind, Kind } from '../../../site/types.ts';
import { takeTool } from '../../actions/land-draw.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { drawSwatch, swatchSize } from '../key/swatch.ts';
import { landStyle } from '../place-land/land-style.ts';
import { type Group, kindGroups, pictureOf } from './kind-groups.ts';

@customElement('mp-land-kinds')
export class LandKinds extends StoreElement {
  static override styles = [
    shared,
    landStyle,
    css`
      .kinds {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr));
        gap: 6px;
        margin-top: 6px;
      }
      .kinds button {
        display: flex;
        align-items: center;
        gap: 8px;
        padding: 6px 8px;
        text-align: left;
        line-height: 1.15;
        border-color: var(--line);
      }
      canvas {
        flex: none;
      }
    `,
  ];

  /** Whether the next area is a circle. */
  @state() private round = false;

  protected override watches() {
    return ['theme', 'words'] as const;
  }

  protected override render() {
    const { groups } = this.words.land;
    return html`${(Object.keys(groups) as Group[]).map((group) => this.#group(group))}`;
  }

  #group(group: Group) {
    const { land } = this.words;
    return html`<section aria-labelledby=${`group-${group}`}>
      <h2 id=${`group-${group}`}>${land.groups[group]}</h2>
      <p class="small">${land.groupHints[group]}</p>
      <div class="kinds">${kindGroups[group].map((kind) => this.#kind(kind))}</div>
      ${
        group === 'ground'
          ? html`<label class="switch" data-round
              ><input
                type="checkbox"
                .checked=${this.round}
                @change=${({ target }: Event) => (this.round = (target as HTMLInputElement).checked)}
              />${land.circle}</label
            >${this.round ? html`<p class="small" role="status">${land.circleHint}</p>` : null}`
          : null
      }
    </section>`;
  }

  #kind(kind: Kind) {
    const { width, height } = swatchSize;
    return html`<button data-kind=${kind} @click=${() => this.#start(kind)}>
      <canvas data-kind=${kind} style=${`width:${width}px;height:${height}px`} aria-hidden="true"></canvas>
      ${this.words.kinds[kind]}
    </button>`;
  }

  #start(kind: Kind): void {
    if (this.round && shapeOf(kind) === 'area') takeTool(this.store, { does: 'circle', kind: kind as AreaKind });
    else takeTool(this.store, { does: 'draw', kind });
  }

  protected override updated(): void {
    for (const canvas of this.renderRoot.querySelectorAll<HTMLCanvasElement>('canvas')) {
      const picture = pictureOf(canvas.dataset.kind as Kind);
      if (picture) drawSwatch(canvas, picture.subject, picture.row, this.state.theme);
    }
  }
}
