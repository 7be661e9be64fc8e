/** Scale bar in the site's unit, north, and how far the needle is off. */
import { css, html, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { MapView } from '../../map/map-view.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { type ScaleBar, scaleBar } from './scale-bar.ts';

/** Drawn for letters of this size; larger letters draw all of it larger, the bar excepted: it is the ground's. */
const drawnFor = 16;

/** Room for the bar, px at `drawnFor`; half of the last figure stands beyond it. */
const barRoom = { wide: 120, phone: 88 } as const;
const beyond = { wide: 30, phone: 24 } as const;

const phone = matchMedia('(max-width: 719px)');

/** How much larger than `drawnFor` the window's letters are. */
const lettersNow = (): number => Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / drawnFor || 1;

@customElement('mp-scale')
export class Scale extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        gap: 12px;
        align-items: center;
        flex-wrap: wrap;
        min-height: 47px;
        padding: 0 14px 0 18px;
        background: var(--paper);
        border: var(--rule) solid var(--ink);
        border-radius: 3px;
      }
      svg {
        display: block;
        overflow: visible;
      }
      text {
        font: 600 11.75px / 1 var(--sans);
        fill: var(--ink);
      }
      @media (max-width: 719px) {
        :host {
          padding: 0 6px 0 12px;
          gap: 0;
        }
      }
      .about {
        fill: var(--quiet);
        font-weight: 400;
      }
      .needle {
        stroke: var(--rust);
      }
      .off {
        fill: var(--rust);
      }
    `,
  ];

  @property({ attribute: false }) view: MapView | null = null;
  @state() private bar: ScaleBar | null = null;
  @state() private letters = 1;
  #watched: unknown = null;

  protected override watches() {
    return ['units', 'words', 'plan'] as const;
  }

  protected override willUpdate(): void {
    const map = this.view?.host?.map;
    if (!map) return;
    const read = () => {
      this.letters = lettersNow();
      const room = barRoom[phone.matches ? 'phone' : 'wide'] * this.letters;
      this.bar = scaleBar(map.getZoom(), map.getCenter().lat, this.state.units, room);
    };
    if (this.#watched !== map) {
      this.#watched = map;
      map.on('move', read);
    }
    read();
  }

  protected override render() {
    const { bar, letters } = this;
    if (!bar) return null;
    const frame = phone.matches ? 'phone' : 'wide';
    const whole = barRoom[frame] + beyond[frame];
    const end = bar.width / letters;
    const needle = declinationOf(this.state.plan);
    return html`<svg width=${whole * letters} height=${40 * letters} viewBox=${`0 0 ${whole} 40`} role="img" aria-label=${`${bar.label}, ${this.words.shell.scaleAbout(bar.ratio)}`}>
        ${ticksWithRoom(bar, letters).map(
          ({ x, label }) => svg`<text x=${x} y="10" text-anchor=${x === 0 ? 'start' : 'middle'}>${label}</text>`,
        )}
        <path d=${`M0 20 V15 M0 18 H${end} M${end} 20 V15`} fill="none" stroke="var(--ink)" stroke-width="1.5"></path>
        <path d=${`M0 18 H${end / 2}`} stroke="var(--ink)" stroke-width="4"></path>
        <text class="about" x="0" y="36">${this.words.shell.scaleAbout(bar.ratio)}</text>
      </svg>
      <svg width=${62 * letters} height=${40 * letters} viewBox="0 0 62 40" role="img" aria-label=${this.#northWords(needle)}>
        <path d="M12 36 V8 M12 3 L8 12 H16 Z" stroke="var(--ink)" stroke-width="1.5" fill="var(--ink)"></path>
        ${
          needle === null
            ? null
            : svg`<g transform=${`rotate(${needle} 12 36)`}><path class="needle" d="M12 36 V12 M9 16 L12 9 L15 16" fill="none" stroke-width="1.4"></path></g>
              <text class="off" x="24" y="36">${signed(needle)}</text>`
        }
        <text x="24" y="12">${this.words.shell.northShort}</text>
        ${needle === null ? null : svg`<text class="off" x="24" y="24">${this.words.shell.needle('').trim()}</text>`}
      </svg>`;
  }

  #northWords(needle: number | null): string {
    const { north, needle: said } = this.words.shell;
    return needle === null ? north : `${north}, ${said(signed(needle))}`;
  }
}

/** Width of a figure, px at `drawnFor` (measured: 6.1), and the least gap between two labels. */
const figure = 6.2;
const apart = 3;

/** The figures at the bar, px at `drawnFor`; the middle one only where it stands clear of both others. */
function ticksWithRoom({ ticks, width }: ScaleBar, letters: number) {
  const [, middle, end] = ticks.map(({ label }) => label.length * figure) as [number, number, number];
  const half = width / letters / 2;
  const clear = half >= (middle + end) / 2 + apart && half >= figure + middle / 2 + apart;
  return ticks.filter((_, i) => i !== 1 || clear).map(({ x, label }) => ({ x: x / letters, label }));
}

/** "8° W" */
function signed(degrees: number): string {
  return `${Math.abs(Math.round(degrees))}° ${degrees < 0 ? 'W' : 'E'}`;
}

/** Degrees the needle points east (+) or west (−) of true north at the first box; null when the model has ended or nothing is planned. */
function declinationOf(
  plan: { boxes: readonly { card: { facing: { magnetic: { declination: number } | null } } }[] } | null,
) {
  return plan?.boxes[0]?.card.facing.magnetic?.declination ?? null;
}
