/** The small curve in a row of the card: where this post lies between bad and good. */
import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Curve } from '../../../birds/guide.ts';
import { curveShape, curveSize } from './curve-shape.ts';

@customElement('mp-curve-spark')
export class CurveSpark extends LitElement {
  static override styles = css`
    svg {
      display: block;
    }
    .curve {
      fill: none;
      stroke: var(--line);
      stroke-width: 1.5;
      stroke-linejoin: round;
    }
    .base {
      stroke: var(--ring);
    }
    .drop {
      stroke: var(--sky);
      stroke-dasharray: 2 2;
    }
    .dot {
      fill: var(--sky);
      stroke: var(--paper);
    }
    .weak .drop {
      stroke: var(--rust);
    }
    .weak .dot {
      fill: var(--rust);
    }
  `;

  @property({ attribute: false }) curve: Curve | null = null;
  @property({ type: Number }) raw = 0;
  /** 0–1 */
  @property({ type: Number }) score = 0;
  @property({ type: Boolean }) weak = false;

  protected override render() {
    const { width, height } = curveSize;
    if (!this.curve) return null;
    const { path, dot } = curveShape(this.curve, this.raw, this.score);
    return html`<svg width=${width} height=${height} class=${this.weak ? 'weak' : ''} aria-hidden="true">
      <path class="base" d=${`M0 ${height - 1.5} H${width}`}></path>
      <path class="curve" d=${path}></path>
      ${svg`<path class="drop" d=${`M${dot.x} ${dot.y} V${height - 2}`}></path>
        <circle class="dot" cx=${dot.x} cy=${dot.y} r="3.6"></circle>`}
    </svg>`;
  }
}
