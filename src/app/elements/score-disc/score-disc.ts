/** A post as a disc: score as a ring clockwise from noon, a beak where the hole faces. Large on the card, small in lists. */
import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';

@customElement('mp-score-disc')
export class ScoreDisc extends LitElement {
  static override styles = css`
    :host {
      display: inline-block;
      flex: none;
    }
    svg {
      display: block;
      overflow: visible;
    }
    text {
      font-family: var(--serif);
      font-weight: 700;
      fill: var(--ink);
      text-anchor: middle;
      font-variant-numeric: lining-nums;
    }
    .track {
      stroke: var(--ring);
    }
    .score {
      stroke: var(--sky);
    }
    .weak .score {
      stroke: var(--rust);
      stroke-dasharray: 4.4 2.8;
    }
    .face {
      fill: var(--raised);
      stroke: var(--ink);
    }
    .rim,
    .beak {
      fill: var(--ink);
    }
    .standing {
      fill: none;
      stroke: var(--ink);
    }
  `;

  /** 0–100 */
  @property({ type: Number }) score = 0;
  /** Degrees clockwise from north. */
  @property({ type: Number }) facing = 0;
  /** What is written in the disc. */
  @property() label = '';
  @property({ type: Boolean }) weak = false;
  @property({ type: Boolean }) standing = false;
  /** A padlock across from the beak, as on the map. */
  @property({ type: Boolean }) locked = false;
  /** Diameter of the rim, px. */
  @property({ type: Number }) size = 64;

  protected override render() {
    const rim = 32;
    const radius = 27.5;
    const around = 2 * Math.PI * radius;
    const filled = (Math.max(0, Math.min(100, this.score)) / 100) * around;
    return html`<svg width=${this.size} height=${this.size} viewBox="-33 -33 66 66" aria-hidden="true" class=${this.weak ? 'weak' : ''}>
      ${this.standing ? svg`<circle class="standing" r="36" stroke-width="2.5"></circle>` : null}
      <g transform=${`rotate(${this.facing})`}><path class="beak" d="M-7 -30 L0 -43 L7 -30 Z"></path></g>
      <circle class="rim" r=${rim}></circle>
      <circle class="track" r=${radius} fill="none" stroke-width="6.5"></circle>
      <mask id="arc"
        ><circle
          r=${radius}
          fill="none"
          stroke="#fff"
          stroke-width="9"
          stroke-dasharray=${`${filled} ${around}`}
          transform="rotate(-90)"
        ></circle
      ></mask>
      <circle class="score" r=${radius} fill="none" stroke-width="7" transform="rotate(-90)" mask="url(#arc)"></circle>
      <circle class="face" r="23.6" stroke-width="1.6"></circle>
      <text y=${this.label.length > 2 ? 8 : 9} font-size=${this.label.length > 2 ? 21 : 26}>${this.label}</text>
      ${this.locked ? this.#lock() : null}
    </svg>`;
  }

  #lock() {
    const turn = ((this.facing + 180) * Math.PI) / 180;
    const [x, y] = [36 * Math.sin(turn), -36 * Math.cos(turn)];
    return svg`<g class="lock" transform=${`translate(${x} ${y}) scale(1.9)`}>
      <path d="M-4.5 -1 H4.5 V5.5 H-4.5 Z M-2.6 -1 V-3 A2.6 2.6 0 0 1 2.6 -3 V-1" stroke="var(--raised)" stroke-width="5" fill="none"></path>
      <path d="M-2.6 -1 V-3 A2.6 2.6 0 0 1 2.6 -3 V-1" stroke="var(--ink)" stroke-width="1.7" fill="none"></path>
      <path d="M-4.5 -1 H4.5 V5.5 H-4.5 Z" fill="var(--ink)"></path>
    </g>`;
  }
}
