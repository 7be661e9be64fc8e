/** The afternoon seen from the box: woods as they stand up, the sun of the season, noon to 17 h thick, dashed where shaded. */
import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SkyView } from '../../engine/sky-view.ts';
import { type StripShape, stripShape, stripSize } from './strip-shape.ts';

@customElement('mp-sun-strip')
export class SunStrip extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      width: 100%;
      height: auto;
    }
    .sky {
      fill: var(--sky-wash);
    }
    .woods {
      fill: var(--strip-woods);
    }
    .hot {
      fill: var(--rust-wash);
      opacity: 0.85;
    }
    .thin,
    .thick,
    .shaded {
      fill: none;
      stroke-linecap: butt;
    }
    .thin {
      stroke: var(--ink);
      stroke-width: 1;
    }
    .thick {
      stroke: var(--rust);
      stroke-width: 2.4;
    }
    .shaded {
      stroke: var(--strip-dash);
      stroke-width: 1.6;
      stroke-dasharray: 3.5 3;
    }
    .ground {
      stroke: var(--ink);
      stroke-width: 1.5;
    }
    text {
      font: 600 11.5px var(--sans);
      fill: var(--ink);
      text-anchor: middle;
    }
    .hour {
      font: 700 11.5px var(--serif);
      fill: var(--rust);
      paint-order: stroke;
      stroke: var(--sky-wash);
      stroke-width: 3px;
    }
    .month {
      font: italic 400 11.5px var(--serif);
      paint-order: stroke;
      stroke: var(--sky-wash);
      stroke-width: 3.5px;
    }
  `;

  @property({ attribute: false }) view: SkyView | null = null;
  @property() label = '';

  protected override render() {
    const { width, height } = stripSize;
    const shape = this.view ? stripShape(this.view) : null;
    return html`<svg viewBox=${`0 -4 ${width} ${height + 22}`} role="img" aria-label=${this.label}>
      <rect class="sky" y="-4" width=${width} height=${height + 4}></rect>
      ${shape ? this.#drawing(shape) : null}
      <path class="ground" d=${`M0 ${height} H${width}`}></path>
      ${shape?.winds.map(({ word, x }) => svg`<text x=${Math.max(6, Math.min(width - 6, x))} y=${height + 14}>${word}</text>`)}
    </svg>`;
  }

  #drawing(shape: StripShape) {
    return svg`
      <path class="hot" d=${shape.hot}></path>
      ${shape.lines.map((line) => svg`<path class="thin" d=${line.thin}></path>`)}
      ${shape.lines.map((line) => svg`<path class="thick" d=${line.thick}></path>`)}
      <path class="woods" d=${shape.woods}></path>
      ${shape.lines.map((line) => svg`<path class="shaded" d=${line.shaded}></path>`)}
      ${shape.hours.map(({ hour, x, y }) => svg`<text class="hour" x=${x} y=${Math.max(8, y - 5)}>${hour}</text>`)}
      ${shape.lines.map(({ label, date }) => label && svg`<text class="month" x=${label.x} y=${label.y + 4}>${monthOf(date)}</text>`)}`;
  }
}

/** "June" of an ISO date. */
function monthOf(date: string): string {
  return new Intl.DateTimeFormat('en', { month: 'long', timeZone: 'UTC' }).format(new Date(`${date}T12:00:00Z`));
}
