/** Where the hole looks: the good band as a wedge, the bearing in use as a beak, storms as three arrows, the perch as a T. */
import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { bandPath, onCircle } from './rose-shape.ts';

const ticks = Array.from({ length: 16 }, (_, i) => i * 22.5);
const letters = [
  ['N', 0],
  ['E', 90],
  ['S', 180],
  ['W', 270],
] as const;

@customElement('mp-facing-rose')
export class FacingRose extends LitElement {
  static override styles = css`
    svg {
      display: block;
      overflow: visible;
    }
    .rim {
      fill: var(--raised);
      stroke: var(--ink);
      stroke-width: 1.4;
    }
    .tick,
    .perch {
      stroke: var(--ink);
      fill: none;
    }
    .perch {
      stroke-width: 1.8;
    }
    .band {
      fill: var(--sky-wash);
      stroke: var(--sky);
      stroke-width: 1.3;
    }
    .beak {
      fill: var(--ink);
    }
    .post {
      fill: var(--raised);
      stroke: var(--ink);
      stroke-width: 1.4;
    }
    .storm {
      stroke: var(--rust);
      stroke-width: 1.5;
      fill: none;
    }
    text {
      font: 700 13px var(--serif);
      fill: var(--ink);
      text-anchor: middle;
    }
  `;

  @property({ type: Number }) from = 0;
  @property({ type: Number }) to = 0;
  @property({ type: Number }) used = 0;
  /** Degrees storms come from; null when not known. */
  @property({ attribute: false }) storm: number | null = null;
  /** Degrees toward the perch; null without one. */
  @property({ attribute: false }) perch: number | null = null;
  /** Said to who cannot see it. */
  @property() label = '';

  protected override render() {
    return html`<svg width="112" height="112" viewBox="-56 -56 112 112" role="img" aria-label=${this.label}>
      <circle class="rim" r="41"></circle>
      <path class="band" d=${bandPath(this.from, this.to, 40)}></path>
      ${ticks.map((at) => svg`<path class="tick" transform=${`rotate(${at})`} d=${at % 45 === 0 ? 'M0 -41 V-35' : 'M0 -41 V-38'}></path>`)}
      ${letters.map(([word, at]) => {
        const [x, y] = onCircle(at, 49);
        return svg`<text x=${x} y=${y + 4.5}>${word}</text>`;
      })}
      ${this.storm === null ? null : this.#storm(this.storm)} ${this.perch === null ? null : this.#perch(this.perch)}
      <path class="beak" transform=${`rotate(${this.used})`} d="M-6.5 -5 L0 -33 L6.5 -5 Z"></path>
      <circle class="post" r="7"></circle>
    </svg>`;
  }

  #storm(from: number) {
    return svg`<g transform=${`rotate(${from})`}>
      ${[-9, 0, 9].map((x) => svg`<path class="storm" d=${`M${x} -56 V-40 M${x - 3} -45 L${x} -39 L${x + 3} -45`}></path>`)}
    </g>`;
  }

  #perch(at: number) {
    const [x, y] = onCircle(at, 26);
    return svg`<path class="perch" d=${`M${x - 5} ${y - 5} H${x + 5} M${x} ${y - 5} V${y + 7}`}></path>`;
  }
}
