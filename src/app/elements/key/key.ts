/** The key: a row for everything the open site shows, swatches drawn from the map's own paint. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { subjects } from '../../../../layers/all.ts';
import type { LegendRow, Subject } from '../../../../layers/types.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { drawSwatch, swatchSize } from './swatch.ts';

@customElement('mp-key')
export class Key extends StoreElement {
  static override styles = [
    shared,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(118px, 1fr));
        gap: 6px 12px;
      }
      li {
        display: flex;
        align-items: center;
        gap: 8px;
        line-height: 1.15;
      }
      canvas {
        flex: none;
      }
    `,
  ];

  protected override watches() {
    return ['site', 'theme', 'words'] as const;
  }

  protected override render() {
    const kinds = new Set<string>(this.state.site?.features.map((f) => f.kind) ?? []);
    const rows = [...subjects]
      .reverse()
      .filter((subject) => subject.kinds.some((kind) => kinds.has(kind)))
      .flatMap((subject) => subject.legend.map((row) => ({ subject, row })));
    return html`<ul>
      ${rows.map(({ subject, row }) => this.#row(subject, row))}
    </ul>`;
  }

  #row(subject: Subject, row: LegendRow) {
    const { width, height } = swatchSize;
    return html`<li>
      <canvas
        style=${`width:${width}px;height:${height}px`}
        data-subject=${subject.id}
        data-word=${row.word}
        aria-hidden="true"
      ></canvas>
      ${this.words.kinds[row.word] ?? row.word}
    </li>`;
  }

  protected override updated(): void {
    for (const canvas of this.renderRoot.querySelectorAll('canvas')) {
      const subject = subjects.find((s) => s.id === canvas.dataset.subject);
      const row = subject?.legend.find((r) => r.word === canvas.dataset.word);
      if (subject && row) drawSwatch(canvas, subject, row, this.state.theme);
    }
  }
}
