/** The key: a row for everything the open site shows, swatches drawn from the map's own paint. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { subjects } from '../../../../layers/all.ts';
import type { LegendRow, Subject } from '../../../../layers/types.ts';
import { isWeak } from '../../map/box-look.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../score-disc/score-disc.ts';
import { boxRows } from './box-rows.ts';
import { drawSwatch, swatchSize } from './swatch.ts';

@customElement('mp-key')
export class Key extends StoreElement {
  static override styles = [
    shared,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, max(118px, 7.4rem)), 1fr));
        gap: 6px 12px;
      }
      .boxes {
        display: block;
        margin-bottom: 8px;
      }
      .boxes li {
        gap: 16px;
        padding: 5px 8px;
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
    return ['site', 'theme', 'words', 'plan'] as const;
  }

  protected override render() {
    const kinds = new Set<string>(this.state.site?.features.map((f) => f.kind) ?? []);
    const rows = [...subjects]
      .reverse()
      .filter((subject) => subject.kinds.some((kind) => kinds.has(kind)))
      .flatMap((subject) => subject.legend.map((row) => ({ subject, row })));
    return html`${this.#boxes()}<ul>
      ${rows.map(({ subject, row }) => this.#row(subject, row))}
    </ul>`;
  }

  #boxes() {
    const boxes = this.state.plan?.boxes ?? [];
    if (boxes.length === 0) return null;
    const held = {
      weak: boxes.some(isWeak),
      standing: boxes.some((b) => b.state === 'standing'),
      locked: boxes.some((b) => b.locked === true),
    };
    return html`<ul class="boxes">
      ${boxRows(held, this.words).map(
        ({ word, look }) =>
          html`<li>
            <mp-score-disc
              size="30"
              .score=${look.score}
              .facing=${look.facing}
              .label=${String(look.number)}
              .weak=${look.weak}
              .standing=${look.standing}
              .locked=${look.locked}
            ></mp-score-disc
            >${word}
          </li>`,
      )}
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
    for (const canvas of this.renderRoot.querySelectorAll<HTMLCanvasElement>('canvas')) {
      const subject = subjects.find((s) => s.id === canvas.dataset.subject);
      const row = subject?.legend.find((r) => r.word === canvas.dataset.word);
      if (subject && row) drawSwatch(canvas, subject, row, this.state.theme);
    }
  }
}
