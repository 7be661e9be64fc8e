/** What a longer walk buys: the curve of summed score against the walk, each point a plan that can be taken. */
import { css, html, svg } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { setSetting } from '../../../edits/set-setting.ts';
import type { Site } from '../../../site/types.ts';
import { edit } from '../../actions/edit.ts';
import { capital } from '../../capital.ts';
import type { WalkPoint } from '../../engine/calls.ts';
import { length } from '../../format.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

const size = { width: 352, height: 130, pad: 12 };

@customElement('mp-trade-off')
export class TradeOff extends StoreElement {
  static override styles = [
    shared,
    css`
      section {
        margin-top: 16px;
      }
      svg {
        display: block;
        width: 100%;
        height: auto;
      }
      .curve {
        fill: none;
        stroke: var(--sky);
        stroke-width: 2;
      }
      .axis {
        stroke: var(--line);
        fill: none;
      }
      circle {
        fill: var(--raised);
        stroke: var(--sky);
        stroke-width: 2;
      }
      .now {
        fill: var(--ink);
      }
      .target {
        fill: transparent;
        stroke: none;
      }
      .dot {
        cursor: pointer;
      }
      text {
        fill: var(--quiet);
        font: 400 12.5px var(--sans);
      }
      .end {
        text-anchor: end;
      }
      .heads {
        display: flex;
        justify-content: space-between;
        margin-top: 6px;
        padding: 0 4px;
      }
      section > button {
        margin-top: 10px;
      }
      *,
      *::before,
      *::after {
        box-sizing: border-box;
      }
      li button {
        display: flex;
        justify-content: space-between;
        width: 100%;
        padding: 0 4px;
        border: 0;
        border-bottom: 1px solid var(--ring);
        border-radius: 0;
        background: none;
        font-weight: 400;
        align-items: center;
      }
      li button[aria-pressed="true"] {
        background: var(--sky-wash);
        font-weight: 700;
      }
    `,
  ];

  @state() private points: readonly WalkPoint[] | null = null;
  @state() private trouble = '';
  #stop: AbortController | null = null;
  /** The site the curve was made for, without its walk limit. */
  #of: Site | null = null;

  protected override watches() {
    return ['words', 'units', 'site', 'engine'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.abort();
  }

  protected override render() {
    const { walkCurve } = this.words.posts;
    const busy = this.#stop !== null;
    return html`<section>
      <h2>${walkCurve.title}</h2>
      <p class="small">${walkCurve.about}</p>
      ${this.points ? this.#curve(this.points) : null}
      ${this.trouble ? html`<p class="wash" role="alert">${this.trouble}</p>` : null}
      ${
        busy
          ? html`<p class="small" role="status">${walkCurve.making}</p>
              <button data-do="stop-curve" @click=${() => this.#stop?.abort()}>${walkCurve.stop}</button>`
          : html`<button data-do="curve" ?disabled=${this.state.engine.at === 'work'} @click=${() => void this.#ask()}>
              ${this.points ? walkCurve.again : walkCurve.make}
            </button>`
      }
    </section>`;
  }

  #curve(points: readonly WalkPoint[]) {
    const { walkCurve } = this.words.posts;
    const { units, site } = this.state;
    const limit = site?.settings.walkLimit ?? null;
    const far = Math.max(1, ...points.map((p) => p.metres));
    const high = Math.max(1, ...points.map((p) => p.score));
    const place = ({ metres, score }: WalkPoint) => ({
      x: size.pad + (metres / far) * (size.width - 2 * size.pad),
      y: size.height - size.pad - (score / high) * (size.height - 2 * size.pad),
    });
    const chosen = (point: WalkPoint, i: number) =>
      limit === null ? i === points.length - 1 : limit === limitOf(point);
    const take = (point: WalkPoint, i: number) => this.#take(i === points.length - 1 ? null : limitOf(point));
    return html`<svg viewBox=${`0 0 ${size.width} ${size.height}`} aria-hidden="true">
        <path class="axis" d=${`M${size.pad} ${size.pad}V${size.height - size.pad}H${size.width - size.pad}`}></path>
        <path class="curve" d=${`M${points.map((p) => `${place(p).x} ${place(p).y}`).join('L')}`}></path>
        <text x=${size.pad + 6} y=${size.pad + 10}>${capital(this.words.posts.score)}</text>
        <text class="end" x=${size.width - size.pad} y=${size.height - size.pad - 6}>${capital(walkCurve.walk)}</text>
        ${points.map((p, i) => this.#dot(place(p), chosen(p, i), () => take(p, i)))}
      </svg>
      <p class="heads small"><span>${capital(walkCurve.walk)}</span><span>${capital(this.words.posts.score)}</span></p>
      <ol>
        ${points.map(
          (point, i) =>
            html`<li>
              <button aria-pressed=${chosen(point, i)} @click=${() => take(point, i)}>
                <span>${walkCurve.point(length(point.metres, units), point.sites)}</span>
                <span class="number">${Math.round(point.score)}</span>
              </button>
            </li>`,
        )}
      </ol>`;
  }

  /** A point for the pointer; the keyboard has the rows below. */
  #dot({ x, y }: { x: number; y: number }, now: boolean, take: () => void) {
    return svg`<g class="dot" @click=${take}><circle class="target" cx=${x} cy=${y} r="16"></circle
      ><circle class=${now ? 'now' : ''} cx=${x} cy=${y} r="5"></circle></g>`;
  }

  async #ask(): Promise<void> {
    const { site } = this.state;
    if (!site) return;
    const stop = new AbortController();
    this.#stop = stop;
    this.trouble = '';
    this.requestUpdate();
    try {
      this.points = await this.store.engine.call('walkCurve', { site }, { signal: stop.signal });
      this.#of = site;
    } catch (error) {
      if (!stop.signal.aborted) this.trouble = error instanceof Error ? error.message : String(error);
    }
    this.#stop = null;
    this.requestUpdate();
  }

  /** A point sets the longest walk: the plan is made again within it. */
  #take(metres: number | null): void {
    const { site, words, units } = this.state;
    if (!site || !this.#of) return;
    const answer = setSetting(site, 'walkLimit', metres);
    if ('refused' in answer) this.trouble = answer.refused;
    else if (site.settings.walkLimit !== metres)
      edit(this.store, answer.site, words.posts.walkCurve.taken(metres === null ? null : length(metres, units)));
  }
}

/** The limit that gives the point again: its own walk, rounded up. */
function limitOf({ metres }: WalkPoint): number {
  return Math.ceil(metres);
}
