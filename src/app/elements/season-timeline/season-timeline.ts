/** One box's season as a drawing: a bar for eggs, one for young, hatched where only earliest and latest are known, ticks for looks. */
import { css, html, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import type { NestRow, Stretch, Timeline } from './timeline-shape.ts';

const wide = 340;
const rowHeight = 30;
const top = 20;
const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

@customElement('mp-season-timeline')
export class SeasonTimeline extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        width: 100%;
        height: auto;
        overflow: visible;
      }
      text {
        fill: var(--ink);
        font: 400 11.5px var(--sans);
      }
      .month {
        fill: var(--quiet);
      }
      .grid {
        stroke: var(--line);
        stroke-width: 0.5;
      }
      .look {
        stroke: var(--quiet);
        stroke-width: 1;
      }
      .eggs {
        fill: var(--sky-wash);
        stroke: var(--ink);
      }
      .young {
        fill: var(--sky);
        stroke: var(--ink);
      }
      .unsure {
        fill: none;
        stroke-dasharray: 3 2;
      }
      .hatch {
        stroke: var(--ink);
        stroke-width: 1;
      }
    `,
  ];

  @property({ attribute: false }) line: Timeline | null = null;
  @property() label = '';

  protected override watches() {
    return ['words'] as const;
  }

  protected override render() {
    const { line } = this;
    if (!line) return null;
    const x = (day: number) => ((day - line.from) / (line.to - line.from)) * wide;
    const height = top + Math.max(1, line.rows.length) * rowHeight + 14;
    return html`<svg viewBox="0 0 ${wide} ${height}" role="img" aria-label=${this.label}>
      ${line.months.map(
        ({ day, month }) => svg`<path class="grid" d="M${x(day)} ${top - 4}V${height - 12}" />
          ${x(day) < wide - 24 ? svg`<text class="month" x=${x(day) + 3} y="12">${names[month - 1]}</text>` : null}`,
      )}
      ${line.looks.map((day) => svg`<path class="look" d="M${x(day).toFixed(1)} ${height - 10}v6" />`)}
      ${line.rows.map((row, i) => this.#row(row, top + i * rowHeight, x))}
    </svg>`;
  }

  #row({ stretches, nest }: NestRow, y: number, x: (day: number) => number) {
    const last = Math.max(0, ...stretches.map((one) => x(one.to)));
    const words = this.words.season.outcome[nest.outcome];
    const right = last > wide * 0.72;
    const at = right ? Math.min(...stretches.map((one) => x(one.from))) - 4 : last + 4;
    return svg`${stretches.map((one) => bar(one, y, x))}
      <text x=${at} y=${y + 18} text-anchor=${right ? 'end' : 'start'}>${words}</text>`;
  }
}

/** Eggs lie lower and thinner than young, so the two differ without color. */
function bar({ what, from, to, sure }: Stretch, y: number, x: (day: number) => number) {
  const [left, right] = [x(from), x(to)];
  const [above, tall] = what === 'eggs' ? [y + 10, 9] : [y + 5, 14];
  const strokes = [];
  if (!sure)
    for (let at = left + 3; at < right - 1; at += 5)
      strokes.push(svg`<path class="hatch" d="M${at.toFixed(1)} ${above + tall}l3 ${-tall}" />`);
  return svg`<rect class=${`${what} ${sure ? '' : 'unsure'}`} x=${left.toFixed(1)} y=${above}
      width=${Math.max(1, right - left).toFixed(1)} height=${tall} />${strokes}`;
}
